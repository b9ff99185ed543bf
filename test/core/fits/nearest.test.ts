// The common classes, and the way back from limits or a measured pair to them.
import { describe, expect, test } from "vitest";
import {
  commonClassesAt,
  commonFitsAt,
  commonHoles,
  commonIsoFits,
  commonShafts,
  inchFitWords,
  preferredHoles,
  preferredShafts,
} from "../../../server/core/fits/common-classes.ts";
import { parseClass } from "../../../server/core/fits/class-words.ts";
import {
  fitsHolding,
  nearestClasses,
  roundSize,
} from "../../../server/core/fits/nearest.ts";

describe("the lists", () => {
  test("every word reads, as what its list says, once", () => {
    for (const [words, feature] of [
      [commonHoles, "hole"],
      [preferredHoles, "hole"],
      [commonShafts, "shaft"],
      [preferredShafts, "shaft"],
      [commonIsoFits, "fit"],
      [inchFitWords, "fit"],
    ] as const) {
      expect(new Set(words).size).toBe(words.length);
      for (const word of words)
        expect(parseClass(word)).toMatchObject({
          valid: true,
          value: { feature },
        });
    }
    for (const word of preferredHoles) expect(commonHoles).toContain(word);
    for (const word of preferredShafts) expect(commonShafts).toContain(word);
    expect(inchFitWords.length).toBe(34);
  });

  test("at a size they leave out what the standard does not define", () => {
    const at = (size: number): readonly string[] =>
      commonClassesAt(size, "shaft").map(({ word }) => word);
    expect(at(0.025)).toEqual(commonShafts);
    expect(at(0.02)).not.toContain("t6");
    expect(at(0.02)).toContain("u6");
    expect(at(0.6)).not.toContain("c11");
    expect(at(4)).toEqual([]);
    expect(
      commonFitsAt(0.1 * 0.0254, "inch").map(({ word }) => word),
    ).not.toContain("LT3");
    expect(commonFitsAt(0.025, "iso").map(({ word }) => word)).toEqual(
      commonIsoFits,
    );
  });
});

describe("nearest classes", () => {
  test("every common class finds itself, or another with the same limits", () => {
    for (const size of [0.003, 0.025, 0.2, 0.6])
      for (const feature of ["hole", "shaft"] as const)
        for (const { word, zone } of commonClassesAt(size, feature)) {
          const ranked = nearestClasses(size, feature, zone);
          expect(ranked[0]?.distance).toBe(0);
          expect(
            ranked
              .filter(({ distance }) => distance === 0)
              .map((each) => each.word),
          ).toContain(word);
        }
  });

  test("limits off a class by so much are at that distance", () => {
    const [first] = nearestClasses(0.025, "shaft", {
      lower: 0.02496,
      upper: 0.024978,
    });
    expect(first).toMatchObject({ word: "f7", distance: 2e-6 });
    expect(nearestClasses(4, "hole", { lower: 4, upper: 4.0001 })).toEqual([]);
  });
});

describe("nearest fits", () => {
  test("every common fit holds its own clearance, and no other fit that holds it is nearer to it", () => {
    for (const [size, system] of [
      [0.025, "iso"],
      [0.022225, "inch"],
    ] as const)
      for (const { word, clearance } of commonFitsAt(size, system)) {
        const ranked = fitsHolding(size, system, clearance);
        const own = ranked.find((each) => each.word === word);
        expect(own?.outside).toBe(0);
        expect(ranked[0]?.outside).toBe(0);
        expect(
          (ranked[0]?.clearance.least ?? NaN) +
            (ranked[0]?.clearance.most ?? NaN),
        ).toBeCloseTo(clearance.least + clearance.most, 12);
      }
  });

  test("how far a clearance reaches out of a fit", () => {
    // RC4 at 0.875 in is 0.8 to 2.8 thousandths; the pair 0.7 to 2.6
    const pair = { least: 0.0007 * 0.0254, most: 0.0026 * 0.0254 };
    const rc4 = fitsHolding(0.022225, "inch", pair).find(
      ({ word }) => word === "RC4",
    );
    expect(rc4).toMatchObject({ outside: 0.00000254 });
  });

  test("a measured pair: the fits that hold it first, the one it lies in the middle of before them", () => {
    const middle = 0.0018 * 0.0254;
    const [first] = fitsHolding(0.022225, "inch", {
      least: middle,
      most: middle,
    });
    expect(first).toMatchObject({ word: "RC4", outside: 0 });
    const ranked = fitsHolding(0.022225, "inch", {
      least: middle,
      most: middle,
    });
    const outside = ranked.map((fit) => fit.outside);
    expect(outside).toEqual([...outside].sort((a, b) => a - b));
    const far = fitsHolding(0.025, "iso", { least: 1e-3, most: 1.1e-3 });
    expect(far[0]).toMatchObject({ word: "H11/c11" });
    expect(far[0]?.outside).toBeGreaterThan(0);
  });

  test("the size that a class would be written at", () => {
    expect(roundSize(0.024984, "iso")).toBe(0.025);
    expect(roundSize(0.02221, "inch")).toBeCloseTo(0.022225, 12);
    expect(roundSize(0.0002, "iso")).toBe(0.001);
  });
});
