// What a selection grows to: cursor fixtures. That each range holds the one before it is what the protocol asks of an answer.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { Position, Range } from "../../server/ide/position.ts";
import { selectionsAt } from "../../server/ide/selection.ts";
import { atCaret, slice } from "./caret.ts";

function grows(marked: string): readonly string[] {
  const { position, text } = atCaret(marked);
  return selectionsAt(readLines(text), position).map((range) =>
    slice(text, range),
  );
}

const FILE = "part a\njournal b on a\n";

test("word, value, clause, fact, entry, file", () => {
  const line = "  read near 0.87432 in with gauge mi|c-1 at 68 F";
  expect(grows(`${FILE}${line}\n\n# end\n`)).toEqual([
    "mic-1",
    "gauge mic-1",
    "with gauge mic-1",
    line.trim().replace("|", ""),
    `journal b on a\n${line.replace("|", "")}\n\n# end`,
    `${FILE}${line.replace("|", "")}\n\n# end\n`,
  ]);
});

test.each([
  [
    "a number, its quantity, its range, its fact",
    "  limits 0.87|40 in to 0.8745 in",
    [
      "0.8740",
      "0.8740 in",
      "0.8740 in to 0.8745 in",
      "limits 0.8740 in to 0.8745 in",
    ],
  ],
  [
    "a text without its quotes, then with them",
    '  note "dressed| it"',
    ["dressed it", '"dressed it"', 'note "dressed it"'],
  ],
  [
    "a comment, then its line",
    "  length 5 # by| hand",
    ["# by hand", "length 5 # by hand"],
  ],
  ["a damaged line", "  limits of| 5", ["of", "limits of 5"]],
  ["a word that nobody knows", "  limts 0.|87", ["0.87", "limts 0.87"]],
  [
    "a fact, then it with its comment",
    "  length| 5 # x",
    ["length", "length 5", "length 5 # x"],
  ],
])("%s", (_, line, expected) => {
  const found = grows(`${FILE}${line}`);
  expect(found.slice(0, expected.length)).toEqual(expected);
  expect(found.length).toBe(expected.length + 2);
});

test("an empty line is of its entry, an empty file of nothing", () => {
  expect(grows("part a\n|\npart b")).toEqual(["part a\n", "part a\n\npart b"]);
  expect(grows("|")).toEqual([""]);
  expect(grows("# only|\n")).toEqual(["# only", "# only\n"]);
});

test("at any place of any sample each range holds the caret and the range before it", () => {
  const before = (a: Position, b: Position): boolean =>
    a.line < b.line || (a.line === b.line && a.character <= b.character);
  const holds = (outer: Range, inner: Range): boolean =>
    before(outer.start, inner.start) && before(inner.end, outer.end);
  for (const folder of ["samples/shop", "samples/broken"])
    for (const name of readdirSync(folder)) {
      const lines = readLines(readFileSync(`${folder}/${name}`, "utf8"));
      lines.lines.slice(0, 200).forEach(({ text }, line) => {
        for (
          let character = 0;
          character <= Math.min(text.length, 200);
          character += 3
        ) {
          let inner: Range = {
            start: { line, character },
            end: { line, character },
          };
          for (const range of selectionsAt(lines, { line, character })) {
            if (!holds(range, inner))
              throw new Error(`${name} ${line}:${character}`);
            inner = range;
          }
          expect(inner.start).toEqual({ line: 0, character: 0 });
        }
      });
    }
});
