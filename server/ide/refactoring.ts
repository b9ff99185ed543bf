// What an editor can be offered to change that no finding asks for, as plain data, and the pieces that such changes are made of.
import type { Entry } from "../model/entry.ts";
import type { FileEntries } from "../model/file-entries.ts";
import type { Fix } from "../model/result.ts";
import type { Position, Range } from "./position.ts";

export interface Refactoring {
  readonly title: string;
  /** `mend` stands among the quick fixes though no finding asks for it. */
  readonly kind: "mend" | "rewrite" | "extract";
  readonly edits: readonly RefactoringEdit[];
  readonly creates?: Fix["creates"];
}

export interface RefactoringEdit {
  readonly file: string;
  readonly range: Range;
  /** With tab stops, as the protocol's snippets, where `plain` says what an editor without them writes instead. */
  readonly text: string;
  readonly plain?: string;
}

/** A change between two characters of one line. */
export function editAt(
  file: string,
  line: number,
  start: number,
  end: number,
  text: string,
): RefactoringEdit {
  return {
    file,
    range: {
      start: { line, character: start },
      end: { line, character: end },
    },
    text,
  };
}

/** The end of the last fact of an entry, where another one can be written after a new line. */
export function endOfFacts(file: FileEntries, index: number): Position {
  const start = file.lines.starts[index] ?? 0;
  const lines = file.entries[index]?.block.lines ?? [];
  const last = Math.max(
    0,
    lines.findLastIndex(({ body }) => body !== ""),
  );
  return { line: start + last, character: lines[last]?.text.length ?? 0 };
}

/** Every line of an entry can be read. */
export function isRead({ damaged, facts, problems }: Entry): boolean {
  return (
    !damaged &&
    problems.length === 0 &&
    facts.every((fact) => fact.value !== undefined)
  );
}
