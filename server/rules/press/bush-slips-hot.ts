// A warm case holds its bush too little against the journal's drag, or not at all.
import { showTorques } from "../../core/quantity/show-force.ts";
import { fixed, showRange } from "../../core/quantity/show.ts";
import { usualHolding } from "../../core/press/force.ts";
import { fitsOfBore } from "../../model/evaluate/index-of.ts";
import { holdingsOf, type Holding } from "../../model/evaluate/press-slip.ts";
import { partsOf } from "../../model/evaluate/press.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Shop } from "../../model/shop.ts";
import { factUnder } from "../fixes.ts";
import type { Draft, DraftFix, Rule } from "../rule.ts";
import { ownFactor } from "../threshold.ts";

export const bushSlipsHot: Rule = {
  code: "bush-slips-hot",
  level: "error",
  about: ["press"],
  check(shop, ref, entry) {
    const parts = partsOf(shop, ref);
    if (parts?.bore === undefined) return [];
    const { system } = settings(shop);
    const asked = ownFactor(shop, "bush-slips-hot") ?? usualHolding;
    return fitsOfBore(shop, parts.bore).flatMap((fit) => {
      const slipping = holdingsOf(shop, fit)
        .map((holding) => ({ holding, margin: marginOf(holding) }))
        .filter(({ margin }) => margin !== undefined && margin < asked)
        .sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0))[0];
      if (slipping?.margin === undefined) return [];
      const { holding, margin } = slipping;
      const { interference, holds, drag, drags, measured } = holding;
      const left = showRange(interference.low, interference.high, system);
      const message =
        interference.high === 0
          ? "The case grows away from its bush when hot and lets it go: nothing holds it against turning."
          : `Hot, ${left} of interference is left, which holds ${showTorques(holds.low, holds.high, system)}: ${measured ? "" : "at most "}${fixed(margin, 1)} times the ${showTorques(drag ?? 0, drag ?? 0, system)} with which the journal may drag it (friction ${fixed(drags.friction, 2)}, as at a start without oil), where ${fixed(asked, 1)} is asked.`;
      const draft: Draft = {
        span: entry.nameSpan,
        message: `${message} Take more interference, or hold the bush with a peg or a screw.`,
        related: [
          {
            ref: fit,
            span: holding.span,
            message: `hot line ${String(holding.number)} of ${fit}`,
          },
        ],
        value: margin,
        dimension: "ratio",
        fixes: heldFixes(shop, parts.bush),
      };
      return [draft];
    });
  },
};

/** A bush that is pegged already, or is to be: whoever writes it knows. */
function heldFixes(shop: Shop, bush: string): readonly DraftFix[] {
  const edit = factUnder(shop, bush, 'held by "peg"');
  return edit === undefined
    ? []
    : [
        {
          title: `Write \`held by "peg"\` under ${bush}, where a peg holds it`,
          safe: false,
          edits: [edit],
        },
      ];
}

/** What it holds over the journal's drag: where it is not read, only what is sure to be too little counts. */
function marginOf({ holds, drag, measured }: Holding): number | undefined {
  const end = measured ? holds.low : holds.high;
  if (end === 0) return 0;
  return drag === undefined ? undefined : end / drag;
}
