// Findings about a file as a whole: what it uses, names that stand twice, what it lacks. They cost one look over the entries, and mostly
// not even that.
import type { OpenFile } from "../model/project.ts";
import type { Level } from "../model/result.ts";
import type { Draft, EntryFinding } from "./rule.ts";
import { filesMissing, useLoops } from "./text/file-missing.ts";
import { namesTwice } from "./text/name-twice.ts";
import { openingMissing, unitsMissing } from "./text/opening-missing.ts";

/** A finding and the entry of the file that it stands at. */
export type FileFinding = EntryFinding & { readonly entry: number };

/** A draft and the entry of the file that it stands at. */
export type FileDraft = Draft & { readonly entry: number };

/** A rule about a file; `fact-missing` is one about entries too. */
export interface FileRule {
  readonly code: string;
  readonly level: Level;
  readonly check: (open: OpenFile) => readonly FileDraft[];
}

export const FILE_RULES: readonly FileRule[] = [
  { code: "file-missing", level: "error", check: filesMissing },
  { code: "use-loop", level: "error", check: useLoops },
  { code: "name-twice", level: "error", check: namesTwice },
  { code: "fact-missing", level: "warning", check: openingMissing },
  { code: "fact-missing", level: "warning", check: unitsMissing },
];

export function fileDrafts(open: OpenFile): readonly FileFinding[] {
  return FILE_RULES.flatMap(({ code, level, check }) =>
    check(open).map((draft) => ({ code, level, ...draft })),
  );
}
