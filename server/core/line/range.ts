// How two lengths, and the ends of a range of lengths, compare: after rounding to a tenth of a nanometre, as every verdict does.
// It doesn't own readings, limits or tolerance classes.
import type { Band } from "../quantity/band.ts";
import { metresToTenths } from "../quantity/exact.ts";

/** Whether a length is less than another, in whole tenths of a nanometre. */
export function isLess(metres: number, than: number): boolean {
  return metresToTenths(metres) < metresToTenths(than);
}

/**
 * The range between two lengths, or undefined where high is below low by a tenth of a nanometre or more: less than
 * that is the noise of binary fractions, and the two are then one length.
 */
export function orderedRange(low: number, high: number): Band | undefined {
  if (isLess(high, low)) return undefined;
  return low <= high ? { low, high } : { low: high, high: low };
}

/** Why a range can't be used, as the end of "because …", or undefined where it can. */
export function faultOfRange(name: string, range: Band): string | undefined {
  if (!Number.isFinite(range.low) || !Number.isFinite(range.high))
    return `${name} is not a number`;
  if (isLess(range.high, range.low))
    return `${name} runs from the larger to the smaller`;
  return undefined;
}

/** The same for a range of diameters, which must be above zero. */
export function faultOfDiameters(
  name: string,
  range: Band,
): string | undefined {
  return (
    faultOfRange(name, range) ??
    (0 < range.low ? undefined : `${name} is not above zero`)
  );
}
