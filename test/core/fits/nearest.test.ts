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
  nearestFits,
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
  test("every common fit finds itself, or another with the same clearance", () => {
    for (const [size, system] of [
      [0.025, "iso"],
      [0.022225, "inch"],
    ] as const)
      for (const { word, clearance } of commonFitsAt(size, system)) {
        const ranked = nearestFits(size, system, clearance);
        expect(ranked[0]?.distance).toBe(0);
        expect(
          ranked
            .filter(({ distance }) => distance === 0)
            .map((each) => each.word),
        ).toContain(word);
        expect(ranked.find((each) => each.word === word)?.outside).toBe(0);
      }
  });

  test("distance and how far the clearance reaches out", () => {
    // RC4 at 0.875 in is 0.8 to 2.8 thousandths; asked 0.7 to 2.6
    const asked = { least: 0.0007 * 0.0254, most: 0.0026 * 0.0254 };
    const rc4 = nearestFits(0.022225, "inch", asked).find(
      ({ word }) => word === "RC4",
    );
    expect(rc4).toMatchObject({ distance: 0.00000508, outside: 0.00000254 });
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
});
