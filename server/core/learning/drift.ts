// What is learned of a quantity that may change over time: of a reamer that may wear, a gauge that may drift. Whether it changes, by a stated
// rule, and then what it is at the end.
import { valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import {
  fitLine,
  heightAt,
  slopeInterval,
  type LineFit,
  type LinePoint,
} from "./line-fit.ts";
import { meanInterval, sampleOf, type Sample } from "./sample.ts";
import { studentCoverage } from "../quantity/student.ts";

/** The share of steady series that are taken for changing ones. */
export const FALSE_DRIFT = 0.01;
/** Fewer points say nothing of change. */
const LEAST_FOR_DRIFT = 6;
/** Of a series that changes, this many of the latest points say what it is now. */
export const LATEST = 20;

export interface Drift {
  /** Per unit of x. */
  readonly slope: number;
  /** It holds the true slope in 95 % of series. */
  readonly interval: Band;
}

export interface OverTime {
  /**
   * Of a steady series its own. Of one that changes: the height of the line through its latest points at `now`, the spread about that line,
   * and of how many steady points the mean would be as sure, rounded down, two at least.
   */
  readonly sample: Sample;
  /** It holds what is true now in 95 % of series; undefined of a single point. */
  readonly interval: Band | undefined;
  readonly drift: Drift | undefined;
  /** How many points the sample is of. */
  readonly used: number;
}

/**
 * What points in the order of x teach. The series counts as changing where the slope of the line through all of it is not zero at a
 * level of 1 % (Student's t, two-sided; six points at least): so of 100 series that don't change, one is taken for one that does. Then
 * only its latest 20 points count, with a line through them, since what wears need not wear evenly. @param now the x that is asked about.
 * Refuses an empty list and points that are not finite. Source: Student's t for a slope (definition); the rule is this tool's own.
 */
export function learnOverTime(
  points: readonly LinePoint[],
  now: number,
): Answer<OverTime> {
  const steady = sampleOf(points.map(({ y }) => y));
  if (!steady.valid) return steady;
  const drift = driftOf(points);
  const latest = [...points].sort((a, b) => a.x - b.x).slice(-LATEST);
  const line = drift === undefined ? undefined : fitLine(latest);
  if (drift === undefined || line?.valid !== true) {
    const interval = meanInterval(steady.value, 0.95);
    return valid({
      sample: steady.value,
      interval: interval.valid ? interval.value : undefined,
      drift: undefined,
      used: points.length,
    });
  }
  return valid({
    ...atEnd(line.value, now),
    drift,
    used: latest.length,
  });
}

/** The change of a series, where it has one by the rule of learnOverTime. */
function driftOf(points: readonly LinePoint[]): Drift | undefined {
  if (points.length < LEAST_FOR_DRIFT) return undefined;
  const line = fitLine(points);
  if (!line.valid) return undefined;
  const tested = slopeInterval(line.value, 1 - FALSE_DRIFT);
  const shown = slopeInterval(line.value, 0.95);
  if (!tested.valid || !shown.valid) return undefined;
  const { low, high } = tested.value;
  return low <= 0 && 0 <= high
    ? undefined
    : { slope: line.value.slope, interval: shown.value };
}

function atEnd(
  line: LineFit,
  now: number,
): Pick<OverTime, "sample" | "interval"> {
  const height = heightAt(line, now);
  const factor = studentCoverage(0.95, line.degreesOfFreedom);
  const reach = factor.valid ? factor.value * height.deviation : Infinity;
  return {
    sample: {
      mean: height.value,
      spread: line.spread,
      count: Math.max(2, Math.floor(height.worth)),
    },
    interval: { low: height.value - reach, high: height.value + reach },
  };
}
