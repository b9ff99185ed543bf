// The traps of numbers: fractions and commas in readings, several commas in one number, a grade or a size without its scale.
import type { Damage } from "./explain.ts";
import { reads, readsWith } from "./mend.ts";

const READING = /(?:Read|Repeat)Fact/;

export function fractionInReading(
  body: string,
  rule: string,
  stoppedAt: number,
): Damage | undefined {
  if (!READING.test(rule)) return undefined;
  const fraction = /(?<![\w./-])(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)/.exec(body);
  if (fraction === null || fraction.index + fraction[0].length < stoppedAt)
    return undefined;
  const [text, whole = "0", over = "", under = ""] = fraction;
  const value = Number(whole) + Number(over) / Number(under);
  // no more digits than the fraction has: 7/8 is 0.875, and 1/3 has no end
  const decimal = String(Number(value.toFixed(9)));
  const isExact =
    Number.isFinite(value) && Math.abs(Number(decimal) - value) < 1e-14;
  const say = isExact ? `: ${text} is ${decimal}` : "";
  return {
    start: fraction.index,
    end: fraction.index + text.length,
    message: `A reading is a decimal, as the gauge shows it, never a fraction${say}.`,
    ...(isExact ? { mended: decimal } : {}),
  };
}

/** `nominal 7/8in` */
export function gluedFraction(body: string, rule: string): Damage | undefined {
  const found = /(?<!\S)((?:\d+-)?\d+\/\d+)(\p{L}+)(?=\s|$)/u.exec(body);
  const [text, fraction = "", unit = ""] = found ?? [];
  if (found === null || text === undefined) return undefined;
  const { index: start } = found;
  const end = start + text.length;
  const mended = `${fraction} ${unit}`;
  if (!readsWith(body, { start, end, text: mended }, rule)) return undefined;
  return {
    start,
    end,
    message: `A fraction and its unit are parted by a blank: write \`${mended}\`.`,
    mended,
  };
}

/** `read near 0.8743" 0.8742"`, `read near 0.8743 in 0.8742 in` */
export function unitOfEachReading(
  body: string,
  rule: string,
): Damage | undefined {
  if (!READING.test(rule)) return undefined;
  const pairs = [...body.matchAll(VALUE_WITH_UNIT)];
  const [first, second] = pairs;
  const last = pairs.at(-1);
  if (first === undefined || second === undefined || last === undefined)
    return undefined;
  const { index: start } = first;
  const end = last.index + last[0].length;
  const [, , unit = ""] = first;
  // nothing else may stand between them, and none may have another unit
  const rest = body.slice(start, end).replaceAll(VALUE_WITH_UNIT, "");
  if (!/^[\s,;]*$/u.test(rest) || pairs.some(([, , each]) => each !== unit))
    return undefined;
  const values = pairs.map(([, value = ""]) => value).join(" ");
  const mended = `${values} ${unit === '"' ? "in" : unit}`;
  if (!readsWith(body, { start, end, text: mended }, rule)) return undefined;
  return {
    start,
    end,
    message: `The unit of a reading stands once, after the last of its values: write \`${mended}\`.`,
    mended,
    safe: true,
  };
}

const VALUE_WITH_UNIT = /(?<!\S)(\.?\d[\d.]*)\s*("|\p{L}+)(?=[\s,;]|$)/gu;

/** `read near-1, 0.5` */
export function commaAfterPlace(
  body: string,
  rule: string,
): Damage | undefined {
  if (!READING.test(rule)) return undefined;
  const found =
    /^(\S+\s+(?:(?:od|id)\s+)?)(\p{L}[\p{L}\d-]*)(\s*[,;:]\s*)(?=[.\d])/u.exec(
      body,
    );
  const [all, before = "", place = ""] = found ?? [];
  if (all === undefined) return undefined;
  const text = /\s$/u.test(all) ? place : `${place} `;
  return {
    start: before.length,
    end: all.trimEnd().length,
    message: `No mark stands between \`${place}\` and its values: write \`${place} ${body.slice(all.length).split(/\s/u)[0] ?? ""}\`.`,
    ...(reads(`${before}${place} ${body.slice(all.length)}`, rule)
      ? { mended: text, safe: true }
      : {}),
  };
}

/** Values of a reading are parted by blanks. */
export function commasInReading(
  body: string,
  rule: string,
  stoppedAt: number,
): Damage | undefined {
  if (!READING.test(rule)) return undefined;
  // the figure that ends a place, `near-1, 0.5`, is no value
  const values =
    /(?<![\p{L}\d_-])(?:\.?\d[\d.]*(?:\s*[,;]\s+|;))+\.?\d[\d.]*/u.exec(body);
  if (values === null) return undefined;
  const { index } = values;
  const end = index + values[0].length;
  if (stoppedAt < index || end < stoppedAt) return undefined;
  const text = values[0].replaceAll(/\s*[,;]\s*/gu, " ");
  return {
    start: index,
    end,
    message: `Values of a reading are parted by blanks, not by commas: write \`${text}\`.`,
    ...(readsWith(body, { start: index, end, text }, rule)
      ? { mended: text, safe: true }
      : {}),
  };
}

/** `1,250,000` */
export function commasInNumber(
  body: string,
  stoppedAt: number,
): Damage | undefined {
  for (const found of body.matchAll(/(?<![\w.,])\d+(?:,\d+){2,}(?:\.\d+)?/g)) {
    const end = found.index + found[0].length;
    if (stoppedAt < found.index || end < stoppedAt) continue;
    return { start: found.index, end, code: "number-comma", message: "" };
  }
  return undefined;
}

// ISO 3448 and SAE J300 and J306 number their grades apart
const ISO_VG = [
  ...["2", "3", "5", "7", "10", "15", "22", "32", "46", "68", "100", "150"],
  ...["220", "320", "460", "680", "1000", "1500", "2200", "3200"],
];
const SAE = [
  "20",
  "30",
  "40",
  "50",
  "60",
  "80",
  "85",
  "90",
  "110",
  "140",
  "190",
];

/** `grade 46` */
export function gradeAlone(body: string, rule: string): Damage | undefined {
  const found = /^(grade\s+)((?:ISO|VG)?\s*-?(\d+))$/iu.exec(body);
  const [, before = "", text = "", number = ""] = found ?? [];
  if (rule !== "GradeFact" || found === null) return undefined;
  const isAlone = text === number;
  const way =
    !isAlone || ISO_VG.includes(number)
      ? `ISO VG ${number}`
      : SAE.includes(number)
        ? `SAE ${number}`
        : undefined;
  return {
    start: before.length,
    end: body.length,
    message:
      way === undefined
        ? "A grade says by which scale, as `ISO VG 46` or `SAE 30`, and no scale has this one."
        : isAlone
          ? `A grade says by which scale: \`${way}\`.`
          : `This grade is written \`${way}\`.`,
    ...(way === undefined ? {} : { mended: way }),
  };
}

/** `size number 7` for `size no 7` */
export function namedSize(body: string, rule: string): Damage | undefined {
  const found = /^(size\s+)(?:number|num|nr\.?|no\.)\s*(\d+)$/iu.exec(body);
  if (rule !== "SizeFact" || found === null) return undefined;
  const mended = `no ${found[2] ?? ""}`;
  return {
    start: found[1]?.length ?? 0,
    end: body.length,
    message: `A number size is written \`${mended}\`.`,
    mended,
    safe: true,
  };
}
