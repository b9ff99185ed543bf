// The traps of numbers: fractions and commas in readings, several commas in one number, a grade or a size without its scale.
import type { Damage } from "./explain.ts";
import { readsWhole, readsWith, type Asked, isReading } from "./asked.ts";

export function fractionInReading(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  if (!isReading(asked)) return undefined;
  // `2/11/26` is a date
  const found = /(?<![\w./-])(?:\d+(?:\s+|-))?\d+\/\d+(?![\d/])/.exec(body);
  if (found === null) return undefined;
  const [text] = found;
  const [start, end] = [found.index, found.index + text.length];
  // what stops behind it is another fault: a station may be a fraction
  if (end <= stoppedAt) return undefined;
  const decimal = fractionOf(text)?.decimal;
  const say = decimal === undefined ? "" : `: ${text} is ${decimal}`;
  return {
    start,
    end,
    message: `A reading is a decimal, as the gauge shows it, never a fraction${say}.`,
    ...(decimal === undefined ? {} : { mended: decimal }),
  };
}

/** What a fraction comes to, and as a decimal where that ends within nine places: 7/8 is 0.875, and 1/3 has no end. */
export function fractionOf(
  text: string,
): { readonly value: number; readonly decimal?: string } | undefined {
  const found = /(?:(\d+)[\s-]+)?(\d+)\/(\d+)/u.exec(text);
  if (found === null) return undefined;
  const whole = Number(found[1] ?? 0);
  const [over, under] = [Number(found[2]), Number(found[3])];
  const value = whole + over / under;
  return (1e9 * (over % under)) % under === 0
    ? { value, decimal: String(Number(value.toFixed(9))) }
    : { value };
}

/** `nominal 7/8in` */
export function gluedFraction(body: string, asked: Asked): Damage | undefined {
  const found = /(?<!\S)(?:\d+-)?\d+\/\d+\p{L}+(?=\s|$)/u.exec(body);
  if (found === null) return undefined;
  const { 0: text, index: start } = found;
  const end = start + text.length;
  const mended = text.replace(/(?=\p{L})/u, " ");
  if (!readsWith(body, { start, end, text: mended }, asked)) return undefined;
  return {
    start,
    end,
    message: `A fraction and its unit are parted by a blank: write \`${mended}\`.`,
    mended,
  };
}

/** `read near 0.8743x 0.8742`, `0.8743 and 0.8742`: a key that slipped, or a sign or a word for the blank */
export function signBetweenReadings(
  body: string,
  asked: Asked,
): Damage | undefined {
  const signs = [...body.matchAll(BETWEEN)];
  const [first] = signs;
  const last = signs.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const whole = body.replaceAll(BETWEEN, " ");
  if (!readsWhole(whole, asked)) return undefined;
  const start = body.slice(0, first.index).search(/\S+$/u);
  const end =
    body.length -
    body.slice(last.index + last[0].length).replace(/^\S+/u, "").length;
  const mended = body.slice(start, end).replaceAll(BETWEEN, " ");
  return {
    start,
    end,
    message: `Values of a reading are parted by blanks alone: write \`${mended}\`.`,
    mended,
  };
}

const BETWEEN =
  /(?<=\d)(?:\s*[xX\u00D7*&]\s*|-\s*|\s+and\s+|,(?=\.))(?=\d*\.\d)/gu;

/** `length 30 x 2`, `chamfer 1 x 45 deg` */
export function timesAnother(body: string, asked: Asked): Damage | undefined {
  const found = TWO_FIGURES.exec(body);
  if (found?.groups === undefined) return undefined;
  const { index: start } = found;
  const { one = "", rest = "" } = found.groups;
  const end = body.length;
  const head = body.slice(0, start + one.length);
  if (!readsWhole(head, asked)) return undefined;
  const isSigned = ["ak", "ak on 2026-11-05"].some((who) =>
    readsWhole(`${head} by ${who}`, asked),
  );
  if (rest.startsWith("by") && isSigned) return undefined;
  return { start, end, ...sayTimes(body.slice(start), `${one} # ${rest}`) };
}

/** What is said of two figures where one belongs. */
function sayTimes(
  written: string,
  mended: string,
): Pick<Damage, "message" | "mended"> {
  return {
    message: `\`${written}\` is two figures, one by the other or one so many times, and here stands one: write that, and the rest behind a \`#\`, as in \`${mended}\`.`,
    mended,
  };
}

/** `30x2`, `1x45deg`, which thou.ohm reads as a size with a class or a unit; undefined where it looks otherwise. */
export function gluedFigures(
  written: string,
): Pick<Damage, "message" | "mended"> | undefined {
  const found = GLUED.exec(written);
  if (found === null) return undefined;
  return sayTimes(written, `${written.slice(0, found.index)} # ${found[1]}`);
}

const GLUED = /(?<=[\d.\s]|mm|in)\s*(x\d+[\p{L}\u00B0]*)$/iu;

