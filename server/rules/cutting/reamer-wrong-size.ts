// The reamer that a line names leaves a bore outside what a journal wants.
import {
  lengthDigits,
  showLength,
  showRange,
} from "../../core/quantity/show.ts";
import { given } from "../../model/entry.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { cribRankingOf, windowOf } from "../../model/evaluate/window.ts";
import { choiceName } from "../../model/results/line.ts";
import { isWhole, refOf } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { showExcess } from "../show-excess.ts";
import { missesForSure, unread } from "./possible-bores.ts";

export const reamerWrongSize: Rule = {
  code: "reamer-wrong-size",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const ream = given(entry, "ReamFact");
    const window = windowOf(shop, ref);
    const ranking = cribRankingOf(shop, ref);
    // with no window at all, line-needs-two-reamers speaks
    if (
      ream.state !== "given" ||
      !window.known ||
      !window.value.window.open ||
      !ranking.known
    )
      return [];
    const reamer = refOf(shop, ream.value);
    const chosen = ranking.value.crib.find(
      (choice) => choice.reamer === reamer,
    );
    if (chosen === undefined || chosen.ranked.serves) return [];
    const { system } = settings(shop);
    const { bore: at, end, metres } = chosen.ranked.margin;
    const demand = ranking.value.demands[at];
    const cut = chosen.ranked.cuts[at];
    if (demand === undefined || cut === undefined) return [];
    const { low, high } = window.value.window.window;
    const step = demand.step;
    const best = ranking.value.crib.find((choice) => choice.ranked.serves);
    const setting = best?.ranked.setting;
    const set =
      setting === undefined
        ? ""
        : `, set to ${showLength(setting, system, step)}`;
    const none = isWhole(shop) ? " No reamer of the crib serves." : "";
    const cure = best === undefined ? none : ` Take ${choiceName(best)}${set}.`;
    const isSure = ranking.value.demands.some((each, index) => {
      const bore = chosen.ranked.cuts[index]?.nominal;
      return bore !== undefined && missesForSure(bore, each);
    });
    const still = unread(ranking.value.demands);
    const until = isSure
      ? ""
      : ` That is by limits alone, until ${still} ${still.includes(" and ") ? "are" : "is"} read.`;
    const clearance = chosen.ranked.clearances[at];
    const leaves =
      demand.fit === undefined || clearance === undefined
        ? ""
        : `, which leaves ${showRange(clearance.low, clearance.high, system, step)} at ${demand.journal ?? demand.bore}`;
    return [
      {
        level: isSure ? "error" : "information",
        span: ream.value.span,
        message: `${reamer ?? "This reamer"} cuts about ${showLength(cut.nominal, system, step)}${leaves}: ${showExcess(-metres, system, step)} ${end === "low" ? "too small" : "too large"} for bores of ${lengthDigits(low, system, step)} to ${showLength(high, system, step)}.${cure}${until}`,
        related:
          demand.fit === undefined
            ? []
            : [
                {
                  ref: demand.fit,
                  message: `${demand.fit} wants ${showRange(demand.wanted.low, demand.wanted.high, system, step)}`,
                },
              ],
        // how far outside, since a line has two ends to be outside of
        value: -metres,
        fixes:
          best?.reamer === undefined
            ? []
            : [
                {
                  title: `Ream with ${best.reamer}`,
                  safe: false,
                  edits: [
                    {
                      span: ream.value.span,
                      text: best.reamer.slice("reamer ".length),
                    },
                  ],
                },
              ],
      },
    ];
  },
};
