// The ways out where no one bore size gives every journal of a line its wanted clearance.
// It doesn't own the window itself (reamer-window.ts).
import type { Band } from "../quantity/band.ts";
import { isLess, orderedRange } from "./range.ts";
import type { BoreLimits, WantingJournal } from "./wanting-journal.ts";

export interface Conflict {
  /** Index of the journal that needs the largest bore */
  readonly needsLarger: number;
  /** Index of the journal that allows the smallest bore; the same index where one journal can't have its own want */
  readonly needsSmaller: number;
  /** By how much the one's least bore passes the other's greatest, m, diametral */
  readonly by: number;
  /** First way: the fewest reamers, each with the journals (indices) that it serves and their shared window */
  readonly reamers: readonly {
    readonly journals: readonly number[];
    readonly window: Band;
  }[];
  /** Journals (indices) that no reamer serves: their own sizes differ by more than the wanted clearance is wide */
  readonly unservable: readonly number[];
  /** Second way: each journal to size down and by how much, m; undefined where unservable journals make it no way out */
  readonly sizeDown:
    readonly { readonly journal: number; readonly by: number }[] | undefined;
  /** Third way: the one size that errs least at the worst journal */
  readonly accept: {
    /** Bore size, m */
    readonly size: number;
    /** How far the clearance passes its wanted band at the two journals in conflict, m */
    readonly beyond: number;
    /** Least and most clearance that this size gives at each journal, m */
    readonly clearances: readonly Band[];
  };
}

/** A journal (index) that sets an end of the line's window. */
export interface Extreme {
  readonly journal: number;
  readonly limits: BoreLimits;
}

/**
 * The conflict between the journal that sets the low end of the line's window and the one that sets its high end, and
 * the ways out. Fewest reamers: bore sizes that pierce every window, taken from the smallest high end on, which is least in
 * number (the usual proof for intervals: the window that ends first needs a size of its own, and its end serves the
 * most others). Sized down: every journal whose low end passes the smallest high end comes down by the difference, and
 * by `room` more, so that a window of that width opens. Accepted size: halfway between the two ends, the min–max.
 */
export function waysOut(
  journals: readonly WantingJournal[],
  each: readonly BoreLimits[],
  low: Extreme,
  high: Extreme,
  room: number,
): Conflict {
  const leastBore = low.limits.low;
  const greatestBore = high.limits.high;
  const size = greatestBore + (leastBore - greatestBore) / 2;
  const unservable = each.flatMap((limits, index) =>
    isLess(limits.high, limits.low) ? [index] : [],
  );
  return {
    needsLarger: low.journal,
    needsSmaller: high.journal,
    by: leastBore - greatestBore,
    reamers: fewestWindows(each),
    unservable,
    sizeDown:
      unservable.length === 0 ? sizedDown(each, greatestBore, room) : undefined,
    accept: {
      size,
      beyond: (leastBore - greatestBore) / 2,
      clearances: journals.map((journal) => ({
        low: size - journal.greatest,
        high: size - journal.least,
      })),
    },
  };
}

function fewestWindows(
  each: readonly BoreLimits[],
): { journals: number[]; window: Band }[] {
  const servable = each
    .map((limits, journal) => ({
      journal,
      window: orderedRange(limits.low, limits.high),
    }))
    .flatMap(({ journal, window }) => (window ? [{ journal, window }] : []))
    .sort((a, b) => a.window.high - b.window.high);
  const groups: { journals: number[]; window: Band }[] = [];
  for (const { journal, window } of servable) {
    const last = groups.at(-1);
    // every window so far ends at or past the last group's end, so it belongs where it begins before that end
    const joint =
      last &&
      orderedRange(Math.max(last.window.low, window.low), last.window.high);
    if (last && joint) {
      last.journals.push(journal);
      last.window = joint;
    } else {
      groups.push({ journals: [journal], window });
    }
  }
  for (const group of groups) group.journals.sort((a, b) => a - b);
  return groups;
}

/** Undefined where a journal's own window is narrower than the room asked for: sizing down can't widen it. */
function sizedDown(
  each: readonly BoreLimits[],
  greatestBore: number,
  room: number,
): { journal: number; by: number }[] | undefined {
  if (each.some((limits) => isLess(limits.high - limits.low, room)))
    return undefined;
  return each.flatMap((limits, journal) =>
    isLess(greatestBore - room, limits.low)
      ? [{ journal, by: limits.low - (greatestBore - room) }]
      : [],
  );
}
