// How people write a range otherwise than with `to`: each form with how it is written here. It reads no number for its value but to tell a
// second size from a deviation.
import type { Damage } from "./explain.ts";
import { fractionOf } from "./explain-numbers.ts";

const NUMBER = String.raw`(?:(?:\d+(?: +|-))?\d+\/\d+(?![\d.])|\d+[.,]?\d*|\.\d+)`;
const BETWEEN = String.raw`(?:-|\u2013|\u2014|\u2212|\.{2,3}|\u2026|~|\/|thru|through|until|till|and|bis|up\s+to|,)`;
const UNIT = String.raw`(?:\s*(?!(?:to|from|thru|through|until|till|and|or|bis|up|of|by|with|at|as|on)\b)[\p{L}\u00B5"%\u00B0](?:[\p{L}\d\u00B7/-]*\p{L})?(?![\p{L}\d]))`;

export const ONE_SIZE = beginning(String.raw`[+\u2212-]?${NUMBER}${UNIT}?$`);

interface Size {
  readonly number: string;
  readonly unit: string;
}

interface Wording {
  readonly message: string;
  readonly text: string;
  readonly safe: boolean;
}

export const FORMS: readonly (readonly [
  RegExp,
  (found: RegExpExecArray) => Wording | undefined,
])[] = [
  [sizes(String.raw`\s*(?<mark>${BETWEEN})\s*`), marked],
  // `to` with a letter too many, too few or beside it
  [
    sizes(
      String.raw`\s+(?<mark>t[^\s\d]o|to[^\s\d]|[^\s\d]to|ot|or|t0|tp|yo|ro)\s+`,
    ),
    marked,
  ],
  // `25 H 7`, whose letter is no unit with a second size behind it
  [
    beginning(String.raw`(?<size>${NUMBER})\s*(?<hole>[A-Za-z]\s+\d{1,2})$`),
    classApart,
  ],
  // `25 H 7 mm`, whose capitals are no unit
  [
    beginning(
      String.raw`(?<size>${NUMBER})\s*(?<hole>(?:(?!IN|MM|CM)[A-Z]{1,2}\s*|(?!in|mm|cm)[a-z]{1,2})\d{1,2})(?<unit>${UNIT})$`,
    ),
    classApart,
  ],
  [sizes(String.raw`\s+`), marked],
  [
    beginning(
      String.raw`(?<size>${NUMBER}${UNIT}?)\s*(?:\+\s*[-\u2212]|\+\s+\/\s*[-\u2212]|\+\/\s+[-\u2212]|plus\s+or\s+minus)\s*(?<by>${NUMBER}${UNIT}?)`,
    ),
    plusMinus,
  ],
  [
    beginning(
      String.raw`(?<size>${NUMBER}${UNIT}?)\s+(?<one>0(?:\.0*)?|\+${NUMBER})\s*\/\s*(?<two>0(?:\.0*)?|[\u2212-]${NUMBER})(?<unit>${UNIT}?)(?!\S)`,
    ),
    zeroWithoutSign,
  ],
  [
    beginning(
      String.raw`(?<size>${NUMBER}${UNIT}?)\s*(?<one>[+\u2212-]\s*${NUMBER})\s*(?:\/\s*)?(?<two>[+\u2212-]\s*${NUMBER})(?<unit>${UNIT}?)`,
    ),
    closedUp,
  ],
  [
    beginning(
      String.raw`(?<size>${NUMBER}${UNIT}?)\s*(?<hole>[A-Za-z]{1,2}\s*\d{1,2})(?:\s*\/?\s*(?<shaft>[A-Za-z]{1,2}\s*\d{1,2}))?$`,
    ),
    classApart,
  ],
  [
    beginning(
      String.raw`(?<size>${NUMBER}${UNIT}?)\s*\+\s*(?<by>${NUMBER})(?<unit>${UNIT}?)`,
    ),
    oneDeviation,
  ],
];

export const AND_OR_TO = sizes(String.raw`\s*(?<mark>to|${BETWEEN})\s*`);

/** `H7`, `H7/f7` */
export const CLASS = String.raw`[A-Za-z]{1,2}\d{1,2}(?:\/[A-Za-z]{1,2}\d{1,2})?`;

/** Of a whole word. */
export const IS_CLASS = new RegExp(`^${CLASS}$`, "u");

/** `h7 25 mm` */
export const CLASS_FIRST = new RegExp(
  String.raw`(?<=^\S+\s+)(?<class>${CLASS})\s+(?<size>${NUMBER}${UNIT}?)$`,
  "u",
);

/** Either end by its word, with what parts it from its size. */
export const LEAST_OR_MOST =
  /\s*[,;/]?\s*\b(?:max|min)(?:imum|\.)?(?![\p{L}\d])[\s:=,;]*/giu;

/** `max 0.04`, `at least 0.02`, `>0.02` */
export const ONE_SIDED = new RegExp(
  String.raw`(?<=^\S+\s+)(?:(?:max(?:imum|\.)?|min(?:imum|\.)?|at\s+(?:least|most)|less\s+than|more\s+than|under|over|up\s+to|[<>\u2264\u2265]=?)\s*${NUMBER}${UNIT}?|${NUMBER}${UNIT}?\s+(?:max|min)(?:imum|\.)?)$`,
  "iu",
);

function sizes(between: string): RegExp {
  return beginning(
    String.raw`(?<one>${NUMBER})(?<oneUnit>${UNIT}?)${between}(?<two>${NUMBER})(?<twoUnit>${UNIT}?)`,
  );
}

