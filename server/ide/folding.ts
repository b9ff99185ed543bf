// What can be folded: an entry with its facts, and a run of comment lines. It looks at lines only, so that folding waits for nothing.
import { isIndented, type FileLines, type Line } from "../../grammar/lines.ts";

/** Lines from 0, both inclusive; the first stays in sight. */
export interface Fold {
  readonly first: number;
  readonly last: number;
  readonly kind: "entry" | "comment";
}

export function foldsIn(file: FileLines): readonly Fold[] {
  return [...entryFolds(file), ...commentFolds(file)].sort(
    (a, b) => a.first - b.first || b.last - a.last,
  );
}

function entryFolds(file: FileLines): readonly Fold[] {
  return file.blocks.flatMap((block, index): readonly Fold[] => {
    if (!block.opens) return [];
    let size = block.lines.length;
    // what is set back to the margin below the facts is a remark on the next entry
    while (1 < size && !isOfEntry(block.lines[size - 1])) size--;
    const first = file.starts[index] ?? 0;
    return size < 2 ? [] : [{ first, last: first + size - 1, kind: "entry" }];
  });
}

function isOfEntry(line: Line | undefined): boolean {
  if (line === undefined) return false;
  return line.body !== "" || (isComment(line) && isIndented(line));
}

function commentFolds(file: FileLines): readonly Fold[] {
  const folds: Fold[] = [];
  let first: number | undefined;
  for (let at = 0; at <= file.lines.length; at++) {
    if (isComment(file.lines[at])) {
      first ??= at;
      continue;
    }
    if (first !== undefined && first + 1 < at)
      folds.push({ first, last: at - 1, kind: "comment" });
    first = undefined;
  }
  return folds;
}

/** A line with a comment and nothing else. */
function isComment(line: Line | undefined): boolean {
  return line?.body === "" && line.comment < line.text.length;
}
