// No reamer of the crib gives every journal of a line what it wants: what to buy, or to have ground.
import { GOOD_CHANCE } from "../../core/line/chance.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { reamerValue } from "../../model/evaluate/reamer.ts";
import {
  cribRankingOf,
  rankingOf,
  windowOf,
} from "../../model/evaluate/window.ts";
import { choiceName } from "../../model/results/line.ts";
import { given } from "../../model/entry.ts";
import { finest } from "../../model/ranges.ts";
import { isWhole, refsOfKind } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { unread } from "./possible-bores.ts";

/** A size to grind to is given finer than it is read, m. */
const GROUND_TO = { inch: 0.00001 * 0.0254, mm: 0.0001 * 0.001 };

export const reamerNotInCrib: Rule = {
  code: "reamer-not-in-crib",
  level: "information",
  about: ["line"],
  check(shop, ref, entry) {
    const window = windowOf(shop, ref);
    const inCrib = cribRankingOf(shop, ref);
    if (!window.known || !window.value.window.open || !inCrib.known) return [];
    // a line that is bored or honed needs no reamer
    if (given(entry, "CutFact").state !== "absent") return [];
    if (inCrib.value.crib.some((choice) => choice.ranked.serves)) return [];
    const ranking = rankingOf(shop, ref);
    if (!ranking.known) return [];
    // one that can't be read, or a crib that is missing, may hold the very one
    const isUnread = refsOfKind(shop, "reamer").some((reamer) => {
      const value = reamerValue(shop, reamer);
      return !value.known && value.silent;
    });
    if (!isWhole(shop) || isUnread) return [];
    const { system } = settings(shop);
    const { low, high } = window.value.window.window;
    const step = finest(ranking.value.demands);
    const still = unread(ranking.value.demands);
    const buy = ranking.value.toBuy
      .filter(({ ranked }) => GOOD_CHANCE <= (ranked.chance ?? 1))
      .slice(0, 3)
      .map(choiceName);
    const grind = ranking.value.toGrind;
    const ways = [
      ...(buy.length === 0 ? [] : [`buy ${buy.join(" or ")}`]),
      ...(grind === undefined
        ? []
        : [
            `have one ground to ${showLength(grind.size, system, GROUND_TO[system])}`,
          ]),
    ];
    const read = still === "" ? "" : `Read ${still} first`;
    const cure = [read, ways.join(", or ")].filter((part) => part !== "");
    return [
      {
        span: entry.nameSpan,
        message: `No reamer of the crib cuts bores of ${showRange(low, high, system, step)}${cure.length === 0 ? "" : `${still === "" ? ": " : ". "}${cure.join(", then ")}`}. A test cut in a scrap bush tells what a reamer really cuts.`,
      },
    ];
  },
};
