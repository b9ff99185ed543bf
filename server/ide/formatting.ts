// The canonical layout as edits, each no larger than what differs, so that carets and folds stay where they are. How a line should look
// is grammar/print.ts's.
import type { Edit, FileLines } from "../../grammar/lines.ts";
import { formatChanges } from "../../grammar/print.ts";

/** Edits that bring the lines from `first` to `last` (from 0, both inclusive; all where left off) into the canonical layout. */
export function formatEdits(
  file: FileLines,
  first = 0,
  last = Infinity,
): readonly Edit[] {
  return formatChanges(file)
    .filter(({ line }) => first <= line && line <= last)
    .map(({ line, text }) =>
      text === undefined
        ? withoutLine(line)
        : leastEdit(line, file.lines[line]?.text ?? "", text),
    );
}

function withoutLine(line: number): Edit {
  return {
    start: { line, character: 0 },
    end: { line: line + 1, character: 0 },
    text: "",
  };
}

/** What differs between two texts of a line. */
function leastEdit(line: number, before: string, after: string): Edit {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (
    tail < most - head &&
    before[before.length - 1 - tail] === after[after.length - 1 - tail]
  )
    tail++;
  return {
    start: { line, character: head },
    end: { line, character: before.length - tail },
    text: after.slice(head, after.length - tail),
  };
}
