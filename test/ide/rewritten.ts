// A text with the edits of a refactoring made, as an editor without tab stops makes them.
import type { RefactoringEdit } from "../../server/ide/refactoring.ts";

export function rewritten(
  text: string,
  { edits }: { readonly edits: readonly RefactoringEdit[] },
  file?: string,
): string {
  const starts = [0];
  for (const match of text.matchAll(/\n/gu)) starts.push(match.index + 1);
  const offset = ({ line, character }: RefactoringEdit["range"]["start"]) =>
    (starts[line] ?? text.length) + character;
  let result = text;
  const own = edits
    .filter((edit) => file === undefined || edit.file === file)
    .toSorted((a, b) => offset(b.range.start) - offset(a.range.start));
  for (const { range, text: written, plain = written } of own)
    result =
      result.slice(0, offset(range.start)) +
      plain +
      result.slice(offset(range.end));
  return result;
}
