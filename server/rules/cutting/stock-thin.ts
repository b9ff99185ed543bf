// A bore leaves the reamer too little to cut: it rubs instead, or leaves the old bore standing.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { stockJudged } from "../../model/evaluate/stock.ts";
import type { Rule } from "../rule.ts";
import { ownLength } from "../threshold.ts";
import { boreSpan, relatedReamer } from "./at-bore.ts";

export const stockThin: Rule = {
  code: "stock-thin",
  level: "warning",
  about: ["line"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    const own = { thin: ownLength(shop, "stock-thin"), heavy: undefined };
    return ownBores(shop, ref).flatMap((bore) => {
      const found = stockJudged(shop, bore, own);
      if (found?.verdict.thin !== true) return [];
      const { stock, verdict, drive } = found;
      const { before, step } = stock;
      const size = `${bore} is ${showRange(before.low, before.high, system, step)} before the cut`;
      const least = showLength(verdict.thresholds.thin, system);
      const what =
        metresToTenths(stock.low) <= 0
          ? `${size}, and at its largest the reamer takes nothing off it.`
          : `${size} and leaves ${showRange(stock.low, stock.high, system, step)} of stock: under ${least} a ${drive} reamer rubs rather than cuts.`;
      return [
        {
          span: boreSpan(shop, entry, bore),
          message: `${what} Start from a smaller bore, or take a larger reamer where the window allows one.`,
          related: [
            { ref: bore, message: size },
            ...relatedReamer(
              shop,
              ref,
              (reamer) =>
                `${reamer} cuts ${showRange(stock.cut.low, stock.cut.high, system, step)}`,
            ),
          ],
          value: stock.low,
        },
      ];
    });
  },
};
