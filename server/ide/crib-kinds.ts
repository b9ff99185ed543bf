// What a crib is made of.
import type { EntryKind } from "../../grammar/vocabulary.ts";

/** What only a crib is made of as a rule; in a job these stand last. */
export const OF_CRIB: ReadonlySet<EntryKind> = new Set<EntryKind>([
  "reamer",
  "pilot",
  "gauge",
  "material",
  "oil",
  "route",
]);
