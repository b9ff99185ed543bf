// What repeated jobs teach of one quantity: mean, spread, count, and how sure the mean and the next one are. Whether it changed over time is
// drift.ts's; whether some of them belong apart, odd-groups.ts's.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import { studentCoverage } from "../quantity/student.ts";
import { mean, standardDeviation } from "../readings/statistics.ts";

export interface Sample {
  readonly mean: number;
  /** Experimental standard deviation of one; undefined of a single one, which has none. */
  readonly spread: number | undefined;
  readonly count: number;
}

/** Mean, spread and count, in the values' unit. Refuses an empty list and values that are not finite. */
export function sampleOf(values: readonly number[]): Answer<Sample> {
  const middle = mean(values);
  if (!middle.valid) return middle;
  const spread = standardDeviation(values);
  return valid({
    mean: middle.value,
    spread: spread.valid ? spread.value : undefined,
    count: values.length,
  });
}

/**
 * The interval that holds the true mean in a share `coverage` of samples of independent normal values: mean ± t·s/√n, n − 1 degrees of
 * freedom; wide for few. Refuses a single one. Source: JCGM 100:2008, 4.2.3 and G.3.2 (from memory; its t values seen, see student.ts).
 */
export function meanInterval(sample: Sample, coverage: number): Answer<Band> {
  return around(sample, coverage, Math.sqrt(1 / sample.count));
}

/** The interval that holds the next single one in a share `coverage` of samples: mean ± t·s·√(1 + 1/n). As meanInterval. */
export function nextInterval(sample: Sample, coverage: number): Answer<Band> {
  return around(sample, coverage, Math.sqrt(1 + 1 / sample.count));
}

function around(
  { mean: middle, spread, count }: Sample,
  coverage: number,
  spreads: number,
): Answer<Band> {
  if (spread === undefined || count < 2)
    return notValid("a single one has no spread");
  if (!(0 <= spread && Number.isFinite(middle + spread)))
    return notValid("a spread is below zero, or not a number");
  const factor = studentCoverage(coverage, count - 1);
  if (!factor.valid) return factor;
  const reach = factor.value * spread * spreads;
  return valid({ low: middle - reach, high: middle + reach });
}
