// Text on a terminal: widths, breaks, and the mark under a span.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  excerptOf,
  padded,
  shown,
  widthOf,
  wrap,
  wrapIndented,
} from "../../server/cli/terminal-text.ts";

describe("shown", () => {
  test("leaves letters, signs and emoji of every script as they are", () => {
    const text =
      "25 \u{B5}m \u{2264} \u{F8} H7 \u{6A5F}\u{68B0} \u{1F527} e\u{301}";
    expect(shown(text)).toBe(text);
  });

  test("writes out whatever could steer a terminal", () => {
    expect(shown("a\u{0}\u{7}\t\n\u{1B}[2J\u{7F}\u{9B}")).toBe(
      "a\\x00\\x07\\x09\\x0a\\x1b[2J\\x7f\\x9b",
    );
    expect(shown("\u{202E}\u{2066}\u{200F}\u{FEFF}\u{2028}\uD800")).toBe(
      "\\u{202e}\\u{2066}\\u{200f}\\u{feff}\\u{2028}\\u{d800}",
    );
  });

  test("no text gets through with a control or a turn of direction", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(shown(text)).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      }),
    );
  });
});

describe("widthOf", () => {
  // Unicode UAX #11: W and F take two columns; UAX #44: Mn and Me none
  test.each([
    ["abc", 3],
    ["\u{E9}", 1],
    ["e\u{301}", 1],
    ["\u{6A5F}", 2],
    ["\u{FF21}", 2],
    ["\u{AC00}", 2],
    ["\u{1F527}", 2],
    ["\u{B5}\u{3BC}\u{2264}\u{2212}", 4],
    ["\u{FF76}", 1],
  ])("of %j is %i", (text, width) => {
    expect(widthOf(text)).toBe(width);
    expect(widthOf(padded(text, 5))).toBe(5);
  });
});

describe("wrap", () => {
  test("breaks at blanks and keeps every word, no line wider than it must be", () => {
    const word = fc.stringMatching(/^[a-z]{1,12}$/);
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 12, max: 40 }),
        (words, width) => {
          const lines = wrap(words.join(" "), width);
          expect(lines.join(" ")).toBe(words.join(" "));
          for (const line of lines)
            expect(line.length).toBeLessThanOrEqual(width);
          // no line could have taken the first word of the next
          for (const [index, line] of lines.slice(0, -1).entries()) {
            const next = lines[index + 1]?.split(" ")[0] ?? "";
            expect(line.length + 1 + next.length).toBeGreaterThan(width);
          }
        },
      ),
    );
  });

  test("leaves a word alone that is wider than the room, so that a path can be copied", () => {
    expect(wrap("see /a/very/long/path/to/a/file now", 10)).toEqual([
      "see",
      "/a/very/long/path/to/a/file",
      "now",
    ]);
  });

  test("indents the first line and the rest as asked", () => {
    expect(
      wrapIndented("one two three four five six seven", 26, "* ", "  "),
    ).toBe("* one two three four five\n  six seven");
  });
});

describe("excerptOf", () => {
  /** What stands over the marks. */
  function marked(line: string, start: number, end: number, room = 80): string {
    const { text, underline } = excerptOf(line, start, end, room);
    let column = 0;
    let over = "";
    for (const character of text) {
      const width = widthOf(character);
      if (underline[column] === "^") over += character;
      column += width;
    }
    return over;
  }

  test("marks the span, whatever stands before it", () => {
    for (const before of [
      "",
      "  ",
      "\t",
      " \t ",
      "\u{6A5F}\u{1F527} ",
      "\u{1B}[31m",
      "e\u{301}",
    ]) {
      const line = `${before}want 0.8 to 1.6 # note`;
      const start = line.indexOf("0.8");
      expect(marked(line, start, start + 3)).toBe("0.8");
    }
  });

  test("takes tabs to the next multiple of four columns", () => {
    expect(excerptOf("\tread\tfar", 6, 9, 80)).toEqual({
      text: "    read    far",
      underline: "            ^^^",
    });
  });

  test("marks one column where the span is empty or past the end", () => {
    expect(excerptOf("job", 3, 3, 80)).toEqual({
      text: "job",
      underline: "   ^",
    });
    expect(excerptOf("job", 9, 12, 80)).toEqual({
      text: "job",
      underline: "   ^",
    });
    expect(excerptOf("", 0, 0, 80)).toEqual({ text: "", underline: "^" });
    expect(excerptOf("job a  ", 5, 7, 80)).toEqual({
      text: "job a  ",
      underline: "     ^^",
    });
  });

  test("shows of a long line the part round the span, never wider than the room", () => {
    const line = `note "${"a ".repeat(100)}HERE${" b".repeat(100)}"`;
    const start = line.indexOf("HERE");
    const { text, underline } = excerptOf(line, start, start + 4, 40);
    expect(widthOf(text)).toBeLessThanOrEqual(40);
    expect(text).toMatch(/^\u{2026}.*HERE.*\u{2026}$/u);
    expect(text.slice(underline.indexOf("^"), underline.length)).toBe("HERE");
  });

  test("holds for any line and any span", () => {
    const piece = fc.constantFrom(
      "a",
      " ",
      "\t",
      "\u{6A5F}",
      "\u{1F527}",
      "e\u{301}",
      "\u{1B}",
      "0.8740",
    );
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 80 }),
        fc.nat(),
        fc.nat(),
        fc.integer({ min: 20, max: 100 }),
        (pieces, from, length, room) => {
          const line = pieces.join("");
          const start = from % (line.length + 1);
          const { text, underline } = excerptOf(
            line,
            start,
            start + (length % 10),
            room,
          );
          expect(widthOf(text)).toBeLessThanOrEqual(Math.max(room, 1));
          expect(underline).toMatch(/^ *\^+$/);
          expect(underline.indexOf("^")).toBeLessThanOrEqual(widthOf(text));
        },
      ),
    );
  });
});
