// Owns the two rules that say whether a gauge is fine enough for a tolerance: its uncertainty, and its resolution. They are kept
// apart: a gauge may pass either and fail the other.
import { notValid, valid, type Answer } from "../answer.ts";
import { metresToTenths } from "../quantity/exact.ts";

export interface GaugeRatio {
  /** T/(2U). */
  readonly ratio: number;
  readonly word: "good" | "poor" | "no verdict";
}

export interface Discrimination {
  /** Resolution over tolerance. */
  readonly share: number;
  /** A tenth or less. */
  readonly isFine: boolean;
}

/**
 * Tolerance T (high less low limit, m; for a fit the width of the wanted clearance) over the width 2U of the expanded uncertainty
 * (m, 95 %): from 4 good, under 2 no verdict, poor between. Refuses either not above zero.
 * Source: the ratio as ANSI/NCSL Z540.3-2006 defines it for two-sided tolerances (definition seen as quoted by others); 4 and 2 as
 * bounds: common practice, no source.
 */
export function gaugeRatio(
  tolerance: number,
  expanded: number,
): Answer<GaugeRatio> {
  if (!isAboveZero(tolerance))
    return notValid("a tolerance is a length above zero");
  if (!isAboveZero(expanded))
    return notValid("an expanded uncertainty of nothing gives no ratio");
  const ratio = tolerance / (2 * expanded);
  // a ratio that is 4 but for the rounding of doubles is 4: a tolerance of 1 µm as the difference of two limits of 3 m is good to 1e-9
  const rounded = ratio * (1 + 1e-8);
  return valid({
    ratio,
    word: 4 <= rounded ? "good" : 2 <= rounded ? "poor" : "no verdict",
  });
}

/**
 * Discrimination: a resolution (m) of a tenth of the tolerance (m) or less, both rounded to 1e-10 m. Refuses either not above zero.
 * Source: the rule of ten to one; common practice, no source.
 */
export function discrimination(
  resolution: number,
  tolerance: number,
): Answer<Discrimination> {
  if (!isAboveZero(resolution))
    return notValid("a resolution is a length above zero");
  if (!isAboveZero(tolerance))
    return notValid("a tolerance is a length above zero");
  return valid({
    share: resolution / tolerance,
    isFine: 10 * metresToTenths(resolution) <= metresToTenths(tolerance),
  });
}

function isAboveZero(value: number): boolean {
  return 0 < value && value < Infinity;
}
