// The stock does not reach round: out of round and off centre as it is, the old bore stays on one side.
import { cleanUp } from "../../core/line/stock.ts";
import { stockThresholds } from "../../core/line/stock-allowances.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import { lineBoresOf } from "../../model/evaluate/line-bores.ts";
import { pilotLinesOf } from "../../model/evaluate/pilot.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { stockJudged } from "../../model/evaluate/stock.ts";
import type { Rule } from "../rule.ts";
import { ownLength } from "../threshold.ts";
import { boreSpan, relatedReamer } from "./at-bore.ts";

export const wontCleanUp: Rule = {
  code: "wont-clean-up",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    const bores = lineBoresOf(shop, ref);
    if (!bores.known) return [];
    return ownBores(shop, ref).flatMap((bore) => {
      const found = stockJudged(shop, bore, {
        thin: undefined,
        heavy: undefined,
      });
      if (found === undefined) return [];
      const { stock, drive } = found;
      const centres =
        bores.value.find((each) => each.bore === bore)?.centres ?? [];
      // what is not read counts as nothing, so that what is said here is sure
      const { before, cut } = stock;
      const round = before.outOfRound ?? 0;
      const offset = Math.max(
        0,
        ...centres.map(({ x, y }) => Math.hypot(x, y)),
      );
      if (round === 0 && offset === 0) return [];
      const least =
        ownLength(shop, "wont-clean-up") ?? stockThresholds[drive].thin;
      const left = cut.low - (before.isRead ? before.high : before.nominal);
      const clean = cleanUp(offset, least, left);
      if (!clean.valid || clean.value.cleansUp) return [];
      // the least cut falls short; where the most would not, it may still clean up
      const most = cut.high - (before.isRead ? before.high : before.low);
      const atMost = cleanUp(offset, least, most);
      const sure = atMost.valid && !atMost.value.cleansUp;
      const show = (value: number): string =>
        showLength(value, system, stock.step);
      const follows =
        drive === "hand" &&
        0 < offset &&
        !pilotLinesOf(shop, ref).some((each) => each.guides === bore)
          ? " A hand reamer without a pilot follows the old bore besides, whatever the stock."
          : "";
      const faults = [
        ...(0 < round ? [`out of round by ${show(round)}`] : []),
        ...(0 < offset ? [`off centre by ${show(offset)}`] : []),
      ].join(" and ");
      return [
        {
          level: sure ? ("error" as const) : ("warning" as const),
          span: boreSpan(shop, entry, bore),
          message: `${bore} ${sure ? "won't" : "may not"} clean up: it is ${faults}. With ${show(least)} as the least to cut it needs ${show(clean.value.needed)} of stock ${before.isRead ? "over its largest place" : "over its middle"}, and has ${show(left)}${sure ? "" : " at the least"}. Bore it true first, or start from a bore that is smaller by ${show(clean.value.shortBy)}.${follows}`,
          related: [
            {
              ref: bore,
              message: `${bore}: ${showRange(before.low, before.high, system, stock.step)} before the cut`,
            },
            ...relatedReamer(
              shop,
              ref,
              (reamer) => `${reamer} cuts ${show(stock.cut.low)} at least`,
            ),
          ],
          value: clean.value.shortBy,
        },
      ];
    });
  },
};
