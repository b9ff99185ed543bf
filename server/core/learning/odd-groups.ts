// Groups of measured values that differ from the rest of their kind: a lot of bushes that closes more than the other lots.
import { pooledRepeatability } from "../readings/statistics.ts";
import { studentQuantile } from "../quantity/student.ts";
import { sampleOf } from "./sample.ts";

/** The share of kinds without an odd group in which one is found all the same, at most. */
export const FALSE_ODD = 0.01;

/**
 * The indexes of groups whose mean differs from that of all others together, the plainest first. Each group is tested against the rest by
 * Student's t, at a level of 1 % divided by the number of groups (Bonferroni), so that of 100 kinds without an odd group one at most is
 * said to have one; the plainest is taken out, and the rest is looked at again. The scatter is that within the groups, pooled, so that
 * another odd group does not hide one. Of two groups that differ neither is the odd one: the first is given.
 * Range: values that scatter normally, and alike in every group. Source: Student's t with pooled variance (definition); that each group is
 * tested so, and the level, are this tool's own.
 */
export function oddGroups(
  groups: readonly (readonly number[])[],
): readonly number[] {
  const odd: number[] = [];
  for (;;) {
    const left = groups
      .map((_, index) => index)
      .filter((index) => !odd.includes(index));
    const plainest = plainestOf(groups, left);
    if (plainest === undefined) return odd;
    odd.push(plainest);
  }
}

function plainestOf(
  groups: readonly (readonly number[])[],
  left: readonly number[],
): number | undefined {
  if (left.length < 2) return undefined;
  const pooled = pooledRepeatability(groups);
  if (!pooled.valid) return undefined;
  const { degreesOfFreedom } = pooled.value;
  const critical = studentQuantile(
    1 - FALSE_ODD / left.length / 2,
    degreesOfFreedom,
  );
  if (!critical.valid) return undefined;
  let plainest: number | undefined;
  let farthest = critical.value;
  for (const index of left) {
    const rest = left.flatMap((at) => (at === index ? [] : (groups[at] ?? [])));
    const t = distance(
      groups[index] ?? [],
      rest,
      pooled.value.standardDeviation,
    );
    if (t !== undefined && farthest < t) {
      plainest = index;
      farthest = t;
    }
  }
  return plainest;
}

/** How far the means of two samples lie apart, in standard deviations of that distance; undefined where it has none. */
export function distance(
  one: readonly number[],
  other: readonly number[],
  spread: number,
): number | undefined {
  const [a, b] = [sampleOf(one), sampleOf(other)];
  if (!a.valid || !b.valid || !(0 < spread)) return undefined;
  return (
    Math.abs(a.value.mean - b.value.mean) /
    (spread * Math.sqrt(1 / one.length + 1 / other.length))
  );
}
