// The canonical layout.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { formatBody, formatChanges, formatText } from "../../grammar/print.ts";
import { tokenize } from "../../grammar/tokens.ts";
import { samples, soundSamples } from "../samples.ts";

function format(text: string): string {
  return formatText(readLines(text));
}

/** What a layout must never change: every token but the blanks, in order. */
function words(text: string): readonly string[] {
  return readLines(text).lines.flatMap((line) =>
    tokenize(line.text.slice(line.indent))
      .filter((token) => token.kind !== "blank")
      .map((token) =>
        line.text.slice(line.indent).slice(token.start, token.end),
      ),
  );
}

const PIECES = [
  "job  a",
  "\n",
  "\n\n\n",
  "\r\n",
  "   ",
  "\t",
  "part b  # x",
  "  material   x",
  " limits 1  to 2",
  "  shims 0.1 , 0.2 mm",
  "journal f on b",
  "#note",
  '  note  "a  b"',
  "  limits 25H7",
  " limits 1 2",
  '\u{A0}\u{A0}note "z"',
  "\u{FEFF}",
];
const piecedText = fc
  .array(fc.constantFrom(...PIECES), { maxLength: 25 })
  .map((pieces) => pieces.join(""));

describe("the layout", () => {
  test("twice is as once", () => {
    fc.assert(
      fc.property(piecedText, (text) => {
        expect(format(format(text))).toBe(format(text));
      }),
    );
    for (const { text } of samples)
      expect(format(format(text))).toBe(format(text));
  });

  test("changes blanks and nothing else", () => {
    fc.assert(
      fc.property(piecedText, (text) => {
        expect(words(format(text))).toEqual(words(text));
      }),
    );
    for (const { text } of samples)
      expect(words(format(text))).toEqual(words(text));
  });

  test.each(soundSamples)("$path is laid out already", ({ text }) => {
    expect(format(text)).toBe(text);
  });

  test.each([
    [
      "one blank between words, two before a fact",
      "part  a\n\tmaterial   steel\n",
      "part a\n  material steel\n",
    ],
    [
      "a comma has its blank after it, not before",
      "stack s\n  shims 0.1 ,0.2 ,  0.5 mm\n",
      "stack s\n  shims 0.1,0.2, 0.5 mm\n",
    ],
    [
      "two blanks before a comment",
      "part a # x\n  # y\n    #z\n",
      "part a  # x\n  # y\n  #z\n",
    ],
    [
      "line ends stay",
      "part a\r\n material x\r\n",
      "part a\r\n  material x\r\n",
    ],
    ["the byte order mark stays", "\u{FEFF}part  a\n", "\u{FEFF}part a\n"],
    ["no newline at the end stays none", "part  a", "part a"],
    [
      "several empty lines become one",
      "part a\n\n\n\npart b\n",
      "part a\n\npart b\n",
    ],
    [
      "a damaged line is left alone",
      "part a\n      limits   1 2\n   material  \n",
      "part a\n      limits   1 2\n   material  \n",
    ],
    [
      "numbers, units and texts stay as written",
      'part a\n  bolts  18.00lbf-ft\n  note   "a   b"\n',
      'part a\n  bolts 18.00lbf-ft\n  note "a   b"\n',
    ],
    [
      "empty lines at the end stay, and the blanks behind a comment do not",
      "part a\n\n\n  # x  \n\n\n",
      "part a\n\n  # x\n\n\n",
    ],
    [
      "a line of blanks is an empty one",
      "part a\n   \n \t\npart b\n",
      "part a\n\npart b\n",
    ],
    [
      "an empty line after each of two lines stays",
      "part a\n\n  material x\n\npart b\n",
      "part a\n\n  material x\n\npart b\n",
    ],
    [
      "a comment in column 1 stays there, and one that is set in stands as a fact does",
      "# a\n\t# b\npart a\n#c\n     #d\n",
      "# a\n  # b\npart a\n#c\n  #d\n",
    ],
    [
      "what stands before the first entry, or opens none, is left alone",
      '  units   mm\nprat   a\n   note   "x"\n',
      '  units   mm\nprat   a\n   note   "x"\n',
    ],
    [
      "a fact that lost its indent, and an entry that is set in, are left alone",
      "part a\nsplit   across\n  journal   b on a\n",
      "part a\nsplit   across\n  journal   b on a\n",
    ],
    [
      "a word that is no fact of its entry is left alone",
      "part a\n   limits   1 to 2\n",
      "part a\n   limits   1 to 2\n",
    ],
    [
      "a byte order mark alone, and one before a comment",
      "\u{FEFF}\n# x\n",
      "\u{FEFF}\n# x\n",
    ],
    [
      "a byte order mark before a comment that is set in",
      "\u{FEFF}    # x  \n",
      "\u{FEFF}  # x\n",
    ],
    [
      "the blanks behind a comment go, of whatever sort",
      "part a   # x\u{A0}\t\n",
      "part a  # x\n",
    ],
  ])("%s", (_, text, wanted) => {
    expect(format(text)).toBe(wanted);
  });

  test("only the lines that differ are changed, each by its number", () => {
    expect(
      formatChanges(
        readLines('part  a\n  material x\n\n\npart b\n note  "x"\n'),
      ),
    ).toEqual([
      { line: 0, text: "part a" },
      { line: 3, text: undefined },
      { line: 5, text: '  note "x"' },
    ]);
    for (const { text } of soundSamples)
      expect(formatChanges(readLines(text))).toEqual([]);
  });

  test("a body keeps its tokens", () => {
    expect(formatBody("limits \t 0.8745 \u{A0} +0   -0.0005")).toBe(
      "limits 0.8745 +0 -0.0005",
    );
  });
});
