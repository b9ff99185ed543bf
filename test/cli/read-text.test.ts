// Bytes to text: what is refused, and where it is said to be wrong.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readText } from "../../server/cli/read-text.ts";

describe("readText", () => {
  test("gives every UTF-8 text back, with or without its mark", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        expect(readText(Buffer.from(text), true)).toEqual({ ok: true, text });
        expect(readText(Buffer.from(`\u{FEFF}${text}`), true)).toEqual({
          ok: true,
          text: `\u{FEFF}${text}`,
        });
        expect(readText(Buffer.from(`\u{FEFF}${text}`), false)).toEqual({
          ok: true,
          text,
        });
      }),
    );
  });

  // the kinds of fault that RFC 3629 names: bytes that never stand in UTF-8, half characters, overlong forms, half pairs, past the last
  test.each([
    ["a byte that is none", [0x61, 0xff], "line 1, column 2 (byte 0xFF)"],
    ["a byte that only follows", [0x0a, 0x80], "line 2, column 1 (byte 0x80)"],
    [
      "a half character before a letter",
      [0x61, 0xe2, 0x82, 0x61],
      "line 1, column 2 (byte 0xE2)",
    ],
    [
      "a half character at the end",
      [0x61, 0x0d, 0x0a, 0x62, 0xf0, 0x9f],
      "line 2, column 2 (byte 0xF0)",
    ],
    ["a stroke written overlong", [0xc0, 0xaf], "line 1, column 1 (byte 0xC0)"],
    ["half a pair", [0x61, 0xed, 0xa0, 0x80], "line 1, column 2 (byte 0xED)"],
    [
      "past the last character",
      [0xf4, 0x90, 0x80, 0x80],
      "line 1, column 1 (byte 0xF4)",
    ],
    [
      "after a mark, which takes no column",
      [0xef, 0xbb, 0xbf, 0x61, 0xe9],
      "line 1, column 2 (byte 0xE9)",
    ],
    [
      "after an emoji, which takes two",
      [0xf0, 0x9f, 0x94, 0xa7, 0xe9, 0x61],
      "line 1, column 3 (byte 0xE9)",
    ],
  ])("finds %s", (_, bytes, place) => {
    expect(readText(new Uint8Array(bytes), false)).toEqual({
      ok: false,
      because: `it is not UTF-8 at ${place}; save it as UTF-8`,
    });
  });

  test("names UTF-16 by its mark", () => {
    for (const bytes of [
      Buffer.from("\u{FEFF}job", "utf16le"),
      Buffer.from("\u{FEFF}job", "utf16le").swap16(),
    ])
      expect(readText(bytes, false)).toEqual({
        ok: false,
        because: "it is in UTF-16; save it as UTF-8",
      });
  });

  test("throws at no bytes", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const read = readText(bytes, true);
        expect(read.ok).toBe(
          Buffer.compare(Buffer.from(Buffer.from(bytes).toString()), bytes) ===
            0,
        );
      }),
    );
  });
});
