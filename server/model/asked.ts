// What is asked of a size, a clearance or an interference, and how the verdict on it was reached, as sentences in the job's units.
import { fixed, showRange, showUncertainty } from "../core/quantity/show.ts";
import { allOf, type Entry } from "./entry.ts";
import { clearance, clearanceVerdict } from "./evaluate/fit.ts";
import { interferenceOf, interferenceVerdict } from "./evaluate/press.ts";
import { settings } from "./evaluate/settings.ts";
import { sizeOf, sizeVerdict, type Judged } from "./evaluate/size.ts";
import { missingText } from "./known.ts";
import type { Need } from "./result.ts";
import { entryOf, type Shop } from "./shop.ts";
import type { LengthRange } from "./values.ts";

const ASKED = [
  ["LimitsFact", "Limits"],
  ["ServiceLimitFact", "Service limit"],
  ["WantFact", "Wanted"],
  ["WantHotFact", "Wanted hot or cold"],
] as const;

/** "Limits: 0.8740 to 0.8745 in, from yard drawing L-204": one sentence a fact that asks for a size. */
export function askedOf(shop: Shop, ref: string): readonly string[] {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return [];
  return ASKED.flatMap(([rule, label]) =>
    allOf(entry, rule).flatMap(({ value }) =>
      value === undefined ? [] : [`${label}: ${rangeText(shop, value)}`],
    ),
  );
}

function rangeText(
  shop: Shop,
  range: LengthRange & { readonly source?: string | undefined },
): string {
  const { system } = settings(shop);
  const { low, high, step, className, source } = range;
  return [
    showRange(low, high, system, step),
    className === undefined ? "" : ` (${className})`,
    source === undefined ? "" : `, from ${source}`,
  ].join("");
}

/** How much of the limits the uncertainty takes, or what keeps a guarded verdict from being given; "" where neither is to be said. */
export function guardOf(shop: Shop, ref: string): string {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return "";
  if (settings(shop).verdict !== "guarded") return "";
  const judged = judgedOf(shop, ref, entry);
  if (judged === undefined) return "";
  const { system } = settings(shop);
  if (judged.guard !== undefined && judged.factor !== undefined)
    return `Judged with the limits held back by ${showUncertainty(judged.guard, system)} (k = ${fixed(judged.factor, 2)}, 95 % conformance, ISO 14253-1).`;
  const needs = needsOf(shop, ref, entry);
  return judged.verdict === "unsure" && 0 < needs.length
    ? `The verdict is unsure for want of ${missingText(needs)}.`
    : "";
}

function judgedOf(shop: Shop, ref: string, entry: Entry): Judged | undefined {
  switch (entry.kind) {
    case "fit":
      return clearanceVerdict(shop, ref);
    case "press":
      return interferenceVerdict(shop, ref);
    default:
      return sizeVerdict(shop, ref);
  }
}

/** What the uncertainty still needs. */
function needsOf(shop: Shop, ref: string, entry: Entry): readonly Need[] {
  if (entry.kind === "press") {
    const found = interferenceOf(shop, ref);
    return found.known
      ? [...found.value.od.budgetNeeds, ...found.value.hole.budgetNeeds]
      : [];
  }
  const found = entry.kind === "fit" ? clearance(shop, ref) : sizeOf(shop, ref);
  return found.known ? found.value.budgetNeeds : [];
}
