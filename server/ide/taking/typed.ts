// What a gauge or a hand typed, as a reading: the digits kept as they came, the unit if one came with them. It knows nothing of what was
// to be read.
import {
  readNumber,
  tenthsToMetres,
  toTenths,
} from "../../core/quantity/exact.ts";
import { unitOf } from "../../core/quantity/units.ts";
import { sayLetters, withDigits } from "../../../grammar/digit-letters.ts";

/** The units that a reading may be in, as a line of a record says them. */
export type ReadingUnit =
  "mm" | "in" | "um" | "thou" | "tenths" | "uin" | "cm" | "m";

export interface Typed {
  /** With a point, without sign and needless noughts before it. */
  readonly digits: string;
  /** Undefined where no unit came with it. */
  readonly unit: ReadingUnit | undefined;
  /** A comma with three digits after it: it may part decimals or thousands. */
  readonly hasOpenComma: boolean;
}

/** Reads what was typed, a size or a swing; else why it is no reading, as a sentence. */
export function readTyped(
  text: string,
  isSwing = false,
): Typed | { readonly fault: string } {
  const plain = text
    .replaceAll(/[\p{Cc}\p{Cf}\u{A0}]/gu, " ")
    .trim()
    .replaceAll("\u{2212}", "-");
  const shown = plain.length <= 40 ? plain : `${plain.slice(0, 40)}…`;
  const match = /^([+-]?) *(\d*)([.,]?)(\d*) *(\D*)$/u.exec(plain);
  const [, sign = "", whole = "", mark = "", part = "", word = ""] =
    match ?? [];
  const digitsOnly = withDigits(plain);
  if (digitsOnly !== plain && /^[\d.,]+$/u.test(digitsOnly))
    return {
      fault: `${sayLetters(shown, digitsOnly).message} Measure again, or type it so.`,
    };
  if (match === null || whole + part === "")
    return {
      fault: /\d\/\d/u.test(plain)
        ? `\`${shown}\` is a fraction, and a reading is a decimal, as the gauge shows it. Measure again.`
        : `\`${shown}\` is not a reading. Measure again.`,
    };
  if (12 < whole.length + part.length)
    return {
      fault: `\`${shown}\` has more digits than a gauge shows. Measure again.`,
    };
  const unit = word === "" ? undefined : lengthUnit(word);
  if (word !== "" && unit === undefined)
    return {
      fault: `\`${word.length <= 20 ? word : `${word.slice(0, 20)}…`}\` is no unit of length. Measure again.`,
    };
  const digits =
    (whole.replace(/^0+(?=\d)/u, "") || "0") + (part === "" ? "" : `.${part}`);
  // a pointer may stand still, and a gauge on a part shows something
  if (!isSwing && !/[1-9]/u.test(digits))
    return {
      fault: `The reading is nought. Does the gauge touch on both sides, and does it show the size itself?`,
    };
  if (sign === "-")
    return {
      fault: isSwing
        ? `\`${shown}\` is below nought, and a swing is not. Type how far the pointer went from least to most.`
        : `\`${shown}\` is below nought, and a diameter is not. Set the gauge to show the size itself, and measure again.`,
    };
  return {
    digits,
    unit,
    hasOpenComma:
      mark === "," && part.length === 3 && whole !== "" && !/^0+$/u.test(whole),
  };
}

function lengthUnit(word: string): ReadingUnit | undefined {
  const of = (each: string) => {
    const unit = unitOf(each);
    return unit?.tenths === undefined
      ? undefined
      : (unit.symbol as ReadingUnit); // the lengths of the table are these
  };
  return of(word) ?? of(word.toLowerCase());
}

/** Digits of a unit in m, exactly as the record would read them. */
export function metresOf(digits: string, unit: ReadingUnit): number {
  const written = readNumber(digits);
  const tenths = unitOf(unit)?.tenths;
  if (written === undefined || tenths === undefined)
    throw new Error(`${digits} ${unit} is no length`); // readTyped lets none through
  return tenthsToMetres(toTenths(written, tenths));
}

/** The step of the last digit, m. */
export function stepOf(digits: string, unit: ReadingUnit): number {
  const decimals = digits.split(".")[1]?.length ?? 0;
  return (Number(unitOf(unit)?.tenths ?? 0n) / 1e10) * 10 ** -decimals;
}
