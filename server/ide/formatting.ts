// The canonical layout as edits, each no larger than what differs, so that carets and folds stay where they are. How a line should look
// is grammar/print.ts's.
import type { Edit, FileLines } from "../../grammar/lines.ts";
import { isBlank } from "../../grammar/tokens.ts";
import { formatChanges } from "../../grammar/print.ts";

/** Edits that bring the lines from `first` to `last` (from 0, both inclusive; all where left off) into the canonical layout. */
export function formatEdits(
  file: FileLines,
  first = 0,
  last = Infinity,
): readonly Edit[] {
  return formatChanges(file)
    .filter(({ line }) => first <= line && line <= last)
    .flatMap(({ line, text }) => {
      const before = file.lines[line]?.text ?? "";
      if (text === undefined) return [withoutLine(line)];
      return gapEdits(line, before, text) ?? [leastEdit(line, 0, before, text)];
    });
}

function withoutLine(line: number): Edit {
  return {
    start: { line, character: 0 },
    end: { line: line + 1, character: 0 },
    text: "",
  };
}

/** An edit for each gap that differs; undefined where the two texts differ in more than their gaps. */
function gapEdits(
  line: number,
  before: string,
  after: string,
): readonly Edit[] | undefined {
  const edits: Edit[] = [];
  let at = 0;
  let to = 0;
  for (;;) {
    const gap = gapFrom(before, at);
    const wanted = gapFrom(after, to);
    if (gap !== wanted) edits.push(leastEdit(line, at, gap, wanted));
    at += gap.length;
    to += wanted.length;
    if (before[at] !== after[to]) return undefined;
    if (at === before.length) return edits;
    at++;
    to++;
  }
}

function gapFrom(text: string, start: number): string {
  let end = start;
  while (isBlank(text[end])) end++;
  return text.slice(start, end);
}

/** What differs between two texts, the first of which stands at `start` of a line. */
function leastEdit(
  line: number,
  start: number,
  before: string,
  after: string,
): Edit {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < most - head && before.at(-1 - tail) === after.at(-1 - tail))
    tail++;
  return {
    start: { line, character: start + head },
    end: { line, character: start + before.length - tail },
    text: after.slice(head, after.length - tail),
  };
}
