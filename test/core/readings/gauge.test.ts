import fc from "fast-check";
import { expect, test } from "vitest";
import {
  discrimination,
  gaugeRatio,
} from "../../../server/core/readings/gauge.ts";
import { got } from "./got.ts";

test.each([
  [8e-6, 1e-6, "good"],
  [7.99e-6, 1e-6, "poor"],
  [4e-6, 1e-6, "poor"],
  [3.99e-6, 1e-6, "no verdict"],
  // 0.0005 in against ±0.0000625 in: 4, but for the rounding of doubles
  [0.0005 * 0.0254, 0.0000625 * 0.0254, "good"],
  // as the difference of two limits it comes out as 3.999999999998
  [0.87408 * 0.0254 - 0.874 * 0.0254, 0.00001 * 0.0254, "good"],
  [0.87404 * 0.0254 - 0.874 * 0.0254, 0.00001 * 0.0254, "poor"],
])("a tolerance of %d with U %d is %s", (tolerance, expanded, word) => {
  expect(got(gaugeRatio(tolerance, expanded)).word).toBe(word);
});

test("the ratio is that of two lengths, whatever the unit", () => {
  const length = fc.double({ min: 1e-7, max: 1e-2, noNaN: true });
  fc.assert(
    fc.property(length, length, (tolerance, expanded) => {
      const { ratio } = got(gaugeRatio(tolerance, expanded));
      expect((ratio * 2 * expanded) / tolerance).toBeCloseTo(1, 12);
      expect(
        got(gaugeRatio(tolerance / 0.0254, expanded / 0.0254)).ratio / ratio,
      ).toBeCloseTo(1, 12);
      expect(got(gaugeRatio(2 * tolerance, expanded)).ratio).toBeGreaterThan(
        ratio,
      );
    }),
  );
});

test("a tenth of the tolerance is fine enough, in inches too", () => {
  expect(got(discrimination(1e-6, 1e-5)).share).toBeCloseTo(0.1, 12);
  expect(got(discrimination(1e-6, 1e-5)).isFine).toBe(true);
  expect(got(discrimination(1e-6, 9.9e-6)).isFine).toBe(false);
  expect(
    got(discrimination(0.00005 * 0.0254, 0.8745 * 0.0254 - 0.874 * 0.0254))
      .isFine,
  ).toBe(true);
  expect(got(discrimination(0.0001 * 0.0254, 0.0005 * 0.0254)).isFine).toBe(
    false,
  );
});

test.each([
  [0, 1],
  [1, 0],
  [-1, 1],
  [NaN, 1],
  [1, NaN],
  [Infinity, 1],
])("refuses %d and %d", (a, b) => {
  expect(gaugeRatio(a, b).valid).toBe(false);
  expect(discrimination(a, b).valid).toBe(false);
});
