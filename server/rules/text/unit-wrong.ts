// A unit that is none, or that measures something else.
import { gluedWord } from "../../../grammar/explain-words.ts";
import { lineSpec } from "../../../grammar/vocabulary.ts";
import type { Dimension } from "../../core/quantity/units.ts";
import type { Entry } from "../../model/entry.ts";
import type { Span } from "../../model/values.ts";
import type { TextRule } from "../rule.ts";
import { dimensionNames, unitMeant, usualUnits } from "./unit-names.ts";
import { oneOf, writeInstead } from "./wording.ts";

export const unitWrong: TextRule = {
  code: "unit-wrong",
  level: "error",
  draft({ span, data }, entry) {
    const unit = String(data.unit);
    const measures = String(data.measures);
    // the model writes only dimensions
    const wanted = [data.wanted ?? []].flat() as readonly Dimension[];
    const place = dimensionNames(wanted);
    const usual = usualUnits(wanted, "");
    const { words, same, note } = unitMeant(unit, wanted);
    if (0 < words.length) {
      const because =
        measures === ""
          ? `\`${unit}\` is no unit${wanted.length === 0 ? "" : ` of ${place}`}`
          : `\`${unit}\` measures ${dimensionNames([measures as Dimension])}, and here stands ${place}`;
      return {
        message: `${because}: did you mean ${oneOf(words)}?`,
        fixes: writeInstead(span, words).map((fix) => ({
          ...fix,
          safe: same,
        })),
      };
    }
    if (measures !== "")
      return {
        message: `\`${unit}\` measures ${dimensionNames([measures as Dimension])}, and here stands ${place}: write ${oneOf(usual)}.`,
        fixes: writeInstead(span, usual.slice(0, 3)),
      };
    if (note !== undefined)
      return {
        message: `\`${unit}\` is no unit of this record, and ${note}: write the value in ${oneOf(usual)}.`,
      };
    const glued = gluedTo(span, entry);
    if (glued !== undefined) return glued;
    const isReading = entry.facts.some(
      (fact) => fact.span.line === span.line && /Read|Repeat/.test(fact.rule),
    );
    const clause = isReading ? clauseFor(unit) : undefined;
    if (clause !== undefined)
      return {
        message: `\`${unit}\` is no unit of ${place}: ${clause.says}, \`${clause.text}\`.`,
        fixes: writeInstead(span, [clause.text]),
      };
    const hint =
      isReading && wanted.includes("length")
        ? "; a place's name stands before its values, a gauge's behind `with`"
        : "";
    return {
      message:
        wanted.length === 0
          ? `\`${unit}\` is no unit that this record knows; a remark goes behind a \`#\`.`
          : `\`${unit}\` is no unit of ${place}: write ${oneOf(usual)}${hint}; a remark goes behind a \`#\`.`,
    };
  },
};

/** `read 0.8743 mic-1`, `read 0.8743 AK`: what a name that looks so is of. */
function clauseFor(
  written: string,
): { readonly says: string; readonly text: string } | undefined {
  if (/^\p{Lu}{2,3}$/u.test(written))
    return { says: "who read it stands behind `by`", text: `by ${written}` };
  return /^\p{L}[\p{L}-]+-?\d+$/u.test(written)
    ? { says: "a gauge stands behind `with`", text: `with ${written}` }
    : undefined;
}

/** `read 0.8743 byAK` */
function gluedTo(
  span: Span,
  { kind, block }: Entry,
): ReturnType<TextRule["draft"]> | undefined {
  const line = block.lines[span.line];
  const rule = lineSpec(kind, line?.word ?? "", span.line === 0)?.rule;
  if (line === undefined || rule === undefined) return undefined;
  const found = gluedWord(line.body, { rule });
  return found?.mended === undefined || found.start + line.indent !== span.start
    ? undefined
    : {
        message: found.message,
        fixes: writeInstead(span, [found.mended]),
      };
}
