// Owns the shapes of limits and tolerance zones, and how a zone and a step are found in whole tenths of a nanometre, so that an
// inch size and its metric equal are one number. It knows no standard.

import { tenthsToMetres } from "../quantity/exact.ts";

export type Feature = "hole" | "shaft";

/** Two sizes, or two clearances, in metres; lower ≤ upper. */
export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** Limits of size of one feature about a nominal size, with the deviations that gave them; all in metres. */
export interface Zone extends Limits {
  readonly feature: Feature;
  readonly lowerDeviation: number;
  readonly upperDeviation: number;
}

/** Whole tenths of a nanometre in a length of one millimetre, one micrometre, and a hundred-thousandth of an inch. */
export const tenthsPerMillimetre = 1e7;
export const tenthsPerMicrometre = 1e4;
export const tenthsPerHundredThousandthInch = 2540;
/** 25.4 mm in tenths of a nanometre. */
export const tenthsPerInch = 254e6;

/** The zone of a feature from its nominal size and deviations, all in whole tenths of a nanometre. */
export function zoneOf(
  feature: Feature,
  size: number,
  lowerDeviation: number,
  upperDeviation: number,
): Zone {
  return {
    feature,
    lower: tenthsToMetres(size + lowerDeviation),
    upper: tenthsToMetres(size + upperDeviation),
    lowerDeviation: tenthsToMetres(lowerDeviation),
    upperDeviation: tenthsToMetres(upperDeviation),
  };
}

/** Index of the step "over the one before, up to and including this one" that a size falls in, or -1 beyond the last. */
export function stepOf(
  size: number,
  stepsUpTo: readonly number[],
  tenthsPerUnit: number,
): number {
  return stepsUpTo.findIndex(
    (step) => size <= Math.round(step * tenthsPerUnit),
  );
}
