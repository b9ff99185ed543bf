// Lengths that a person types while a job is begun, and how they are written into it: exactly, as decimals of the job's unit.
import {
  readNumber,
  tenthsToMetres,
  toTenths,
  type Written,
} from "../../core/quantity/exact.ts";
import {
  UNIT_OF_SYSTEM,
  fixed,
  type System,
} from "../../core/quantity/show.ts";
import { unitOf } from "../../core/quantity/units.ts";
import { sayLetters, withDigits } from "../../../grammar/digit-letters.ts";
import type { Fault } from "../interview.ts";

export interface Size {
  /** As the record writes it, bare. */
  readonly text: string;
  /** m */
  readonly metres: number;
}

/** The largest diameter or length of a part, and of a shaft from end to end, m. */
const LARGEST = 3;
export const LONGEST_SHAFT = 100;
const SMALLEST = 1e-5; // m

/** A length above nought in the job's unit: `7/8`, `0.875`, `22.2 mm`. */
export function readSize(
  text: string,
  system: System,
  largest = LARGEST,
): { readonly value: Size } | Fault {
  const example =
    system === "inch" ? "0.875, 7/8 or 22 mm" : "22, 22.5 or 7/8 in";
  const match = /^(.*?) *("|[\p{L}\u{B5}]*)$/u.exec(
    text.replaceAll("\u{A0}", " "),
  );
  const [, digits = "", word = ""] = match ?? [];
  if (/\d,\d/u.test(digits))
    return {
      fault: `Write a point for the decimals: ${text.replaceAll(",", ".").slice(0, 30)}.`,
    };
  const meant = withDigits(text);
  if (meant !== text && /^[\d./]+$/u.test(meant))
    return { fault: sayLetters(text, meant).message };
  const written = readNumber(digits);
  const unit = unitOf(word === "" ? UNIT_OF_SYSTEM[system] : word);
  if (written === undefined || unit?.tenths === undefined)
    return { fault: `Write a length, such as ${example}.` };
  const tenths = toTenths(written, unit.tenths);
  const metres = tenthsToMetres(tenths);
  if (!(SMALLEST <= metres && metres <= largest))
    return {
      fault: `Write a length above nought and up to ${digitsFor(largest, system, 0)} ${UNIT_OF_SYSTEM[system]}, such as ${example}.`,
    };
  return { value: { text: digitsOf(written, unit.tenths, system), metres } };
}

/** Decimals of the job's unit: those that were written where it is that unit, else as many as tell the length. */
function digitsOf(written: Written, perUnit: bigint, system: System): string {
  const own = unitOf(UNIT_OF_SYSTEM[system])?.tenths ?? 1n;
  const value =
    (Number(written.numerator) / Number(written.denominator)) *
    (Number(perUnit) / Number(own));
  const decimals = system === "inch" ? 6 : 5;
  const kept = perUnit === own ? (written.decimals ?? 0) : 0;
  const shortest = String(Number(fixed(value, decimals)));
  const has = shortest.split(".")[1]?.length ?? 0;
  return has < kept && kept <= decimals ? fixed(value, kept) : shortest;
}

/** From this diameter in inches, and below this in millimetres, a journal is seldom: a bare number was most likely read in the other unit. No source. */
const SELDOM_INCHES = 10;
const SELDOM_MILLIMETRES = 1.5;

export interface Doubt {
  /** As it was typed, in each unit. */
  readonly typed: string;
  readonly meant: string;
  readonly size: Size;
}

/** What a diameter would be in the unit that the job does not have, where it has no unit and is seldom so large, or so small, in the job's own. */
export function otherwiseMeant(
  text: string,
  system: System,
): Doubt | undefined {
  if (!/^[-\d./ ]+$/u.test(text)) return undefined;
  const typed = `${text} ${UNIT_OF_SYSTEM[system]}`;
  const meant = `${text} ${UNIT_OF_SYSTEM[system === "inch" ? "mm" : "inch"]}`;
  const read = readSize(typed, system);
  const otherwise = readSize(meant, system);
  if ("fault" in read || "fault" in otherwise) return undefined;
  const isSeldom =
    system === "inch"
      ? SELDOM_INCHES * 0.0254 <= read.value.metres
      : read.value.metres < SELDOM_MILLIMETRES * 0.001;
  return isSeldom ? { typed, meant, size: otherwise.value } : undefined;
}

/** A length in m as a bare decimal of the job's unit. */
export function digitsFor(
  metres: number,
  system: System,
  decimals: number,
): string {
  return fixed(metres / (system === "inch" ? 0.0254 : 0.001), decimals);
}
