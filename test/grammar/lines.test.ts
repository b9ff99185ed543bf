// Lines, blocks, and how they follow edits.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  blockAt,
  editLines,
  eolOf,
  lineAt,
  lineCount,
  readLines,
  type Edit,
  type FileLines,
} from "../../grammar/lines.ts";
import { samples } from "../samples.ts";

function textOf(file: FileLines): string {
  return file.lines.map((line) => line.text + line.eol).join("");
}

const PIECES = [
  "job a",
  "\n",
  "\r\n",
  "\r",
  "  ",
  "\t",
  "part b",
  "  material x",
  "limits 1 to 2",
  "journal f on b",
  "# note",
  ' "12" shaft"',
  "bore r from 1 to 2",
  "line l",
  "é",
  "\u{1F600}",
  "",
  "oddword x",
  "\u{FEFF}",
];

const piecedText = fc
  .array(fc.constantFrom(...PIECES), { maxLength: 30 })
  .map((pieces) => pieces.join(""));

describe("splitting", () => {
  test("keeps every character, whatever the line ends", () => {
    fc.assert(
      fc.property(piecedText, (text) => textOf(readLines(text)) === text),
    );
    for (const { text } of samples) expect(textOf(readLines(text))).toBe(text);
  });

  test("the blocks cover the lines without gaps, and each but the first opens", () => {
    fc.assert(
      fc.property(piecedText, (text) => {
        const file = readLines(text);
        expect(file.blocks.flatMap((block) => block.lines)).toEqual(file.lines);
        expect(file.blocks.slice(1).every((block) => block.opens)).toBe(true);
        file.starts.forEach((start, index) => {
          expect(blockAt(file, start)).toBe(index);
        });
        expect(lineCount(file)).toBe(file.lines.length);
        for (let at = -1; at <= file.lines.length; at++)
          expect(lineAt(file, at)).toBe(file.lines[at]);
      }),
    );
  });

  test.each([
    ["a byte order mark takes no room", "\u{FEFF}job a\n  units mm\n", [1, 2]],
    [
      "each sort of line end parts lines, and a return with a newline is one",
      "\r  a\n\r\n   b\r\r\n c",
      [0, 2, 0, 3, 0, 1],
    ],
    [
      "tabs and no-break spaces set in",
      'job a\n\tunits mm\n\u{A0}title "x"\n',
      [0, 1, 1],
    ],
  ])("%s", (_, text, indents) => {
    expect(
      readLines(text)
        .lines.slice(0, indents.length)
        .map((line) => line.indent),
    ).toEqual(text.startsWith("\u{FEFF}") ? [1, 2] : indents);
  });

  test.each([
    ["part a # a note", "part a", 7],
    ['  note "a # b" # c', 'note "a # b"', 15],
    ['  note "12" shaft"  # 3" long', 'note "12" shaft"', 20],
    ["# only a note", "", 0],
    ["  read 1#2", "read 1#2", 10],
  ])("the comment of %j", (text, body, comment) => {
    const line = readLines(text).lines[0];
    expect([line?.body, line?.comment]).toEqual([body, comment]);
  });

  test.each([
    [
      "an entry with its facts",
      'part a\n  material x\n\n  note "y"\npart b\n',
      ["part", "part"],
    ],
    [
      "a fact that lost its indent stays with its entry",
      "journal a on b\nlimits 1 to 2\n  length 3\n",
      ["journal"],
    ],
    [
      "a bore of a line that lost its indent",
      "line a\nbore b from 1 to 2\nbore c in case\n",
      ["line", "bore"],
    ],
    [
      "an entry that is set in opens all the same",
      "part a\n  journal b on a\n",
      ["part", "journal"],
    ],
    [
      "an unknown opening word keeps its lines to itself",
      "prat a\n  material x\n  bore c from 1 to 2\n",
      [undefined],
    ],
  ])("%s", (_, text, kinds) => {
    expect(readLines(text).blocks.map((block) => block.kind)).toEqual(kinds);
  });
});

