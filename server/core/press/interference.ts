// From measured or limiting sizes to interference, to the bore after pressing, and back to the bush to make. Sizes are
// diameters at 20 °C in m. It takes closure and smoothing as numbers and does not compute them.
import { notValid, valid, type Answer } from "../answer.ts";
import { halfWidth, isBand, middle, type Band } from "../quantity/band.ts";

export interface BeforePress {
  readonly id: Band;
  readonly od: Band;
  readonly hole: Band;
}

export interface BoreAfterPress {
  readonly nominal: number;
  /** Every size at its own worst end together. */
  readonly worst: Band;
  /** Sizes as independent, limits at the same number of deviations: root-sum-square. At either bound of the closure, so its bracket counts in full. */
  readonly rootSumSquare: Answer<Band>;
}

/** od − hole, m, both ends; negative where the bush is loose. Refuses reversed limits. */
export function interferenceBand(od: Band, hole: Band): Answer<Band> {
  if (!isBand(od) || !isBand(hole))
    return notValid("limits are reversed or missing");
  return valid({ low: od.low - hole.high, high: od.high - hole.low });
}

/** What is left of an interference after smoothing, m; never under zero. */
export function effectiveInterference(
  interference: number,
  smoothing: number,
): number {
  return Math.max(0, interference - smoothing);
}

/**
 * Bore of the bush after pressing, m: id − C·max(0, od − hole − smoothing), C between the bounds of `closure`.
 * `elasticLimit` is the effective interference at first yield (yield.ts), where known. Refuses reversed limits, a bush
 * without a wall, a negative smoothing or closure, and an interference past the elastic limit.
 * Source: ring.ts; worst case because the bore falls with od and C and rises with id and hole; root-sum-square by the first-order
 * law of propagation (JCGM 100:2008, 5.1.2), refused where the bush may be loose, since it has a kink there. Its ends
 * are those of the most and the least closure, each with the spread that sizes have there: no closure between passes them, since the
 * spread grows by less than the interference does.
 */
export function boreAfterPress(
  sizes: BeforePress,
  closure: Band,
  smoothing: number,
  elasticLimit?: number,
): Answer<BoreAfterPress> {
  const { id, od, hole } = sizes;
  const interference = interferenceBand(od, hole);
  if (!interference.valid) return interference;
  if (!isBand(id)) return notValid("limits are reversed or missing");
  if (!(0 < id.low && id.high < od.low && 0 < hole.low))
    return notValid(
      "the bush has no wall: its bore must be above zero and below its outside",
    );
  if (
    !isBand(closure) ||
    closure.low < 0 ||
    !(0 <= smoothing && smoothing < Infinity)
  )
    return notValid("closure or smoothing is missing or negative");
  const least = effectiveInterference(interference.value.low, smoothing);
  const most = effectiveInterference(interference.value.high, smoothing);
  if (elasticLimit !== undefined && !(most <= elasticLimit))
    return notValid(
      "the press fit yields and closure is no longer elastic: measure after pressing",
    );
  const typical = effectiveInterference(middle(interference.value), smoothing);
  const nominal = middle(id) - middle(closure) * typical;
  const worst = {
    low: id.low - closure.high * most,
    high: id.high - closure.low * least,
  };
  return valid({ nominal, worst, rootSumSquare: rootSumSquare() });

  function rootSumSquare(): Answer<Band> {
    if (!interference.valid || interference.value.low < smoothing)
      return notValid("the bush may be loose in the hole, where closure stops");
    return valid({
      low: middle(id) - closure.high * typical - spreadAt(closure.high),
      high: middle(id) - closure.low * typical + spreadAt(closure.low),
    });
  }

  function spreadAt(slope: number): number {
    return Math.hypot(
      halfWidth(id),
      slope * halfWidth(od),
      slope * halfWidth(hole),
    );
  }
}

/**
 * Outside diameter of the bush to make, m, so that every hole in its band (equal ends for one reading) gets an interference
 * within `want`. The wanted interference is od − hole as measured; smoothing is not added to it. Refuses reversed
 * limits and a hole that varies by more than `want` is wide, for which no one size will do.
 */
export function bushOdToMake(hole: Band, want: Band): Answer<Band> {
  if (!isBand(hole) || !isBand(want))
    return notValid("limits are reversed or missing");
  const low = hole.high + want.low;
  const high = hole.low + want.high;
  if (high < low)
    return notValid(
      "the hole varies by more than the wanted interference allows",
    );
  return valid({ low, high });
}

/** Interference for a bush of bronze or brass, as shares of its outside diameter: common practice, no source. */
export const usualInterference: Band = { low: 0.0005, high: 0.0015 };

/** The interference, m, that is this share of the bush's od over a hole of this size: od − hole = share·od, so hole·share/(1 − share). */
export function interferenceOfShare(hole: number, share: number): number {
  return (hole * share) / (1 - share);
}
