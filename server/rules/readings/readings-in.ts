// Every reading of an entry, of whatever sort, for rules about the gauge that made it. A swing is told apart: what a gauge was set on is in no
// swing, and so is no correction.
import { allOf, type Entry } from "../../model/entry.ts";
import { swingsOf } from "../../model/evaluate/roundness.ts";
import type { Reading, Swing } from "../../model/values.ts";

/** The readings of an entry whose lines are whole. */
export function readingsIn(entry: Entry): readonly Reading[] {
  return [
    ...allOf(entry, "ReadFact"),
    ...allOf(entry, "RepeatFact"),
    ...allOf(entry, "BushReadFact"),
    ...allOf(entry, "StackReadFact"),
  ].flatMap(({ value }) => (value === undefined ? [] : [value]));
}

/** The swings of an entry whose lines are whole. */
export function swingsIn(entry: Entry): readonly Swing[] {
  return swingsOf(entry).flatMap(({ value }) => value ?? []);
}
