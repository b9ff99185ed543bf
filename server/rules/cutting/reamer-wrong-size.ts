// The reamer that a line names leaves a bore outside what a journal wants.
import {
  lengthDigits,
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { given } from "../../model/entry.ts";
import { settings } from "../../model/evaluate/settings.ts";
import {
  cribRankingOf,
  windowOf,
  type Choice,
  type Demand,
} from "../../model/evaluate/window.ts";
import { nameOf } from "../../model/reference.ts";
import { choiceName } from "../../model/results/line.ts";
import { isWhole, refOf, type Shop } from "../../model/shop.ts";
import type { Span } from "../../model/values.ts";
import type { DraftFix, Rule } from "../rule.ts";
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
    const { crib, demands } = ranking.value;
    const chosen = crib.find((choice) => choice.reamer === reamer);
    if (chosen === undefined || chosen.ranked.serves) return [];
    const { bore: at, end, metres } = chosen.ranked.margin;
    const demand = demands[at];
    const cut = chosen.ranked.cuts[at];
    if (demand === undefined || cut === undefined) return [];
    const { system } = settings(shop);
    const { step } = demand;
    const { low, high } = window.value.window.window;
    const best = crib.find((choice) => choice.ranked.serves);
    const isSure = demands.some((each, index) => {
      const bore = chosen.ranked.cuts[index]?.nominal;
      return bore !== undefined && missesForSure(bore, each);
    });
    return [
      {
        level: isSure ? "error" : "information",
        span: ream.value.span,
        message: `${reamer ?? "This reamer"} cuts about ${showLength(cut.nominal, system, step)}${leaves(demand, chosen.ranked.clearances[at], system)}: ${showExcess(-metres, system, step)} ${end === "low" ? "too small" : "too large"} for bores of ${lengthDigits(low, system, step)} to ${showLength(high, system, step)}.${cure(shop, best, step)}${isSure ? "" : untilRead(demands)}`,
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
        fixes: reamWith(best, ream.value.span),
      },
    ];
  },
};

/** ", which leaves 0.0004 to 0.0008 in at journal front" */
function leaves(
  { fit, journal, bore, step }: Demand,
  clearance: Choice["ranked"]["clearances"][number] | undefined,
  system: System,
): string {
  return fit === undefined || clearance === undefined
    ? ""
    : `, which leaves ${showRange(clearance.low, clearance.high, system, step)} at ${journal ?? bore}`;
}

/** The reamer of the crib to take instead; that there is none, where all of the crib is known. */
function cure(
  shop: Shop,
  best: Choice | undefined,
  step: number | undefined,
): string {
  if (best === undefined)
    return isWhole(shop) ? " No reamer of the crib serves." : "";
  const { setting } = best.ranked;
  const set =
    setting === undefined
      ? ""
      : `, set to ${showLength(setting, settings(shop).system, step)}`;
  return ` Take ${choiceName(best)}${set}.`;
}

function untilRead(demands: readonly Demand[]): string {
  const still = unread(demands);
  return ` That is by limits alone, until ${still} ${still.includes(" and ") ? "are" : "is"} read.`;
}

function reamWith(best: Choice | undefined, span: Span): readonly DraftFix[] {
  return best?.reamer === undefined
    ? []
    : [
        {
          title: `Ream with ${best.reamer}`,
          safe: false,
          edits: [{ span, text: nameOf(best.reamer) }],
        },
      ];
}
