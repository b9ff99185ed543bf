// Each reading once over all states of its record: a record keeps its readings from version to version, and a day may be mended in a later one.
import { groupedBy } from "../model/groups.ts";
import type { StatePoint } from "./trend-state.ts";

/**
 * The points of all states, the oldest first, each reading once, as the last state has it: of one day and gauge, or of the commit that
 * brought it where it has no day of its own. One whose lines a later state has anew under another day, and no longer under this one, was
 * given the wrong day, or none, and is the same; but not where that other day is after the first commit that has it, which can't have held a
 * reading that was still to be taken: a part that did not wear reads the same again.
 */
export function pointsOnce(
  states: readonly (readonly StatePoint[])[],
): readonly StatePoint[] {
  const once = new Map<string, StatePoint>();
  /** The day of the first commit that has each reading, under whatever day. */
  const since = new Map<string, string | undefined>();
  const keysOf = new Map<string, Set<string>>();
  for (const state of states)
    for (const [family, points] of groupedBy(state, familyOf)) {
      const before = keysOf.get(family) ?? new Set<string>();
      keysOf.set(family, before);
      const here = new Map(points.map((point) => [keyOf(point), point]));
      const anew = points.map((point) => ({
        point,
        lines: without(point.lines, once.get(keyOf(point))?.lines ?? []),
      }));
      for (const key of before) {
        const lines = once.get(key)?.lines ?? [];
        const first = since.get(key);
        const heirs = anew.filter(
          ({ point }) => first === undefined || point.date <= first,
        );
        const left = without(
          lines,
          heirs.flatMap((each) => each.lines),
        );
        if (here.has(key) || 0 < left.length) continue;
        once.delete(key);
        before.delete(key);
        for (const { point, lines: own } of heirs)
          if (without(own, lines).length < own.length)
            since.set(keyOf(point), first);
      }
      for (const [key, point] of here) {
        if (!since.has(key)) since.set(key, point.stateDay);
        once.set(key, point);
        before.add(key);
      }
    }
  return [...once.values()];
}

function familyOf({ file, entry, gauge }: StatePoint): string {
  return JSON.stringify([file, entry, gauge]);
}

function keyOf(point: StatePoint): string {
  const { date, datedBy, commit } = point;
  const came = datedBy === "commit" ? commit : undefined;
  return JSON.stringify([familyOf(point), date, came ?? ""]);
}

/** What is in a list and not in another, as often as it is. */
function without(
  list: readonly string[],
  other: readonly string[],
): readonly string[] {
  const left = [...other];
  return list.filter((each) => {
    const at = left.indexOf(each);
    if (0 <= at) left.splice(at, 1);
    return at < 0;
  });
}
