// No reamer of the crib gives every journal of a line what it wants: what to buy, or to have ground.
import { showLength, showRange } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { rankingOf, windowOf } from "../../model/evaluate/window.ts";
import { choiceName } from "../../model/results/line.ts";
import { given } from "../../model/entry.ts";
import type { Rule } from "../rule.ts";

export const reamerNotInCrib: Rule = {
  code: "reamer-not-in-crib",
  level: "information",
  about: ["line"],
  check(shop, ref, entry) {
    const window = windowOf(shop, ref);
    const ranking = rankingOf(shop, ref);
    if (!window.known || !window.value.window.open || !ranking.known) return [];
    // a line that is bored or honed needs no reamer
    if (given(entry, "CutFact").state !== "absent") return [];
    if (ranking.value.crib.some((choice) => choice.ranked.serves)) return [];
    const { system } = settings(shop, "job");
    const { low, high } = window.value.window.window;
    const steps = ranking.value.demands
      .map((demand) => demand.step)
      .filter((step) => step !== undefined);
    const step = steps.length === 0 ? undefined : Math.min(...steps);
    const buy = ranking.value.toBuy.slice(0, 3).map(choiceName);
    const grind = ranking.value.toGrind;
    const ways = [
      ...(buy.length === 0 ? [] : [`buy ${buy.join(" or ")}`]),
      ...(grind === undefined
        ? []
        : [`have one ground to ${showLength(grind.size, system, step)}`]),
    ];
    return [
      {
        span: entry.nameSpan,
        message: `No reamer of the crib cuts bores of ${showRange(low, high, system, step)}${ways.length === 0 ? "." : `: ${ways.join(", or ")}.`} A test cut in a scrap bush tells what it really cuts.`,
      },
    ];
  },
};
