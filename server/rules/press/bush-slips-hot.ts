// A warm case holds its bush too little against the journal's drag, or not at all.
import { showTorques } from "../../core/quantity/show-force.ts";
import { fixed, showRange, type System } from "../../core/quantity/show.ts";
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
    return fitsOfBore(shop, parts.bore).flatMap((fit): readonly Draft[] => {
      const holdings = holdingsOf(shop, fit);
      const slipping = holdings
        .map((holding) => ({ holding, margin: marginOf(holding) }))
        .filter(({ margin }) => margin !== undefined && margin < asked)
        .sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0))[0];
      const holding =
        slipping?.holding ??
        holdings.find(({ interference }) => interference.low === 0);
      if (holding === undefined) return [];
      const isSure = slipping !== undefined;
      return [
        {
          ...(isSure ? {} : { level: "warning" }),
          span: entry.nameSpan,
          message: isSure
            ? `${slips(holding, asked, system)} Take more interference, or hold the bush with a peg or a screw.`
            : `${mayLetGo(holding, system)} Read ${parts.bush} and ${parts.hole}, take more interference, or hold the bush with a peg or a screw.`,
          related: [
            {
              ref: fit,
              span: holding.span,
              message: `hot line ${String(holding.number)} of ${fit}`,
            },
          ],
          value: slipping?.margin ?? 0,
          dimension: "ratio",
          fixes: heldFixes(shop, parts.bush),
        },
      ];
    });
  },
};

function slips(holding: Holding, asked: number, system: System): string {
  const { interference, holds, drag, measured } = holding;
  if (interference.high === 0)
    return "The case grows away from its bush when hot and lets it go: nothing holds it against turning.";
  const left = showRange(interference.low, interference.high, system);
  if (holds === undefined || drag === undefined)
    return `Hot, ${left} of interference is left: at its least the case lets the bush go, and nothing holds it against turning.`;
  const margin = fixed(marginOf(holding) ?? 0, 1);
  return `Hot, ${left} of interference is left, which holds ${showTorques(holds.low, holds.high, system)}: ${measured ? "" : "at most "}${margin} times the ${showTorques(drag.torque, drag.torque, system)} with which the journal may drag it (friction ${fixed(drag.friction, 2)}, as at a start without oil), where ${fixed(asked, 1)} is asked.`;
}

/** Foretold: what is sure to be too little is an error, what may be is asked about while it can still be made otherwise. */
function mayLetGo({ interference }: Holding, system: System): string {
  return `The case may grow away from its bush when hot: ${showRange(interference.low, interference.high, system)} of interference is foretold to be left, and at its least nothing holds the bush against turning.`;
}

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
function marginOf({
  interference,
  holds,
  drag,
  measured,
}: Holding): number | undefined {
  const end = measured ? "low" : "high";
  if (interference[end] === 0) return 0;
  return drag === undefined || holds === undefined
    ? undefined
    : holds[end] / drag.torque;
}
