// The window of bore sizes that gives every journal of a line its wanted clearance.
// It doesn't own the ways out where there is no window (window-conflict.ts), nor which reamer to take.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import { orderedRange } from "./range.ts";
import {
  boreLimits,
  type BoreLimits,
  type WantingJournal,
} from "./wanting-journal.ts";
import { waysOut, type Conflict, type Extreme } from "./window-conflict.ts";

export type LineWindow =
  | {
      readonly open: true;
      /** The bore sizes that suit every journal, m */
      readonly window: Band;
      /** What each journal allows by itself */
      readonly each: readonly BoreLimits[];
    }
  | {
      readonly open: false;
      readonly conflict: Conflict;
      readonly each: readonly BoreLimits[];
    };

/**
 * The window of a line that one reamer cuts: the intersection of what its journals allow; where that is empty, the
 * conflict and the three ways out with their numbers. `room` (m, zero unless given) is how wide a window must be to be
 * worth having: it only bears on how far journals would have to be sized down.
 * Refuses a line without journals, and what boreLimits refuses.
 */
export function lineWindow(
  journals: readonly WantingJournal[],
  room = 0,
): Answer<LineWindow> {
  if (!(0 <= room && Number.isFinite(room)))
    return notValid("the width of a window is not below zero");
  const each: BoreLimits[] = [];
  for (const journal of journals) {
    const limits = boreLimits(journal);
    if (!limits.valid) return limits;
    each.push(limits.value);
  }
  const low = extreme(each, (limits, best) => best.low < limits.low);
  const high = extreme(each, (limits, best) => limits.high < best.high);
  if (!low || !high) return notValid("the line has no journal");
  const window = orderedRange(low.limits.low, high.limits.high);
  if (window)
    return valid({
      open: true,
      window,
      each,
    });
  return valid({
    open: false,
    conflict: waysOut(journals, each, low, high, room),
    each,
  });
}

/** The first journal that no other passes. */
function extreme(
  each: readonly BoreLimits[],
  passes: (limits: BoreLimits, best: BoreLimits) => boolean,
): Extreme | undefined {
  let best: Extreme | undefined;
  each.forEach((limits, journal) => {
    if (!best || passes(limits, best.limits)) best = { journal, limits };
  });
  return best;
}
