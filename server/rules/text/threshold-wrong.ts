// A `warn` line whose value sets nothing: it measures something else than the finding's threshold does, or the finding has none. Without this
// the line would be passed over, and who wrote it would believe that it holds.
import { allOf, valueIn, type Entry } from "../../model/entry.ts";
import type { AnyQuantity } from "../../model/values.ts";
import { CODES } from "../codes.ts";
import type { Draft, Rule } from "../rule.ts";
import { THRESHOLDS, type ThresholdKind } from "../thresholds.ts";
import { dimensionNames, usualUnits } from "./unit-names.ts";
import { oneOf } from "./wording.ts";

export const thresholdWrong: Rule = {
  code: "unit-wrong",
  level: "error",
  about: ["job", "shop"],
  check: (_shop, _ref, entry) => wrongThresholds(entry),
};

function wrongThresholds(entry: Entry): readonly Draft[] {
  return allOf(entry, "WarnFact").flatMap(({ value, span }) => {
    // a code that is none is name-unknown's
    if (value === undefined || !CODES.includes(value.code)) return [];
    const kind = THRESHOLDS[value.code];
    if (kind === undefined)
      return [
        {
          level: "warning" as const,
          span,
          message: `\`${value.code}\` has no threshold that could be set, so this line changes nothing: take it out.`,
        },
      ];
    if (sets(kind, value.at)) return [];
    const units = usualUnits(kind.takes, valueIn(entry, "UnitsFact") ?? "");
    const plain = kind.bare === "factor" ? "a plain number, or " : "";
    return [
      {
        span,
        message: `The threshold of \`${value.code}\` is ${dimensionNames(kind.takes)}, and this is none, so it sets nothing: write ${plain}a value in ${oneOf(units)}.`,
      },
    ];
  });
}

function sets({ takes, bare }: ThresholdKind, at: AnyQuantity): boolean {
  if (at.dimension !== undefined) return takes.includes(at.dimension);
  // in a file that does not say its unit, a bare length is asked for there
  return bare !== "nothing";
}
