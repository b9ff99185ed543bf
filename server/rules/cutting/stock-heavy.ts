// A bore leaves the reamer more to cut than it should take in one pass.
import { showLength, showRange } from "../../core/quantity/show.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { passesOf, stockJudged } from "../../model/evaluate/stock.ts";
import type { Rule } from "../rule.ts";
import { ownLength } from "../threshold.ts";
import { boreSpan, relatedReamer } from "./at-bore.ts";

export const stockHeavy: Rule = {
  code: "stock-heavy",
  level: "warning",
  about: ["line"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    const own = { thin: undefined, heavy: ownLength(shop, "stock-heavy") };
    return ownBores(shop, ref).flatMap((bore) => {
      const found = stockJudged(shop, bore, own);
      if (found?.verdict.heavy !== true) return [];
      const { stock, verdict, drive } = found;
      const { before, step } = stock;
      const passes = passesOf(shop, bore);
      const rough =
        passes?.known === true && passes.value.plan.enough
          ? passes.value.plan.passes.slice(0, -1).at(-1)?.to
          : undefined;
      const cure =
        rough === undefined
          ? "Open it out first."
          : `Open it out to about ${showLength(rough, system, step)} first, and finish with this reamer.`;
      const size = `${bore} is ${showRange(before.low, before.high, system, step)} before the cut`;
      return [
        {
          span: boreSpan(shop, entry, bore),
          message: `${size} and leaves ${showRange(stock.low, stock.high, system, step)} of stock: over ${showLength(verdict.thresholds.heavy, system)} is too much for one pass of a ${drive} reamer of this size. ${cure}`,
          related: [
            { ref: bore, message: size },
            ...relatedReamer(
              shop,
              ref,
              (reamer) =>
                `${reamer} cuts ${showRange(stock.cut.low, stock.cut.high, system, step)}`,
            ),
          ],
          value: stock.high,
        },
      ];
    });
  },
};
