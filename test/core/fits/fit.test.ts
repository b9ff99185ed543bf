// What a hole and a shaft make together.
import fc from "fast-check";
import { expect, test } from "vitest";
import { fitOf, kindOf } from "../../../server/core/fits/fit.ts";

test("least and most clearance, exact", () => {
  expect(
    fitOf(
      { lower: 0.025, upper: 0.025021 },
      { lower: 0.024959, upper: 0.02498 },
    ),
  ).toEqual({
    least: 20e-6,
    most: 62e-6,
    kind: "clearance",
  });
  // a measured pair: one size each
  expect(
    fitOf(
      { lower: 0.0225044, upper: 0.0225044 },
      { lower: 0.02220722, upper: 0.02220722 },
    ),
  ).toEqual({
    least: 0.00029718,
    most: 0.00029718,
    kind: "clearance",
  });
});

test("the kinds and their ends", () => {
  expect(kindOf(0, 1e-6)).toBe("clearance");
  expect(kindOf(0, 0)).toBe("clearance");
  expect(kindOf(-1e-6, 1e-6)).toBe("transition");
  expect(kindOf(-1e-6, 0)).toBe("interference");
  expect(fitOf({ lower: 1, upper: 1 }, { lower: 1, upper: 1 })).toEqual({
    least: 0,
    most: 0,
    kind: "clearance",
  });
});

test("the clearance moves with either part and is as wide as both", () => {
  const tenths = fc.integer({ min: 1e7, max: 1e9 });
  const width = fc.integer({ min: 0, max: 1e6 });
  fc.assert(
    fc.property(
      tenths,
      width,
      tenths,
      width,
      fc.integer({ min: -1e6, max: 1e6 }),
      (hole, a, shaft, b, shift) => {
        const at = (
          lower: number,
          wide: number,
        ): { lower: number; upper: number } => ({
          lower: lower / 1e10,
          upper: (lower + wide) / 1e10,
        });
        const fit = fitOf(at(hole, a), at(shaft, b));
        const shifted = fitOf(at(hole + shift, a), at(shaft + shift, b));
        expect(shifted).toEqual(fit);
        expect(Math.round((fit.most - fit.least) * 1e10)).toBe(a + b);
        expect(fit.least).toBe((hole - shaft - b) / 1e10 + 0);
      },
    ),
  );
});
