// Owns what readings at several angles and stations say about form: two-point out-of-round, taper, and the size that
// sets the least clearance. Does not own three-point methods (lobing.ts) nor limits on form.
import { notValid, valid, type Answer } from "../answer.ts";
import { largest, mean, smallest } from "./statistics.ts";

/** Two-point diameters round one station, in m, and where the station lies along the axis, in m, if that is known. */
export interface Station {
  readonly diameters: readonly number[];
  readonly position?: number | undefined;
}

export interface Taper {
  /** Difference of the largest and the smallest station mean, in m; never negative. */
  readonly difference: number;
  /** Places in the list of the stations with the largest and the smallest mean (the first of equals). */
  readonly largestAt: number;
  readonly smallestAt: number;
  /** The difference over the distance between those two stations, m per m; undefined where a position is unknown. */
  readonly perLength: number | undefined;
}

/**
 * Two-point out-of-round of one station, in m: largest less smallest diameter. It is not roundness by ISO 12181 (which is
 * of radii about one centre), and two points cannot see a form with an odd number of lobes, such as three.
 * Refuses fewer than two diameters and values that are not finite or not above zero.
 * Source: ISO 4292:1985 names the two-point method; the difference of diameters is common practice.
 */
export function outOfRound(diameters: readonly number[]): Answer<number> {
  if (diameters.length < 2)
    return notValid("out-of-round needs diameters at two angles at least");
  const fault = faultIn(diameters);
  if (fault !== undefined) return notValid(fault);
  const high = largest(diameters);
  if (!high.valid) return high;
  const low = smallest(diameters);
  return low.valid ? valid(high.value - low.value) : low;
}

/**
 * The largest two-point out-of-round over several stations, in m; a station with one diameter says nothing about it.
 * Refuses when no station has two. Source: as outOfRound.
 */
export function largestOutOfRound(
  stations: readonly Station[],
): Answer<number> {
  const each: number[] = [];
  for (const { diameters } of stations) {
    if (diameters.length < 2) continue;
    const one = outOfRound(diameters);
    if (!one.valid) return one;
    each.push(one.value);
  }
  return each.length === 0
    ? notValid("out-of-round needs diameters at two angles at least")
    : largest(each);
}

/**
 * Taper over the stations of one journal or bore: difference of station means in m, and per length where both stations
 * have a position. With more than two stations it is that of the two that differ most, so a barrel or a waist
 * shows too. Refuses fewer than two stations, a station without readings, values not finite or not above zero,
 * and two differing stations at the same position. Source: common practice, no source.
 */
export function taper(stations: readonly Station[]): Answer<Taper> {
  if (stations.length < 2)
    return notValid("taper needs readings at two stations at least");
  const means: number[] = [];
  for (const { diameters, position } of stations) {
    const fault = faultIn(diameters);
    if (fault !== undefined) return notValid(fault);
    if (position !== undefined && !Number.isFinite(position))
      return notValid("a station's position is not a finite number");
    const middle = mean(diameters);
    if (!middle.valid) return middle;
    means.push(middle.value);
  }
  const high = largest(means);
  if (!high.valid) return high;
  const low = smallest(means);
  if (!low.valid) return low;
  const difference = high.value - low.value;
  const largestAt = means.indexOf(high.value);
  const smallestAt = means.indexOf(low.value);
  const from = stations[smallestAt]?.position;
  const to = stations[largestAt]?.position;
  if (from === undefined || to === undefined || difference === 0) {
    const known =
      difference === 0 &&
      stations.every(({ position }) => position !== undefined);
    return valid({
      difference,
      largestAt,
      smallestAt,
      perLength: known ? 0 : undefined,
    });
  }
  if (from === to)
    return notValid("the two stations that differ lie at the same position");
  return valid({
    difference,
    largestAt,
    smallestAt,
    perLength: difference / Math.abs(to - from),
  });
}

function faultIn(diameters: readonly number[]): string | undefined {
  if (diameters.length === 0) return "there are no readings";
  return diameters.every((diameter) => 0 < diameter && diameter < Infinity)
    ? undefined
    : "a diameter is not a number above zero";
}
