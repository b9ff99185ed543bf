// Owns how a second look is counted and written down: many points computed twice, and the largest difference among them as one check.
import { chance } from "../../core/readings/chance.ts";
import type { Check } from "../check.ts";

/** One point computed by the tool and by the second look; where either has no value and the other has one, they differ without end. */
export interface Side {
  readonly at: string;
  readonly ours: number | undefined;
  readonly theirs: number | undefined;
}

function apart({ ours, theirs }: Side, relative = false): number {
  if (ours === undefined && theirs === undefined) return 0;
  if (ours === undefined || theirs === undefined) return Infinity;
  if (ours === theirs) return 0;
  const difference = Math.abs(ours - theirs);
  if (Number.isNaN(difference)) return Infinity;
  return relative ? difference / Math.abs(theirs) : difference;
}

/** The points that lie further apart than is allowed, for the eye of whoever looks into a difference. */
export function differing(
  sides: readonly Side[],
  allowed: number,
  relative = false,
): readonly Side[] {
  return sides.filter((side) => allowed < apart(side, relative));
}

/** The largest difference over all points as one check: its number is that difference, against none. */
export function secondLook(
  check: Omit<Check, "ours" | "theirs" | "within" | "points" | "against"> & {
    readonly against?: Check["against"];
    readonly allowed: number;
    /** Differences over the second look's own value: then the page shows a share. */
    readonly isRelative?: boolean;
    readonly sides: readonly Side[];
  },
): Check {
  const { allowed, isRelative = false, sides, ...rest } = check;
  const worst = sides.reduce(
    (most, side) => Math.max(most, apart(side, isRelative)),
    0,
  );
  return {
    against: "independent",
    ...rest,
    source: `second look: ${rest.source}`,
    points: sides.length,
    within: isRelative ? { relative: allowed } : { absolute: allowed },
    // A share of nothing can't be taken: a relative check compares 1 + the share with 1.
    ours: () => (isRelative ? 1 + worst : worst),
    theirs: () => (isRelative ? 1 : 0),
  };
}

/** Numbers between two ends, evenly or (by their logarithm) over decades, the same at every run. */
export function between(
  seed: number,
  count: number,
  low: number,
  high: number,
  overDecades = false,
): readonly number[] {
  const { even } = chance(seed);
  return Array.from({ length: count }, () => {
    const share = (1 + even()) / 2;
    return overDecades
      ? low * (high / low) ** share
      : low + (high - low) * share;
  });
}
