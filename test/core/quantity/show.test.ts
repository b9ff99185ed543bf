// Numbers as a person reads them: units always, digits never beyond what is known.
import { describe, expect, test } from "vitest";
import {
  decimalsFor,
  fixed,
  lengthDigits,
  showCount,
  showInOther,
  showLength,
  showRange,
  showTemperature,
  showWritten,
  significant,
  stepTaken,
} from "../../../server/core/quantity/show.ts";

const inches = (value: number): number => value * 0.0254;

describe("lengths", () => {
  test.each([
    [
      "as many decimals as were read",
      showLength(inches(0.87432), "inch", inches(0.00001)),
      "0.87432 in",
    ],
    [
      "four where nothing says more",
      showLength(inches(0.87432), "inch"),
      "0.8743 in",
    ],
    [
      "never fewer than usual",
      showLength(inches(0.5), "inch", inches(0.1)),
      "0.5000 in",
    ],
    [
      "a gauge that steps by half a tenth is read to five",
      showLength(inches(0.00005), "inch", inches(0.00005)),
      "0.00005 in",
    ],
    [
      "a range",
      showRange(inches(0.001), inches(0.0013), "inch"),
      "0.0010 to 0.0013 in",
    ],
    [
      "a range whose ends read alike is one size",
      showRange(0.02, 0.0200001, "mm"),
      "20.000 mm",
    ],
    ["the other unit", showInOther(inches(1), "inch"), "25.400 mm"],
    ["no minus before nothing", lengthDigits(-1e-9, "mm"), "0.000"],
  ])("%s", (_, shown, wanted) => {
    expect(shown).toBe(wanted);
  });

  test("halves go away from zero, however their doubles lie", () => {
    // 0.58175 in and 24.9895 mm, whose doubles lie below the half
    expect([
      lengthDigits(0.01477645, "inch"),
      lengthDigits(-0.01477645, "inch"),
      lengthDigits(0.0249895, "mm"),
      lengthDigits(0.0250105, "mm"),
      lengthDigits((inches(0.8736) + inches(0.87445)) / 2, "inch", 2.54e-7),
      // a difference of sizes, whose noise is larger
      lengthDigits(inches(0.87535) - inches(0.8743), "inch"),
      fixed(1.005, 2),
      significant(0.01235, 3),
    ]).toEqual([
      "0.5818",
      "-0.5818",
      "24.990",
      "25.011",
      "0.87403",
      "0.0011",
      "1.01",
      "0.0124",
    ]);
  });

  test("a step of 0.0025 takes four decimals, and one of an inch gauge no more in mm", () => {
    expect([
      showLength(2.5e-6, "mm", 2.5e-6),
      showLength(inches(0.00025), "inch", inches(0.00025)),
      decimalsFor(inches(0.0001), "mm"),
    ]).toEqual(["0.0025 mm", "0.00025 in", 3]);
  });

  test("the step of what lengths take in full is that of the unit that takes fewer digits", () => {
    const taken = (...lengths: number[]) => stepTaken(lengths);
    expect([
      taken(0.0249895, 0.0250105),
      taken(0.025, 0.025021),
      taken(inches(0.87445), inches(0.8747)),
      taken(inches(23 / 64), inches(0.5)),
      taken(inches(1 / 3)),
    ]).toEqual([1e-7, 1e-6, 2.54e-7, 2.54e-8, undefined]);
  });

  test("decimals stop at what the unit can bear", () => {
    expect([
      decimalsFor(1e-12, "inch"),
      decimalsFor(1e-12, "mm"),
      decimalsFor(0, "mm"),
    ]).toEqual([6, 5, 3]);
  });
});

test("a length that was written keeps its digits", () => {
  expect(showWritten(0.00001 * 0.0254, "inch")).toBe("0.00001 in");
  expect(showWritten(0.000025 * 0.0254, "inch")).toBe("0.000025 in");
  expect(showWritten(0.002 * 0.0254, "inch")).toBe("0.0020 in");
  expect(showWritten(0.0000004, "mm")).toBe("0.0004 mm");
  expect(showWritten(0.0254 / 3, "mm")).toBe("8.46667 mm");
});

test("temperatures", () => {
  expect([
    showTemperature(20, "inch"),
    showTemperature(20, "mm"),
    showTemperature(-17.78, "inch"),
  ]).toEqual(["68 °F", "20 °C", "0 °F"]);
});

test("significant digits", () => {
  expect([
    significant(0, 2),
    significant(96.4, 2),
    significant(0.01234, 2),
    significant(123456, 2),
    fixed(-0.0001, 2),
  ]).toEqual(["0", "96", "0.012", "120000", "0.00"]);
});

test("a count is one of a thing, or so many", () => {
  expect(showCount(0, "reading")).toBe("0 readings");
  expect(showCount(1, "reading")).toBe("1 reading");
  expect(showCount(2, "bush", "bushes")).toBe("2 bushes");
  expect(showCount(1, "bush", "bushes")).toBe("1 bush");
});
