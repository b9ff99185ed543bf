// Each reading once over all states of its record: a record keeps its readings from version to version, and a day may be mended in a later one.
import { groupedBy } from "../model/groups.ts";
import type { StatePoint } from "./trend-state.ts";

/**
 * The points of all states, the oldest first, each reading once, as the last state has it: of one day and gauge, or of the commit that
 * brought it where it has no day of its own. One whose lines a later state has anew under another day, and no longer under this one, was
 * given the wrong day, or none, and is the same.
 */
export function pointsOnce(
  states: readonly (readonly StatePoint[])[],
): readonly StatePoint[] {
  const once = new Map<string, StatePoint>();
  const keysOf = new Map<string, Set<string>>();
  for (const state of states)
    for (const [family, points] of groupedBy(state, familyOf)) {
      const before = keysOf.get(family) ?? new Set<string>();
      keysOf.set(family, before);
      const here = new Map(points.map((point) => [keyOf(point), point]));
      const anew = points.flatMap((point) =>
        without(point.lines, once.get(keyOf(point))?.lines ?? []),
      );
      for (const key of before) {
        const lines = once.get(key)?.lines ?? [];
        if (here.has(key) || 0 < without(lines, anew).length) continue;
        once.delete(key);
        before.delete(key);
      }
      for (const [key, point] of here) {
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
