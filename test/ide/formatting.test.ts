// The layout as edits: what they make is grammar/print.ts's, and they touch no more than what differs.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  editLines,
  readLines,
  type Edit,
  type FileLines,
} from "../../grammar/lines.ts";
import { formatText } from "../../grammar/print.ts";
import { formatEdits } from "../../server/ide/formatting.ts";
import { JOB } from "../lsp/winch.ts";

const textOf = ({ lines }: FileLines): string =>
  lines.map(({ text, eol }) => text + eol).join("");
const applied = (file: FileLines, edits: readonly Edit[]): string =>
  textOf([...edits].reverse().reduce(editLines, file));

test("a record in its layout needs no edit", () => {
  expect(formatEdits(readLines(JOB))).toEqual([]);
});

test("an edit is no larger than what differs", () => {
  const edits = formatEdits(
    readLines("part   a\n serial 1   # one\n\n\n\npart b\n"),
  );
  const at = (line: number, from: number, to: number, text: string): Edit => ({
    start: { line, character: from },
    end: { line, character: to },
    text,
  });
  expect(edits).toEqual([
    at(0, 5, 7, ""),
    at(1, 1, 1, " "),
    at(1, 11, 12, ""),
    { ...at(3, 0, 0, ""), end: { line: 4, character: 0 } },
    { ...at(4, 0, 0, ""), end: { line: 5, character: 0 } },
  ]);
});

const spaced = fc
  .array(fc.constantFrom(" ", "  ", "\t", "\u{A0}"), {
    minLength: 1,
    maxLength: 2,
  })
  .map((all) => all.join(""));
const messy = fc
  .array(spaced, { minLength: 60, maxLength: 60 })
  .map((blanks) => {
    let at = 0;
    return JOB.replace(
      /(?<=\S) (?=\S)/g,
      () => blanks[at++ % blanks.length] ?? " ",
    ).replace(/\n\n/g, () => (at++ % 3 === 0 ? "\n\n\n" : "\n\n"));
  });

test("the edits make the layout, of the whole and of any lines; all lines in parts are the whole", () => {
  fc.assert(
    fc.property(
      messy,
      fc.constantFrom("\n", "\r\n"),
      fc.nat(30),
      (text, eol, cut) => {
        const file = readLines(text.replaceAll("\n", eol));
        const whole = formatEdits(file);
        expect(applied(file, whole)).toBe(formatText(file));
        expect([
          ...formatEdits(file, 0, cut),
          ...formatEdits(file, cut + 1),
        ]).toEqual(whole);
      },
    ),
    { numRuns: 60 },
  );
});
