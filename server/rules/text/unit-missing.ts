// A number that needs a unit and has none. Only a length may stand bare, in the file's unit, and then all of its range do.
import { unitOf, type Dimension } from "../../core/quantity/units.ts";
import type { DraftFix, TextRule } from "../rule.ts";
import type { Span } from "../../model/values.ts";
import { dimensionNames, usualUnits } from "./unit-names.ts";
import { capitalised } from "../../model/sentences.ts";
import { oneOf } from "./wording.ts";

export const unitMissing: TextRule = {
  code: "unit-missing",
  level: "error",
  draft({ span, data }) {
    const system = String(data.system);
    if (typeof data.class === "string")
      return classUnit(span, String(data.number), data.class, system);
    // the model writes only dimensions
    const wanted = [data.wanted ?? []].flat() as readonly Dimension[];
    const bareNumber = String(data.number);
    const number = wanted.includes("expansion")
      ? inMillionths(bareNumber)
      : bareNumber;
    const written = [...new Set([data.written ?? []].flat())].filter(
      (each) => unitOf(each) !== undefined,
    );
    const ends = [data.ends ?? []].flat().map(Number);
    const bare = system === "inch" ? "in" : system;
    const units =
      0 < written.length && wanted.includes("length") && bare !== ""
        ? [...new Set([...written, bare])]
        : 0 < written.length
          ? written
          : usualUnits(wanted, system).slice(0, 3);
    const [only, other] = units;
    const fixes = units.map((unit): DraftFix => ({
      title: `Write \`${number} ${unit}\``,
      // one unit measures it, and no other can be meant
      safe: other === undefined && written.length === 0,
      edits: ends.map((end) =>
        number === bareNumber
          ? { span: { ...span, start: end, end }, text: ` ${unit}` }
          : {
              span: { ...span, start: end - bareNumber.length, end },
              text: `${number} ${unit}`,
            },
      ),
    }));
    const show = oneOf(units.map((unit) => `${number} ${unit}`));
    if (0 < written.length)
      return {
        message: `Some of these have a unit and \`${number}\` has none: write all of them, or one at the end for all, as ${show}.`,
        fixes,
      };
    const what = capitalised(dimensionNames(wanted));
    return {
      message:
        only === undefined
          ? `\`${number}\` needs its unit.`
          : `${what} needs its unit, and \`${bareNumber}\` has none: write ${show}.`,
      fixes,
    };
  },
};

/** `18` for `18e-6`: the units of an expansion are millionths, and so small a number says them already. */
function inMillionths(number: string): string {
  const value = Number(number);
  return 0 < value && value < 1e-3
    ? String(Number((value * 1e6).toPrecision(12)))
    : number;
}

/** `25 H7` or `7/8 g6` in an inch record: which unit was meant can't be told, but a size that is no whole number is more likely in inches. */
function classUnit(
  span: Span,
  number: string,
  className: string,
  system: string,
): ReturnType<TextRule["draft"]> {
  const standard = system === "mm" ? "ISO 286" : "ANSI B4.1";
  const ofClass = system === "mm" ? "mm" : "inches";
  const ofRecord = system === "mm" ? "inches" : "mm";
  const units = /^\d+$/.test(number) ? ["mm", "in"] : ["in", "mm"];
  return {
    message: `\`${className}\` is a class of ${standard}, which counts in ${ofClass}, and bare sizes of this record are in ${ofRecord}: write ${oneOf(units.map((unit) => `${number} ${unit} ${className}`))}.`,
    fixes: units.map((unit) => ({
      title: `Write \`${number} ${unit} ${className}\``,
      safe: false,
      edits: [{ span: { ...span, start: span.end }, text: ` ${unit}` }],
    })),
  };
}
