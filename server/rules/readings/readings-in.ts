// Every reading of an entry, of whatever sort, for rules about the gauge that made it.
import { allOf, type Entry } from "../../model/entry.ts";
import type { Reading } from "../../model/values.ts";

/** The readings of an entry whose lines are whole. */
export function readingsIn(entry: Entry): readonly Reading[] {
  return [
    ...allOf(entry, "ReadFact"),
    ...allOf(entry, "RepeatFact"),
    ...allOf(entry, "BushReadFact"),
    ...allOf(entry, "StackReadFact"),
  ].flatMap(({ value }) => (value === undefined ? [] : [value]));
}
