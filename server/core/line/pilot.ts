// The pilot of a reamer: its slack in the bore where it runs, and how far it lets the cut of the other bore wander.
// It doesn't own which bore is cut when, so the size of the pilot's bore at that moment is given.
import { notValid, valid, type Answer } from "../answer.ts";
import { faultOfDiameters, faultOfRange, isLess, type Range } from "./range.ts";

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
  pilotBore: Range,
  cutBore: Range,
  pilotLength?: number,
): Answer<PilotReach> {
  const fault =
    faultOfRange("the bore of the pilot", pilotBore) ??
    faultOfRange("the bore being cut", cutBore);
  if (fault !== undefined) return notValid(fault);
  const length = pilotBore.high - pilotBore.low;
  if (!(0 < length) || !(pilotBore.high - pilotBore.low < Infinity))
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
    engagedLength: Math.min(length, pilotLength ?? Infinity),
    overhang: after
      ? cutBore.high - pilotBore.high
      : pilotBore.low - cutBore.low,
  });
}

export interface PilotGuide {
  /** Diametral slack of the pilot in its bore, m: least and most; below zero they interfere */
  readonly slack: Range;
  readonly entry: "goes" | "may-not-go" | "will-not-go";
  /** The most that the cut can be off the pilot's bore at its far end, radial, m; zero where the pilot won't go */
  readonly offset: number;
}

/**
 * How a pilot guides: slack between its diameter (m) and that of its bore at that moment (m), and the offset at the
 * cut ≤ slack/2 + (slack/engaged length)·overhang with the most slack: the pilot lies against one side at the near end
 * of its bore and against the other at the far end. Refuses reversed or non-positive diameters, an engaged length not
 * above zero, an overhang below zero. Range: slack small against the length (the angle is taken as its tangent).
 * Source: geometry of a bar in a ring.
 */
export function pilotGuide(
  pilot: Range,
  bore: Range,
  { engagedLength, overhang }: PilotReach,
): Answer<PilotGuide> {
  const fault =
    faultOfDiameters("the diameter of the pilot", pilot) ??
    faultOfDiameters("the bore of the pilot", bore);
  if (fault !== undefined) return notValid(fault);
  if (!(0 < engagedLength && Number.isFinite(engagedLength)))
    return notValid("the pilot is engaged over no length");
  if (!(0 <= overhang && Number.isFinite(overhang)))
    return notValid("the overhang of the pilot is below zero");
  const slack = { low: bore.low - pilot.high, high: bore.high - pilot.low };
  const entry = isLess(slack.high, 0)
    ? "will-not-go"
    : isLess(slack.low, 0)
      ? "may-not-go"
      : "goes";
  const most = Math.max(0, slack.high);
  return valid({
    slack,
    entry,
    offset: most / 2 + (most / engagedLength) * overhang,
  });
}

/** The share of the wanted clearance's width that a pilot's offset may pass before it warns. Common practice, no source. */
export const pilotOffsetShare = 0.25;

/** Whether a pilot's offset (m) passes the share of the width of the wanted clearance (m). */
export function isPilotSlack(
  offset: number,
  wanted: Range,
  share = pilotOffsetShare,
): boolean {
  return isLess(share * (wanted.high - wanted.low), offset);
}