const TWO_FIGURES =
  /(?<=\s)(?<one>[.\d][\d./-]*(?:\s*(?!(?:x|by)\b)\p{L}+)?)\s*(?<rest>(?:[xX\u00D7*]|by(?=\s))\s*[.\d].*)$/u;

/** `read near 0.8743" 0.8742"`, `read near 0.8743 in 0.8742 in` */
export function unitOfEachReading(
  body: string,
  asked: Asked,
): Damage | undefined {
  const pairs = [...body.matchAll(VALUE_WITH_UNIT)];
  const [first, last] = [pairs[0], pairs.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const { index: start, 2: unit } = first;
  const end = last.index + last[0].length;
  // nothing else may stand between them, and none may have another unit
  const rest = body.slice(start, end).replaceAll(VALUE_WITH_UNIT, "");
  if (!/^[\s,;]*$/u.test(rest) || pairs.some(([, , each]) => each !== unit))
    return undefined;
  const values = pairs.map(([, value]) => value);
  const mended = [...values, unit === '"' ? "in" : unit].join(" ");
  if (!readsWith(body, { start, end, text: mended }, asked)) return undefined;
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
  asked: Asked,
): Damage | undefined {
  if (!isReading(asked)) return undefined;
  const found =
    /(?<=^\S+\s+(?:(?:od|id)\s+)?)\p{L}[\p{L}\d-]*\s*[,;:=](?=\s*[.\d])/u.exec(
      body,
    );
  if (found === null) return undefined;
  const { 0: text, index: start } = found;
  const end = start + text.length;
  const place = text.replace(/\s*.$/u, "");
  const values = body.slice(end).trimStart();
  const mended = /^\s/u.test(body.slice(end)) ? place : `${place} `;
  return {
    start,
    end,
    message: `No mark stands between \`${place}\` and its values: write \`${place} ${values.replace(/\s.*/u, "")}\`.`,
    ...(readsWith(body, { start, end, text: mended }, asked)
      ? { mended, safe: true }
      : {}),
  };
}

/** Values of a reading are parted by blanks. */
export function commasInReading(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  if (!isReading(asked)) return undefined;
  // the figure that ends a place, `near-1, 0.5`, is no value
  const values =
    /(?<![\p{L}\d_-])(?:\.?\d[\dOolI.]*(?:\s*[,;]\s+|;))+\.?\d[\dOolI.]*/u.exec(
      body,
    ) ?? SLASHED.exec(body);
  if (values === null) return undefined;
  const { index } = values;
  const end = index + values[0].length;
  // what stops before them is another fault
  if (stoppedAt <= index) return undefined;
  const text = values[0].replaceAll(/\s*[,;/]\s*/gu, " ");
  return {
    start: index,
    end,
    message: `Values of a reading are parted by blanks, not by ${values[0].includes("/") ? "strokes" : "commas"}: write \`${text}\`.`,
    ...(readsWith(body, { start: index, end, text }, asked)
      ? { mended: text, safe: true }
      : {}),
  };
}

/** With a point in each: `7/8` is a fraction. */
const SLASHED =
  /(?<![\p{L}\d_./-])\d*\.\d+(?:\s*\/\s*\d*\.\d+)+(?![\p{L}\d./])/u;

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

/** `centre 0,0`, where two numbers stand and the comma was read as a point */
export function twoNumbersInOne(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const found = /(?<=\s[+-]?\d+),(?=[+-]?\d+$)/u.exec(body);
  if (found === null || stoppedAt < body.length) return undefined;
  const start = body.slice(0, found.index).search(/\S+$/u);
  const mended = body.slice(start).replace(",", ", ");
  const end = body.length;
  if (!readsWith(body, { start, end, text: mended }, asked)) return undefined;
  return {
    start,
    end,
    message: `Two numbers stand here, and a comma parts them with a blank behind it: write \`${mended}\`.`,
    mended,
    safe: true,
  };
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
export function gradeAlone(body: string): Damage | undefined {
  const found = /(?<=^grade\s+)(?:(?:ISO|VG)\s*)?-?\d+$/iu.exec(body);
  if (found === null) return undefined;
  const { 0: text, index: start } = found;
  const number = text.replace(/\D+/u, "");
  const isAlone = text === number;
  const way =
    !isAlone || ISO_VG.includes(number)
      ? `ISO VG ${number}`
      : SAE.includes(number)
        ? `SAE ${number}`
        : undefined;
  return {
    start,
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
export function namedSize(body: string): Damage | undefined {
  const found = /(?<=^size\s+)(?:number|num|nr\.?|no\.)\s*\d+$/iu.exec(body);
  if (found === null) return undefined;
  const mended = found[0].replace(/\D+/u, "no ");
  return {
    start: found.index,
    end: body.length,
    message: `A number size is written \`${mended}\`.`,
    mended,
    safe: true,
  };
}