function beginning(form: string): RegExp {
  return new RegExp(`^${form}`, "u");
}

export function group(found: RegExpExecArray, name: string): string {
  return found.groups?.[name] ?? "";
}

function closed(found: RegExpExecArray, name: string): string {
  return group(found, name).replaceAll(/\s/gu, "");
}

/** Two sizes with a mark between that is not `to`, or with none. */
export function marked(found: RegExpExecArray): Wording | undefined {
  const mark = group(found, "mark");
  const [one, two]: [Size, Size] = [
    { number: group(found, "one"), unit: group(found, "oneUnit") },
    { number: group(found, "two"), unit: group(found, "twoUnit") },
  ];
  // 7/8 is a fraction, and 1,25 a number with a comma
  if ([",", "/"].includes(mark) && !(hasPoint(one) && hasPoint(two)))
    return undefined;
  return rangeOf(one, two, mark);
}

const DASHES = ["-", "\u2013", "\u2014", "\u2212", "..", "...", "\u2026"];

function hasPoint({ number }: Size): boolean {
  return number.includes(".");
}

function rangeOf(one: Size, two: Size, mark: string): Wording | undefined {
  const first = valueOf(one.number);
  const second = valueOf(two.number);
  const sameUnit =
    one.unit === "" || two.unit === "" || one.unit.trim() === two.unit.trim();
  if (sameUnit && second < first / 2) {
    // 0.8745-0.0005 is a size and what it may be under
    return ["-", "\u2212"].includes(mark)
      ? {
          message: `A size with one deviation needs the other too, even where it is 0: ${said(`${one.number}${one.unit} +0 -${two.number}${two.unit}`)}.`,
          text: `${one.number}${one.unit} +0 -${two.number}${two.unit}`,
          safe: false,
        }
      : undefined;
  }
  if (sameUnit && mark === "" && first * 2 < second) return undefined;
  const [low, high] = sameUnit && second < first ? [two, one] : [one, two];
  // a unit that stands once stands at the end, and counts for both
  const unit = one.unit === "" || two.unit === "" ? one.unit + two.unit : "";
  const text =
    unit === ""
      ? `${low.number}${low.unit} to ${high.number}${high.unit}`
      : `${low.number} to ${high.number}${unit}`;
  return {
    message: `A range is written with \`to\`, the smaller end first: ${said(text)}.`,
    text,
    // a dash between two sizes near each other says nothing else
    safe:
      DASHES.includes(mark) &&
      first < second &&
      (one.unit === "" || two.unit !== ""),
  };
}

function valueOf(number: string): number {
  const fraction = fractionOf(number);
  return fraction === undefined
    ? Number(number.replace(",", "."))
    : fraction.value;
}

export function said(text: string): string {
  return `\`${text}\``;
}

function plusMinus(found: RegExpExecArray): Wording {
  const text = `${group(found, "size")} +/- ${group(found, "by")}`;
  return {
    message: `The same either way is written \`+/-\`: ${said(text)}.`,
    text,
    safe: true,
  };
}

/** `22 mm 0/-0.013`, `22 mm +0.021/0` */
function zeroWithoutSign(found: RegExpExecArray): Wording | undefined {
  const [one, two] = [group(found, "one"), group(found, "two")];
  if (!one.startsWith("0") && !two.startsWith("0")) return undefined;
  const text = `${group(found, "size")} ${one.replace(/^(?=0)/u, "+")} ${two.replace(/^(?=0)/u, "-")}${group(found, "unit")}`;
  return {
    message: `A deviation has a sign, and 0 has one too: ${said(text)}.`,
    text,
    safe: true,
  };
}

function closedUp(found: RegExpExecArray): Wording {
  const text = `${group(found, "size")} ${closed(found, "one")} ${closed(found, "two")}${group(found, "unit")}`;
  return {
    message: `A deviation keeps its sign close: ${said(text)}.`,
    text,
    safe: true,
  };
}

/** `25 mm H 7`, `25 mm H7 / f7`, `25 H 7 mm` */
function classApart(found: RegExpExecArray): Wording {
  const [hole, shaft] = [closed(found, "hole"), closed(found, "shaft")];
  const word = shaft === "" ? hole : `${hole}/${shaft}`;
  const unit = group(found, "unit");
  const text = `${group(found, "size")}${unit} ${word}`;
  const rule =
    unit === ""
      ? "A class is one word"
      : "A unit stands with its size, and a class behind it as one word";
  return { message: `${rule}: ${said(text)}.`, text, safe: true };
}

function oneDeviation(found: RegExpExecArray): Wording {
  // one that is taken off is a mark between two sizes, and found before
  const text = `${group(found, "size")} +${group(found, "by")} -0${group(found, "unit")}`;
  return {
    message: `A size with one deviation needs the other too, even where it is 0: ${said(text)}.`,
    text,
    safe: false,
  };
}

/** `24.959-24.980` as thou.ohm reads it whole, so that the one fault is said once. */
export function mendDashed(
  text: string,
): Pick<Damage, "message" | "mended" | "safe"> {
  const found = sizes(String.raw`\s*(?<mark>${BETWEEN})\s*`).exec(text);
  const said = found === null ? undefined : marked(found);
  return said === undefined
    ? { message: "A range is written with `to`." }
    : { message: said.message, mended: said.text, safe: said.safe };
}
