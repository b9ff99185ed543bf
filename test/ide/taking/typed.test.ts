// What gauges and hands type, read as it came.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  metresOf,
  readTyped,
  stepOf,
} from "../../../server/ide/taking/typed.ts";

const reading = (digits: string, unit?: string, hasOpenComma = false) => ({
  digits,
  unit,
  hasOpenComma,
});

describe("a reading", () => {
  test.each([
    ["0.87430", reading("0.87430")],
    [".8743", reading("0.8743")],
    ["+0.8743", reading("0.8743")],
    ["+000.8743", reading("0.8743")],
    ["0.8743\t", reading("0.8743")],
    ["\u{2}0.8743\r", reading("0.8743")],
    ["22,21 mm", reading("22.21", "mm")],
    ["22,2113mm", reading("22.2113", "mm")],
    ["22,211", reading("22.211", undefined, true)],
    ["0,874", reading("0.874")],
    ["22.211 MM", reading("22.211", "mm")],
    ['0.8743"', reading("0.8743", "in")],
    ["0.8743 IN", reading("0.8743", "in")],
    ["22211 µm", reading("22211", "um")],
    ["25.", reading("25")],
    ["25", reading("25")],
  ])("%j", (text, expected) => {
    expect(readTyped(text)).toEqual(expected);
  });

  test.each([
    ["7/8", "fraction"],
    ["-0.0003", "below nought"],
    ["\u{2212}0.8743", "below nought"],
    ["0.0000", "nought"],
    ["ERR", "`ERR` is not a reading"],
    ["O.8743", "has a letter where a digit belongs: write `0.8743`"],
    ["0.874l", "write `0.8741`"],
    ["0.8743 furlongs", "no unit of length"],
    ["0.8743 F", "no unit of length"],
    ["1.234,5", "not a reading"],
    ["1,234.5", "not a reading"],
    ["1e3", "not a reading"],
    ["0.87430.8742", "not a reading"],
    ["0.8743 0.8742", "not a reading"],
    ["123456789.12345", "more digits"],
    ["x".repeat(5000), "…"],
  ])("%j is refused", (text, words) => {
    const found = readTyped(text);
    expect("fault" in found ? found.fault : found).toContain(words);
  });
});

test("nothing that is typed throws, and what is taken keeps its number", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 30 }), (text) => {
      const found = readTyped(text);
      if ("fault" in found) expect(found.fault).not.toBe("");
      else expect(found.digits).toMatch(/^\d+(\.\d+)?$/u);
    }),
  );
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 999_999 }),
      fc.integer({ min: 0, max: 6 }),
      fc.constantFrom<"mm" | "in" | "um">("mm", "in", "um"),
      fc.constantFrom("", "+", "0", "+00"),
      fc.constantFrom(" ", "", "\t"),
      (whole, decimals, unit, before, after) => {
        const written = (whole / 10 ** decimals).toFixed(decimals);
        const found = readTyped(`${before}${written}${after}${unit}${after}`);
        if ("fault" in found) throw new Error(found.fault);
        expect(Number(found.digits)).toBe(Number(written));
        expect(found.digits.split(".")[1]?.length ?? 0).toBe(decimals);
        // 1 in is 25.4 mm by definition (international yard and pound, 1959)
        const size = { mm: 1e-3, in: 0.0254, um: 1e-6 }[unit];
        expect(metresOf(found.digits, unit)).toBeCloseTo(
          Number(written) * size,
          9,
        );
        expect(stepOf(found.digits, unit)).toBeCloseTo(
          size * 10 ** -decimals,
          15,
        );
      },
    ),
  );
});
