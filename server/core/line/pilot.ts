// The pilot of a reamer: its slack in the bore where it runs, and how far it lets the cut of the other bore wander.
// It doesn't own which bore is cut when, so the size of the pilot's bore at that moment is given.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import { faultOfDiameters, faultOfRange, isLess } from "./range.ts";

export interface PilotReach {
  /** How much of the pilot runs in its bore, m */
  readonly engagedLength: number;
  /** From the near end of the pilot's bore to the far end of the bore being cut, m */
  readonly overhang: number;
}

/**
 * Engaged length and overhang (m) of a pilot of that length (m; undefined: at least as long as its bore) that runs in
 * one bore and guides the cut of another, both as ranges along the line's axis (m). The overhang goes to the far end of
 * the cut, where the pilot guides worst. A pilot shorter than its bore is taken as engaged at the end near the cut.
 * Refuses bores without length, a pilot without length, and bores that overlap (a pilot can't run in what it cuts).
 */
export function pilotReach(
  pilotBore: Band,
  cutBore: Band,
  pilotLength?: number,
): Answer<PilotReach> {
  const fault =
    faultOfRange("the bore of the pilot", pilotBore) ??
    faultOfRange("the bore being cut", cutBore);
  if (fault !== undefined) return notValid(fault);
  if (!isLess(pilotBore.low, pilotBore.high))
    return notValid("the bore of the pilot has no length");
  if (!isLess(cutBore.low, cutBore.high))
    return notValid("the bore being cut has no length");
  if (pilotLength !== undefined && !(0 < pilotLength))
    return notValid("the pilot has no length");
  const after = !isLess(cutBore.low, pilotBore.high);
  if (!after && isLess(pilotBore.low, cutBore.high))
    return notValid(
      "the pilot would run in the bore that it guides the cut of",
    );
  return valid({
    engagedLength: Math.min(
      pilotBore.high - pilotBore.low,
      pilotLength ?? Infinity,
    ),
    overhang: after
      ? cutBore.high - pilotBore.high
      : pilotBore.low - cutBore.low,
  });
}

/** Lobes of a bore, an odd number, so that two-point diameters don't show them. */
export interface BoreLobes {
  readonly count: number;
  /** Radial roundness, from peak to valley, m */
  readonly roundness: number;
}

export interface PilotGuide {
  /** Diametral slack of the pilot in its bore, m: least, with what lobes take, and most; below zero they interfere */
  readonly slack: Band;
  readonly entry: "goes" | "may-not-go" | "will-not-go";
  /** The most that the pilot's axis can be off the bore's, radial, m, with the most slack; zero where the pilot won't go */
  readonly off: number;
  /** The most that it can lean from one end of its bore to the other, m, likewise */
  readonly lean: number;
  /** The most that the cut can be off the pilot's bore at its far end, radial, m, likewise */
  readonly offset: number;
}

/**
 * How a pilot guides: slack between its diameter (m) and that of its bore at that moment (m), and the offset at the
 * cut ≤ slack/2 + (slack/engaged length)·overhang with the most slack: the pilot lies against one side at the near end
 * of its bore and against the other at the far end.
 * In a bore with lobes that its two-point diameters don't show, the largest bar that goes in is smaller by their
 * roundness. What is left for the axis is roomOf's.
 * Refuses reversed or non-positive diameters, an engaged length not above zero, an overhang below zero, lobes that are
 * not odd in number or that have a roundness below zero. Range: slack small against the length (the angle is taken as
 * its tangent), lobes low against the radius. Source: geometry of a bar in a ring.
 */
export function pilotGuide(
  pilot: Band,
  bore: Band,
  { engagedLength, overhang }: PilotReach,
  lobes?: BoreLobes,
): Answer<PilotGuide> {
  const fault =
    faultOfDiameters("the diameter of the pilot", pilot) ??
    faultOfDiameters("the bore of the pilot", bore);
  if (fault !== undefined) return notValid(fault);
  if (!(0 < engagedLength && Number.isFinite(engagedLength)))
    return notValid("the pilot is engaged over no length");
  if (!(0 <= overhang && Number.isFinite(overhang)))
    return notValid("the overhang of the pilot is below zero");
  const { count, roundness } = lobes ?? NONE;
  if (!(count % 2 === 1 && 3 <= count))
    return notValid("two points don't see an odd number of lobes alone");
  if (!(0 <= roundness && Number.isFinite(roundness)))
    return notValid("the roundness of the pilot's bore is below zero");
  const slack = {
    low: bore.low - roundness - pilot.high,
    high: bore.high - pilot.low,
  };
  const entry = isLess(slack.high - roundness, 0)
    ? "will-not-go"
    : isLess(slack.low, 0)
      ? "may-not-go"
      : "goes";
  const { off, lean } = roomOf(slack.high, { count, roundness });
  return valid({
    slack,
    entry,
    off,
    lean,
    offset: off + (lean / engagedLength) * overhang,
  });
}

const NONE: BoreLobes = { count: 3, roundness: 0 };

/**
 * How far the axis of a bar can be off that of its bore, and how far from one end to the other, by the slack that two
 * points see. Where a bar's axis is, the bore's tangent in every direction is no nearer than the bar's radius. So it
 * lies within the circle round the lobes; within the polygon of as many sides that the low spots leave, whose circle
 * has (slack − roundness)/2 within and that over cos(180°/n) around; and no two places of it are farther apart than the
 * slack, which is what two opposite tangents leave. The lesser of each counts. Without lobes that is slack/2 and the slack.
 * Source: geometry; support function of a curve of constant width.
 */
function roomOf(
  slack: number,
  { count, roundness }: BoreLobes,
): { readonly off: number; readonly lean: number } {
  const within = Math.max(0, slack - roundness);
  const corner = Math.cos(Math.PI / count);
  return {
    off: Math.min((Math.max(0, slack) + roundness) / 2, within / 2 / corner),
    lean: Math.min(
      Math.max(0, slack),
      (within * Math.cos(Math.PI / (2 * count))) / corner,
    ),
  };
}

/** The share of the wanted clearance's width that a pilot's offset may pass before it warns. Common practice, no source. */
export const pilotOffsetShare = 0.25;

/** Whether a pilot's offset (m) passes the share of the width of the wanted clearance (m). */
export function isPilotSlack(
  offset: number,
  wanted: Band,
  share = pilotOffsetShare,
): boolean {
  return isLess(share * (wanted.high - wanted.low), offset);
}
