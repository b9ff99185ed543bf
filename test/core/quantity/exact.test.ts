// Written numbers are held without loss.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  metresToTenths,
  readNumber,
  tenthsToMetres,
  toNumber,
  toTenths,
} from "../../../server/core/quantity/exact.ts";
import {
  fromSi,
  toSi,
  unitOf,
  UNITS,
  unitWords,
} from "../../../server/core/quantity/units.ts";

const INCH = 254_000_000n;
const MM = 10_000_000n;

function tenths(text: string, perUnit: bigint): number | undefined {
  const written = readNumber(text);
  return written === undefined ? undefined : toTenths(written, perUnit);
}

// IEEE 754: a decimal reads as the nearest double; JavaScript's own reading of it is the other hand.
test.each([
  "1e-26",
  "0.1234567890123456789",
  "616353e11",
  "575e-19",
  "-2.5e-30",
  "9007199254740993",
])("%s reads as the double nearest to it", (word) => {
  const read = readNumber(word);
  expect(read && toNumber(read)).toBe(Number(word));
});

describe("numbers as written", () => {
  test.each([
    ["0.8748", 0.8748],
    [".8748", 0.8748],
    ["7/8", 0.875],
    ["1 3/16", 1.1875],
    ["1-3/16", 1.1875],
    ["-0.0002", -0.0002],
    ["\u{2212}0.0002", -0.0002],
    ["14.5e6", 14.5e6],
    ["25.", 25],
    ["+3", 3],
  ])("%s", (text, value) => {
    const written = readNumber(text);
    expect(written && toNumber(written)).toBe(value);
  });

  test.each([
    "",
    ".",
    "1/0",
    "1.2.3",
    "abc",
    "1e999",
    "--1",
    "1/2/3",
    "0x10",
    "1_000",
  ])("%j is none", (text) => {
    expect(readNumber(text)).toBeUndefined();
  });

  test("the last digit is kept", () => {
    expect([
      readNumber("25.40")?.decimals,
      readNumber("25.4")?.decimals,
      readNumber("7/8")?.decimals,
    ]).toEqual([2, 1, undefined]);
  });

  test("any decimal is the double that the language itself reads", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1e9, max: 1e9 }),
        fc.nat(9),
        (digits, decimals) => {
          const text = (digits / 10 ** decimals).toFixed(decimals);
          const written = readNumber(text);
          expect(written && toNumber(written)).toBe(Number(text) + 0);
        },
      ),
    );
  });
});

describe("lengths", () => {
  test("an inch size and its metric equal are one number", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000_000 }), (millionths) => {
        const inch = (millionths / 1e6).toFixed(6);
        // 25.4 times a six-place decimal has seven places at most
        const mm = `${String((BigInt(millionths) * 254n) / 10n ** 7n)}.${String((BigInt(millionths) * 254n) % 10n ** 7n).padStart(7, "0")}`;
        expect(tenths(inch, INCH)).toBe(tenths(mm, MM));
      }),
    );
  });

  test("six inch decimals and 1/128 are exact; beyond, halves go away from zero", () => {
    expect(tenths("0.000001", INCH)).toBe(254);
    expect(tenths("1/128", INCH)).toBe(1_984_375);
    expect(tenths("0.00000005", MM)).toBe(1);
    expect(tenths("-0.00000005", MM)).toBe(-1);
    expect(tenths("0.00000004", MM)).toBe(0);
    expect(Object.is(tenths("-0.00000004", MM), 0)).toBe(true);
  });

  test("metres and back", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), (count) => {
        expect(metresToTenths(tenthsToMetres(count))).toBe(count + 0);
      }),
    );
    expect(tenthsToMetres(254_000_000)).toBe(0.0254);
  });
});

describe("units", () => {
  test("every word means one unit", () => {
    const words = UNITS.flatMap((unit) => [unit.symbol, ...(unit.also ?? [])]);
    expect(new Set(words).size).toBe(words.length);
    expect(unitWords()).toHaveLength(words.length);
  });

  // defined: NIST Special Publication 811 (2008), appendix B, from memory; and the exact ratios between units of one kind
  test.each([
    ["lbf", 1, 4.4482216152605],
    ["psi", 1, 6894.757293168],
    ["lbf-ft", 1, 1.35581794833],
    ["ft/min", 1, 0.00508],
    ["F", 68, 20],
    ["F", -40, -40],
    ["K", 293.15, 20],
    ["uin/in-F", 10, 18e-6],
    ["rpm", 60, 1],
    ["cSt", 1, 1e-6],
    ["deg", 180, Math.PI],
  ])("%s", (word, value, si) => {
    const unit = unitOf(word);
    expect(unit && toSi(value, unit)).toBeCloseTo(si, 8);
  });

  test("to SI and back", () => {
    for (const unit of UNITS)
      expect(fromSi(toSi(12.5, unit), unit)).toBeCloseTo(12.5, 9);
  });

  test("`per min` counts however it is spaced", () => {
    expect(unitOf("per   min")).toBe(unitOf("per min"));
  });
});
