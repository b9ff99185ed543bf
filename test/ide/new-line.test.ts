// The indent of a line that was just begun: the text as it is once the line is there, the caret on it, and the text after the edits.
import { expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import { newLineEdits } from "../../server/ide/new-line.ts";
import { atCaret } from "./caret.ts";

function after(marked: string): string {
  const { text, position } = atCaret(marked);
  const file = readLines(text);
  return newLineEdits(file, position)
    .reduce(editLines, file)
    .lines.map((line) => line.text + line.eol)
    .join("");
}

test.each([
  ["below an opening line", "part a\n|", "part a\n  "],
  [
    "below a fact",
    "part a\n  dowels 2\n|\npart b",
    "part a\n  dowels 2\n  \npart b",
  ],
  ["where another indent stands", "part a\n    |", "part a\n  "],
  ["a fact that was moved down", "part a\n|dowels 2", "part a\n  dowels 2"],
  ["in lines that end as in Windows", "part a\r\n|\r\n", "part a\r\n  \r\n"],
])("%s", (_, marked, expected) => {
  expect(after(marked)).toBe(expected);
});

test.each([
  ["it stands right already", "part a\n  |"],
  ["below an empty line: the next entry may come", "part a\n\n|"],
  ["below a comment", "part a\n# which way round\n|"],
  ["the next entry was moved down", "part a\n|part b"],
  ["a word that is an entry as well as a fact", "line a\n|bore b in bush b"],
  ["a remark was moved down", "part a\n|# seen"],
  ["below a word that opens nothing", "prat a\n|"],
  ["a word that is no fact of the entry", "part a\n|limits 5"],
  ["the first line", "|part a"],
])("nothing where %s", (_, marked) => {
  expect(after(marked)).toBe(marked.replace("|", ""));
});
