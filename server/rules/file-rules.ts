// Findings about a file as a whole: what it uses, names that stand twice, what it lacks. They cost one look over the names, and only when
// names change.
import type { OpenFile } from "../model/project.ts";
import type { EntryFinding } from "./check.ts";

/** A finding and the entry of the file that it stands at. */
export type FileFinding = EntryFinding & { readonly entry: number };

export function fileDrafts(open: OpenFile): readonly FileFinding[] {
  void open;
  return [];
}
