// Owns Grubbs' test: does one of a group of repeats stand too far from the others to be one of them?
// For repeats at one place only: readings round an oval differ because the part does.
import { notValid, valid, type Answer } from "../answer.ts";
import { metresToTenths } from "../quantity/exact.ts";
import { studentQuantile } from "../quantity/student.ts";
import { mean, standardDeviation } from "./statistics.ts";

export interface StrayTest {
  /** Place in the list of the reading that stands farthest from the mean (the first of equals). */
  readonly index: number;
  /** Its distance from the mean in standard deviations, all readings counted. */
  readonly statistic: number;
  /** The distance that a share `alpha` of clean groups of this size passes. */
  readonly critical: number;
  readonly stray: boolean;
}

/**
 * Grubbs' test for one stray reading on either side, among repeats at one place. Where all repeats are equal none is stray.
 * Refuses fewer than three readings (of two, each is as far from the mean as the other), and values that are not finite.
 * Range: repeats that scatter normally; `alpha` is the chance of calling a clean group strayed, 5 % unless told.
 * Source: the two-sided form of the NIST/SEMATECH e-Handbook 1.3.5.17.1 (formula seen as restated by others).
 */
export function grubbsTest(
  values: readonly number[],
  alpha = 0.05,
): Answer<StrayTest> {
  const critical = grubbsCritical(values.length, alpha);
  if (!critical.valid) return critical;
  const middle = mean(values);
  if (!middle.valid) return middle;
  const scatter = standardDeviation(values);
  if (!scatter.valid) return scatter;
  const distances = values.map((value) => Math.abs(value - middle.value));
  const farthest = distances.reduce((a, b) => Math.max(a, b));
  const statistic = scatter.value === 0 ? 0 : farthest / scatter.value;
  return valid({
    index: distances.indexOf(farthest),
    statistic,
    critical: critical.value,
    stray: critical.value < statistic,
  });
}

/**
 * The stray among repeats at one place, in m; undefined where there is none, or too few repeats to tell. A value within one count of another
 * is no stray, however well the rest agree: `count` (m) is the gauge's step, and how it rounds explains that much.
 * Source: as grubbsTest; the count is this tool's own.
 */
export function strayAmong(
  values: readonly number[],
  count: number,
): StrayTest | undefined {
  const test = grubbsTest(values);
  if (!test.valid || !test.value.stray) return undefined;
  const { index } = test.value;
  const value = values[index] ?? 0;
  const nearest = values
    .filter((_, at) => at !== index)
    .reduce(
      (least, other) => Math.min(least, Math.abs(other - value)),
      Infinity,
    );
  return metresToTenths(nearest) <= metresToTenths(count)
    ? undefined
    : test.value;
}

/**
 * Critical value of Grubbs' two-sided test for `count` readings: (n−1)/√n · √(t²/(n−2+t²)) with t the upper α/(2n) point of
 * Student's t for n − 2 degrees of freedom. Refuses count below 3 or not whole, alpha outside 0 to 1 (exclusive).
 * Range: to 10 000 readings. Source: as grubbsTest.
 */
export function grubbsCritical(count: number, alpha = 0.05): Answer<number> {
  if (!Number.isInteger(count) || count < 3)
    return notValid("Grubbs' test needs three repeats at least");
  if (10_000 < count)
    return notValid("Grubbs' test is held to 10 000 repeats here");
  if (!(0 < alpha && alpha < 1))
    return notValid("a significance level lies between 0 and 1");
  const point = studentQuantile(1 - alpha / (2 * count), count - 2);
  if (!point.valid) return point;
  const squared = point.value * point.value;
  return valid(
    ((count - 1) / Math.sqrt(count)) *
      Math.sqrt(squared / (count - 2 + squared)),
  );
}
