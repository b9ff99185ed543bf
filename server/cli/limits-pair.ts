// A measured pair among what `thou limits` is asked: the common fits that it comes nearest to. Reading the words is here; the fits are core/fits'.
import { notValid, valid, type Answer } from "../core/answer.ts";
import { fitsHolding, roundSize, type NearFit } from "../core/fits/nearest.ts";
import {
  metresToTenths,
  readNumber,
  tenthsToMetres,
  toTenths,
} from "../core/quantity/exact.ts";
import { unitOf, type Unit } from "../core/quantity/units.ts";

/** As many as one reads at a glance. */
const MOST = 5;

export interface Pair {
  /** The size that the fits are looked up at, m. */
  readonly size: number;
  /** Clearance of the pair, m, diametral, below zero where it interferes; both ends equal for two single sizes. */
  readonly least: number;
  readonly most: number;
  readonly nearest: readonly NearFit[];
  readonly unit: Unit;
}

const NUMBER = String.raw`[\d.,]+`;
const SIZES = String.raw`(${NUMBER})(?:\s+to\s+(${NUMBER}))?`;
const PAIR = new RegExp(String.raw`^${SIZES}\s*/\s*${SIZES}\s*(\S+)?$`, "u");

/** True for two measured sizes, hole before shaft: at least one is written as a decimal, or they would be a fraction. */
export function isPair(asked: string): boolean {
  const [, ...sizes] = PAIR.exec(asked) ?? [];
  // a range that is not written leaves its place undefined
  const written: readonly (string | undefined)[] = sizes.slice(0, 4);
  return written.some((each) => each?.includes(".") === true);
}

/** Reads "25.013/24.981 mm" or "0.8752 to 0.8755 / 0.8743 in". Refuses what is no number, no unit, or no pair of one size. */
export function pairIn(asked: string): Answer<Pair> {
  const [, ...parts] = PAIR.exec(asked) ?? [];
  const [holeLow, holeHigh, shaftLow, shaftHigh, unitWord] = parts;
  const unit = unitWord === undefined ? undefined : unitOf(unitWord);
  if (unitWord === undefined)
    return notValid("a measured pair takes its unit: write mm or in after it");
  const { tenths } = unit ?? {};
  if (unit === undefined || tenths === undefined)
    return notValid(`${unitWord} is no unit of length: write mm or in`);
  const sizes: number[] = [];
  for (const written of [
    holeLow,
    holeHigh ?? holeLow,
    shaftLow,
    shaftHigh ?? shaftLow,
  ]) {
    const number = readNumber(written ?? "");
    if (number === undefined)
      return notValid(
        `${written ?? ""} is no number${written?.includes(",") === true ? `; did you mean ${written.replace(",", ".")}?` : ""}`,
      );
    sizes.push(tenthsToMetres(toTenths(number, tenths)));
  }
  const [low = NaN, high = NaN, least = NaN, most = NaN] = sizes;
  if (high < low || most < least)
    return notValid("a range runs from the smaller to the larger size");
  if (!(0 < least && 0 < low)) return notValid("a size is above zero");
  if (0.1 * most < Math.abs(low - most))
    return notValid(
      "hole and shaft of a pair are of one size: these differ by more than a tenth",
    );
  const system = unit.symbol === "in" ? "inch" : "iso";
  const size = roundSize((least + most) / 2, system);
  const clearance = {
    least: between(low, most),
    most: between(high, least),
  };
  // a pair that runs free is not told of fits that may not, nor the other way about
  const nearest = fitsHolding(size, system, clearance)
    .filter((fit) => 0 <= fit.clearance.least === 0 <= clearance.least)
    .slice(0, MOST);
  if (nearest.length === 0)
    return notValid(
      `no fit of ${system === "inch" ? "ANSI B4.1" : "ISO 286"} reaches this size`,
    );
  return valid({ size, ...clearance, nearest, unit });
}

/** a − b, to the nearest 0.1 nm. */
function between(a: number, b: number): number {
  return tenthsToMetres(metresToTenths(a - b));
}
