// How far a prediction may miss, and the chance that it stays between two limits.
// It doesn't own where the deviation comes from, nor quantiles (../quantity/student.ts).
import jstat from "jstat";

export interface Spread {
  /** in the unit of what it is the spread of; above zero */
  readonly standardDeviation: number;
  /** Infinity: the deviation is known well, and the distribution is normal; few: Student's t; 1 at least */
  readonly degreesOfFreedom: number;
}

/**
 * The chance, 0 to 1, that a standardised deviation falls between two (they may be infinite): normal, or Student's t.
 * Zero where low isn't less than high. Range: degrees of freedom from 1. Source: the distributions' own definitions,
 * computed by jstat 1.9.6: good to 5e-8; from a million degrees of freedom on the normal stands in, within 3e-7.
 */
export function chanceBetween(
  low: number,
  high: number,
  degreesOfFreedom: number,
): number {
  if (!(low < high)) return 0;
  const chance = below(high, degreesOfFreedom) - below(low, degreesOfFreedom);
  return Math.min(1, Math.max(0, chance));
}

function below(z: number, degreesOfFreedom: number): number {
  if (z === -Infinity) return 0;
  if (z === Infinity) return 1;
  return 1e6 <= degreesOfFreedom
    ? jstat.normal.cdf(z, 0, 1)
    : jstat.studentt.cdf(z, degreesOfFreedom);
}
