// Owns the mean, the scatter and the extremes of a list of readings, and the scatter pooled over groups of repeats.
// Does not own what the readings are of: readings round a bore are form, repeats at one place are noise.
import { notValid, valid, type Answer } from "../answer.ts";

/** Readings that were taken one after the other at one place. */
export interface Repeatability {
  /** Experimental standard deviation of one reading, in the readings' unit. */
  readonly standardDeviation: number;
  readonly degreesOfFreedom: number;
}

/**
 * Arithmetic mean, in the values' unit. Compensated sum (Neumaier), then corrected by the mean of the residuals, so
 * that values which differ only in their last digits lose nothing. Refuses an empty list and values that are not finite.
 * Range: any list whose sum is a double. Source: definition; the summation from memory (Neumaier 1974).
 */
export function mean(values: readonly number[]): Answer<number> {
  const fault = faultIn(values, 1);
  return fault === undefined ? valid(meanOf(values)) : notValid(fault);
}

/**
 * Experimental standard deviation (divisor n − 1), in the values' unit: squares about the compensated mean, summed alike.
 * Refuses fewer than two values and values that are not finite.
 * Source: the definition (JCGM 100:2008, eq. 4, from memory).
 */
export function standardDeviation(values: readonly number[]): Answer<number> {
  const fault = faultIn(values, 2);
  return fault === undefined
    ? valid(Math.sqrt(squaresAboutMean(values) / (values.length - 1)))
    : notValid(fault);
}

/** The largest value, in the values' unit. Refuses an empty list and values that are not finite. */
export function largest(values: readonly number[]): Answer<number> {
  const fault = faultIn(values, 1);
  return fault === undefined
    ? valid(values.reduce((a, b) => Math.max(a, b)))
    : notValid(fault);
}

/** The smallest value, in the values' unit. Refuses an empty list and values that are not finite. */
export function smallest(values: readonly number[]): Answer<number> {
  const fault = faultIn(values, 1);
  return fault === undefined
    ? valid(values.reduce((a, b) => Math.min(a, b)))
    : notValid(fault);
}

/**
 * Repeatability pooled over groups of repeats: each group about its own mean, s² = Σ squares / Σ (n − 1). The groups may
 * be of different places or parts, since only the scatter within each counts; a group of one reading gives nothing.
 * Refuses when no group has two readings, and values that are not finite.
 * Source: IUPAC, Pure Appl. Chem. 53 (1981) 1805, p. 1821 (pooled standard deviation), as its Gold Book P04758 gives it.
 */
export function pooledRepeatability(
  groups: readonly (readonly number[])[],
): Answer<Repeatability> {
  const repeated = groups.filter((group) => 1 < group.length);
  if (repeated.length === 0)
    return notValid("repeatability needs two repeats at one place at least");
  const squares: number[] = [];
  let degreesOfFreedom = 0;
  for (const group of repeated) {
    const fault = faultIn(group, 2);
    if (fault !== undefined) return notValid(fault);
    squares.push(squaresAboutMean(group));
    degreesOfFreedom += group.length - 1;
  }
  return valid({
    standardDeviation: Math.sqrt(sum(squares) / degreesOfFreedom),
    degreesOfFreedom,
  });
}

function faultIn(
  values: readonly number[],
  atLeast: number,
): string | undefined {
  if (values.length < atLeast)
    return atLeast === 1
      ? "there are no readings"
      : "the scatter of readings needs two of them at least";
  return values.every(Number.isFinite)
    ? undefined
    : "a reading is not a finite number";
}

function meanOf(values: readonly number[]): number {
  const first = sum(values) / values.length;
  return first + sum(values.map((value) => value - first)) / values.length;
}

function squaresAboutMean(values: readonly number[]): number {
  const middle = meanOf(values);
  return sum(values.map((value) => (value - middle) ** 2));
}

// what each addition loses is kept and added at the end
function sum(values: readonly number[]): number {
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost +=
      Math.abs(value) <= Math.abs(total)
        ? total - next + value
        : value - next + total;
    total = next;
  }
  return total + lost;
}
