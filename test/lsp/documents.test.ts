// The lines of an open document follow its changes: they are always those of the text that the changes make.
import fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { TextDocumentContentChangeEvent } from "vscode-languageserver";
import { readLines, type FileLines } from "../../grammar/lines.ts";
import {
  documentsConfiguration as documents,
  type Document,
} from "../../server/lsp/documents.ts";
import { JOB } from "./winch.ts";

const URI = "file:///winch.thou";
const open = (text: string): Document => documents.create(URI, "thou", 1, text);
const textOf = ({ lines }: FileLines): string =>
  lines.map(({ text, eol }) => text + eol).join("");

const PIECES = [
  "\n",
  "\r\n",
  "\r",
  "  ",
  "#",
  '"',
  "é",
  "\u{1F527}",
  "fit a of b in c\n",
  "  want 1\n",
  "bore",
  "0.87",
  "",
  "x",
];
const position = fc.record({ line: fc.nat(45), character: fc.nat(60) });
const changeParts = {
  a: position,
  b: position,
  text: fc
    .array(fc.constantFrom(...PIECES), { maxLength: 4 })
    .map((all) => all.join("")),
};
const change = fc.record({ ...changeParts, whole: fc.boolean() });

interface Change {
  readonly a: { readonly line: number; readonly character: number };
  readonly b: { readonly line: number; readonly character: number };
  readonly text: string;
  readonly whole: boolean;
}

/** The range from the one position to the other, whichever comes first; the whole text is replaced now and then only. */
function changeOf({
  a,
  b,
  text,
  whole,
}: Change): TextDocumentContentChangeEvent {
  const inOrder =
    a.line < b.line || (a.line === b.line && a.character <= b.character);
  return whole && a.line % 9 === 0
    ? { text: text + JOB }
    : { range: inOrder ? { start: a, end: b } : { start: b, end: a }, text };
}

/** A text after a change, by offsets in the text as the protocol defines positions: what is past an end is the end. */
function changed(text: string, change: TextDocumentContentChangeEvent): string {
  if (!("range" in change)) return change.text;
  const offset = ({ line, character }: Change["a"]): number => {
    const ends = [...text.matchAll(/\r\n|\n|\r/g)];
    if (ends.length < line) return text.length;
    const before = ends[line - 1];
    const start = before === undefined ? 0 : before.index + before[0].length;
    return Math.min(start + character, ends[line]?.index ?? text.length);
  };
  const { start, end } = change.range;
  return text.slice(0, offset(start)) + change.text + text.slice(offset(end));
}

test("after any edits the lines are those of the text", () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(change, { minLength: 1, maxLength: 3 }), {
        maxLength: 12,
      }),
      fc.constantFrom("\n", "\r\n"),
      (batches, eol) => {
        let text = JOB.replaceAll("\n", eol);
        let document = open(text);
        batches.forEach((batch, index) => {
          const changes = batch.map(changeOf);
          text = changes.reduce(changed, text);
          document = documents.update(document, changes, index + 2);
        });
        expect(textOf(document.lines)).toBe(text);
        expect(document.lines).toEqual(readLines(text));
        expect(document.version).toBe(batches.length + 1);
      },
    ),
    { numRuns: 300 },
  );
});

test("edits within the text give what the protocol's own library gives", () => {
  const within = fc.record({ ...changeParts, whole: fc.constant(false) });
  fc.assert(
    fc.property(fc.array(within, { maxLength: 20 }), (all) => {
      let document = open(JOB);
      let reference = TextDocument.create(URI, "thou", 1, JOB);
      all.forEach((each, index) => {
        // past the last line the library (1.0.16) and the protocol part ways
        const bring = ({ line, character }: Change["a"]) => ({
          line: line % reference.lineCount,
          character,
        });
        const part = changeOf({ ...each, a: bring(each.a), b: bring(each.b) });
        document = documents.update(document, [part], index + 2);
        reference = TextDocument.update(reference, [part], index + 2);
      });
      expect(textOf(document.lines)).toBe(reference.getText());
    }),
    { numRuns: 150 },
  );
});

test("lines that an edit does not touch stay the objects that they were", () => {
  const before = open(JOB);
  const at = { line: 12, character: 9 };
  const after = documents.update(
    before,
    [{ range: { start: at, end: at }, text: "1" }],
    2,
  );
  const kept = after.lines.lines.filter(
    (line, index) => line === before.lines.lines[index],
  );
  expect(kept).toHaveLength(before.lines.lines.length - 1);
  const blocks = after.lines.blocks.filter((block) =>
    before.lines.blocks.includes(block),
  );
  expect(blocks).toHaveLength(before.lines.blocks.length - 1);
});

const at = (line: number, from: number, to = from) => ({
  start: { line, character: from },
  end: { line, character: to },
});
test.each([
  ["a character", [{ range: at(3, 4), text: "x" }], 3],
  ["a character taken away", [{ range: at(3, 4, 5), text: "" }], 3],
  ["a pair of quotes", [{ range: at(3, 4), text: '""' }], 3],
  ["a new line", [{ range: at(3, 4), text: "\n" }], undefined],
  ["a word", [{ range: at(3, 4), text: "want" }], undefined],
  ["a word taken away", [{ range: at(3, 4, 8), text: "" }], undefined],
  [
    "two places at once",
    [
      { range: at(3, 4), text: "x" },
      { range: at(4, 4), text: "x" },
    ],
    undefined,
  ],
  ["the whole text", [{ text: "x" }], undefined],
])("%s is typed, or is not", (_, changes, line) => {
  expect(documents.update(open(JOB), changes, 2).typedOn).toBe(line);
});

test("a change of a document gathers no list of all its lines", () => {
  const before = open(JOB);
  const { blocks, starts } = before.lines;
  const ungathered: FileLines = {
    blocks,
    starts,
    get lines(): never {
      throw new Error("gathered");
    },
  };
  const change = {
    range: {
      start: { line: 1, character: 0 },
      end: { line: 1, character: 0 },
    },
    text: " ",
  };
  const after = documents.update({ ...before, lines: ungathered }, [change], 2);
  expect(after.typedOn).toBe(1);
  expect(textOf(after.lines)).toBe(JOB.replace("\n", "\n "));
});