describe("edits", () => {
  const offsets = fc.tuple(fc.nat(400), fc.nat(400));
  const change = fc.record({ offsets, text: piecedText });

  function positionAt(file: FileLines, offset: number): Edit["start"] {
    let left = offset;
    for (const [line, { text, eol }] of file.lines.entries()) {
      if (left <= text.length || line === file.lines.length - 1)
        return { line, character: Math.min(left, text.length) };
      // a place inside a line end counts as the end of its line
      if (left < text.length + eol.length)
        return { line, character: text.length };
      left -= text.length + eol.length;
    }
    return { line: 0, character: 0 };
  }

  function offsetOf(file: FileLines, at: Edit["start"]): number {
    return (
      file.lines
        .slice(0, at.line)
        .reduce((sum, line) => sum + line.text.length + line.eol.length, 0) +
      at.character
    );
  }

  function sameShape(file: FileLines): unknown {
    return [file.lines, file.blocks, file.starts];
  }

  test("a file that follows edits is the file read afresh", () => {
    fc.assert(
      fc.property(
        piecedText,
        fc.array(change, { maxLength: 8 }),
        (start, changes) => {
          let file = readLines(start);
          let text = start;
          for (const each of changes) {
            const [a, b] = [...each.offsets].sort((one, other) => one - other);
            const edit = {
              start: positionAt(file, a ?? 0),
              end: positionAt(file, b ?? 0),
              text: each.text,
            };
            const [from, to] = [
              offsetOf(file, edit.start),
              offsetOf(file, edit.end),
            ];
            text = text.slice(0, from) + each.text + text.slice(to);
            file = editLines(file, edit);
            expect(textOf(file)).toBe(text);
            expect(sameShape(file)).toEqual(sameShape(readLines(text)));
          }
        },
      ),
      { numRuns: 1000 },
    );
  });

  test("an entry that is set in still opens when the edit is above it", () => {
    let file = readLines("job a\r");
    let text = "job a\r";
    for (const [from, to, piece] of [
      [6, 6, "  job a"],
      [11, 11, "\r  job a"],
      [17, 17, "\r\n"],
      [19, 19, ""],
    ] as const) {
      const edit = {
        start: positionAt(file, from),
        end: positionAt(file, to),
        text: piece,
      };
      const [a, b] = [offsetOf(file, edit.start), offsetOf(file, edit.end)];
      text = text.slice(0, a) + piece + text.slice(b);
      file = editLines(file, edit);
      expect(sameShape(file)).toEqual(sameShape(readLines(text)));
    }
  });

  test("the ends about a line that is emptied join", () => {
    const file = readLines("job a\n  note x\r \nfit b\n");
    const edit = {
      start: { line: 2, character: 0 },
      end: { line: 2, character: 1 },
      text: "",
    };
    expect(sameShape(editLines(file, edit))).toEqual(
      sameShape(readLines("job a\n  note x\r\nfit b\n")),
    );
  });

  test("what an edit does not touch stays the same object", () => {
    const before = readLines(
      "part a\n  material x\npart b\n  material y\npart c\n  material z\n",
    );
    const after = editLines(before, {
      start: { line: 3, character: 11 },
      end: { line: 3, character: 12 },
      text: "q",
    });
    expect(after.blocks[0]).toBe(before.blocks[0]);
    expect(after.blocks[1]).not.toBe(before.blocks[1]);
    expect(after.blocks[2]).toBe(before.blocks[2]);
    expect(after.lines[2]).toBe(before.lines[2]);
  });

  test("a place past the end is the end", () => {
    const file = readLines("part a\n");
    const edited = editLines(file, {
      start: { line: 9, character: 9 },
      end: { line: 10, character: 0 },
      text: "part b",
    });
    expect(textOf(edited)).toBe("part a\npart b");
  });
});

describe("the line end of a file", () => {
  test.each([
    ["job a\r\n  units mm\r\n", "\r\n"],
    ["job a\r  units mm", "\r"],
    ["# first\njob a\n", "\n"],
    ["job a", "\n"],
    ["", "\n"],
  ])("of %j is %j", (text, eol) => {
    expect(eolOf(readLines(text))).toBe(eol);
  });

  test("is found in its first line, and no list of all lines is made for it", () => {
    let asked = 0;
    const blocks = readLines("part a\r\n".repeat(5_000)).blocks.map(
      (block) => ({
        ...block,
        get lines() {
          asked++;
          return block.lines;
        },
      }),
    );
    const file = {
      blocks,
      get lines(): never {
        throw new Error("all lines were asked for");
      },
    };
    expect(eolOf(file)).toBe("\r\n");
    expect(asked).toBe(1);
  });
});
