// The straight shaft through bores whose centres were checked: how much clearance is left, where, and what stops it.
// It doesn't own how centres are measured, and takes the shaft as straight but for its run-out.
import { notValid, valid, type Answer } from "../answer.ts";
import { isLess } from "./range.ts";
import {
  offsetAt,
  straightestAxis,
  type Axis,
  type Ring,
} from "./straightest-axis.ts";

/** A centre in the plane across the line, m from its datum. */
export interface Centre {
  readonly x: number;
  readonly y: number;
}

/** All in m. */
export interface CheckedBore {
  /** Its ends along the line */
  readonly from: number;
  readonly to: number;
  /** Its centre at each end; the same twice where only one was read */
  readonly centreFrom: Centre;
  readonly centreTo: Centre;
  /** Smallest diameter of the bore */
  readonly bore: number;
  /** Largest diameter of its journal */
  readonly journal: number;
  /** Run-out of the journal as an indicator shows it over a turn: it takes as much off the diametral clearance */
  readonly runout?: number;
}

export interface BoreInLine {
  /** Least clearance left in it for the shaft where it lies, m, diametral; below zero they interfere */
  readonly effectiveClearance: number;
  /** Slope of the bore's own axis against the shaft's, m per m */
  readonly slope: number;
  /** What the slope alone takes of the clearance over the bore's length: length × slope, m */
  readonly lostToSlope: number;
  /** Whether this bore holds the shaft where it lies: moving it would change the least clearance */
  readonly holds: boolean;
}

export interface StraightShaft {
  /** The most that a straight shaft can have at its tightest place, m, diametral; below zero it will not go through */
  readonly leastClearance: number;
  readonly bores: readonly BoreInLine[];
  /** Where it won't go through; undefined where it goes */
  readonly stoppedBy:
    | {
        /** Index of the bore that stops it: the one that needs least to let it through, with the shaft at its best in the others */
        readonly bore: number;
        /** How much larger that bore would have to be, m, diametral, the shaft lying so */
        readonly by: number;
        /** False: it would not go through the others either */
        readonly alone: boolean;
      }
    | undefined;
}

/**
 * The straight axis that leaves most diametral clearance at the tightest place of the line, and what each bore then has.
 * At a place: bore − journal − run-out − 2·offset; along a bore the offset of one straight axis from another is convex,
 * so its two ends decide. Exact to 1e-10 of the largest offset or difference of clearance (see straightest-axis.ts).
 * Refuses no bores, a bore without length, diameters not above zero, a run-out below zero, numbers that aren't finite.
 * Range: slopes to 0.01, beyond which the shaft's section across the line is no circle to a ten-thousandth: refused.
 * Source: Boyd & Vandenberghe as there; the rest is geometry.
 */
export function straightShaft(
  bores: readonly CheckedBore[],
): Answer<StraightShaft> {
  const fault =
    bores.length === 0
      ? "the line has no bore"
      : bores.map(faultOfBore).find((one) => one !== undefined);
  if (fault !== undefined) return notValid(fault);
  const { axis, least, pushes } = straightestAxis(bores.flatMap(ringsOf));
  if (0.01 < Math.hypot(axis.slopeX, axis.slopeY))
    return notValid("the line is out by more than 1 in 100");
  const inLine = bores.map((bore, index) => {
    const holds =
      1e-6 < (pushes[2 * index] ?? 0) + (pushes[2 * index + 1] ?? 0);
    return boreInLine(bore, axis, holds);
  });
  return valid({
    leastClearance: least,
    bores: inLine,
    stoppedBy: isLess(least, 0) ? stopping(bores, inLine) : undefined,
  });
}

function boreInLine(bore: CheckedBore, axis: Axis, holds: boolean): BoreInLine {
  const [from, to] = ringsOf(bore);
  const offset = Math.max(offsetAt(from, axis), offsetAt(to, axis));
  const length = bore.to - bore.from;
  const slope = Math.hypot(
    (to.x - from.x) / length - axis.slopeX,
    (to.y - from.y) / length - axis.slopeY,
  );
  return {
    effectiveClearance: from.room - 2 * offset,
    slope,
    lostToSlope: Math.abs(length) * slope,
    holds,
  };
}

/**
 * Each bore that holds the shaft is left out in turn, the shaft laid at its best in the others, and measured against
 * it: the bore that then interferes least is the one to put right. One that frees the others goes before one that doesn't.
 */
function stopping(
  bores: readonly CheckedBore[],
  inLine: readonly BoreInLine[],
): StraightShaft["stoppedBy"] {
  let stops: StraightShaft["stoppedBy"];
  bores.forEach((bore, index) => {
    if (!inLine[index]?.holds) return;
    const others = bores.filter((_, at) => at !== index);
    const without =
      others.length === 0
        ? undefined
        : straightestAxis(others.flatMap(ringsOf));
    const by = -boreInLine(
      bore,
      without?.axis ?? straightestAxis(ringsOf(bore)).axis,
      true,
    ).effectiveClearance;
    const alone = without === undefined || !isLess(without.least, 0);
    if (
      !stops ||
      (alone && !stops.alone) ||
      (alone === stops.alone && isLess(by, stops.by))
    ) {
      stops = { bore: index, by, alone };
    }
  });
  return stops;
}

function ringsOf(bore: CheckedBore): [Ring, Ring] {
  const room = bore.bore - bore.journal - (bore.runout ?? 0);
  return [
    { z: bore.from, ...bore.centreFrom, room },
    { z: bore.to, ...bore.centreTo, room },
  ];
}

function faultOfBore(bore: CheckedBore): string | undefined {
  const { from, to, centreFrom, centreTo, runout = 0 } = bore;
  const places = [from, to, centreFrom.x, centreFrom.y, centreTo.x, centreTo.y];
  if (!places.every(Number.isFinite))
    return "a place in the line is not a number";
  if (!isLess(Math.min(from, to), Math.max(from, to)))
    return "a bore of the line has no length";
  if (
    ![bore.bore, bore.journal].every((one) => 0 < one && Number.isFinite(one))
  )
    return "a diameter is not above zero";
  return 0 <= runout && Number.isFinite(runout)
    ? undefined
    : "a run-out is below zero";
}
