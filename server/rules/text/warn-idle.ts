// A threshold that changes nothing: of a finding that has none, of another kind than the finding is held against, or one that stands twice.
import type { Dimension } from "../../core/quantity/units.ts";
import { allOf, valueIn, type Entry, type Fact } from "../../model/entry.ts";
import type { AnyQuantity, Span } from "../../model/values.ts";
import { CODES } from "../codes.ts";
import { commentOut } from "../fixes.ts";
import { figuresOf } from "../figures.ts";
import type { Draft, Rule } from "../rule.ts";
import { dimensionNames, usualUnits } from "./unit-names.ts";
import { capitalised } from "../../model/sentences.ts";
import { oneOf } from "./wording.ts";

export const warnIdle: Rule = {
  code: "warn-idle",
  level: "warning",
  about: ["job", "shop"],
  check(_, __, entry) {
    const seen = new Set<string>();
    return allOf(entry, "WarnFact").flatMap((fact): readonly Draft[] => {
      const { value } = fact;
      // a code that there is not is name-unknown's
      if (value === undefined || !CODES.includes(value.code)) return [];
      const { code, at } = value;
      const { warn } = figuresOf(code);
      const isSecond = seen.has(code);
      seen.add(code);
      if (warn.length === 0)
        return [
          {
            span: value.codeSpan,
            message: `\`${code}\` has no threshold, so this line changes nothing: take it out.`,
            fixes: [commentOut(fact.span)],
          },
        ];
      if (isSecond)
        return [
          {
            span: value.codeSpan,
            message: `The threshold of \`${code}\` stands above already, and the first one counts: take one of the two out.`,
            fixes: [commentOut(fact.span)],
          },
        ];
      return isTaken(at, warn) ? [] : [wrongKind(entry, fact, code, at, warn)];
    });
  },
};

/** Whether the finding can be held against it. */
function isTaken(at: AnyQuantity, warn: readonly Dimension[]): boolean {
  if (at.dimension !== undefined) return warn.includes(at.dimension);
  // a bare number is a length where one is taken, as everywhere
  return warn.includes("length")
    ? at.asLength !== undefined
    : warn.includes("ratio");
}

function wrongKind(
  entry: Entry,
  fact: Fact<"WarnFact">,
  code: string,
  { dimension }: AnyQuantity,
  warn: readonly Dimension[],
): Draft {
  const line = entry.block.lines[fact.span.line];
  const text = line?.text.slice(fact.span.start, fact.span.end) ?? "";
  const quantity = /\sat\s+(.*)$/u.exec(text)?.[1] ?? "";
  const span: Span = {
    ...fact.span,
    start: fact.span.end - quantity.length,
  };
  const wants = dimensionNames(warn);
  if (dimension !== undefined)
    return {
      span,
      message: `${capitalised(dimensionNames([dimension]))} sets no threshold of \`${code}\`, which is held against ${wants}: this line changes nothing until it is one.`,
      fixes: [commentOut(fact.span)],
    };
  const system = valueIn(entry, "UnitsFact") ?? "";
  const units = usualUnits(warn, system).slice(0, 3);
  return {
    span,
    message: `The threshold of \`${code}\` is ${wants}, and \`${quantity}\` has no unit: this line changes nothing until it is ${oneOf(units.map((unit) => `${quantity} ${unit}`))}.`,
    fixes: units.map((unit) => ({
      title: `Write \`${quantity} ${unit}\``,
      safe: false,
      edits: [{ span: { ...span, start: span.end }, text: ` ${unit}` }],
    })),
  };
}
