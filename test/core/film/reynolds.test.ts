import { describe, expect, test } from "vitest";
import { emptyBand, solveInPlace } from "../../../server/core/film/banded.ts";
import { solveReynolds } from "../../../server/core/film/reynolds.ts";
import { rootBetween } from "../../../server/core/film/root.ts";
import { got } from "./got.ts";
import { longBearing, shortBearing } from "./limits.ts";

describe("the solver of Reynolds' equation", () => {
  test.each([
    [1, 0.6],
    [0.25, 0.4],
    [2, 0.9],
    [0.6, 0.2],
  ])(
    "converges at second order: L/D %d, eccentricity %d",
    (length, eccentricity) => {
      const on = (around: number) =>
        got(solveReynolds(length, eccentricity, { around, along: around / 8 }));
      const [coarse, middle, fine] = [on(48), on(96), on(192)];
      for (const key of [
        "sommerfeld",
        "flowVariable",
        "meanToPeakPressure",
      ] as const) {
        const order = Math.log2(
          Math.abs((middle[key] - coarse[key]) / (fine[key] - middle[key])),
        );
        // a quantity that hardly moves any more has no order to measure
        if (Math.abs(fine[key] / middle[key] - 1) < 1e-4) continue;
        expect(order, key).toBeGreaterThan(1.7);
        expect(order, key).toBeLessThan(2.5);
      }
      expect(Math.abs(fine.sommerfeld / middle.sommerfeld - 1)).toBeLessThan(
        5e-3,
      );
    },
  );

  test.each([0.1, 0.3, 0.5, 0.7, 0.9])(
    "without ends it is the closed form of the long bearing: %d",
    (eccentricity) => {
      const ours = got(
        solveReynolds(Infinity, eccentricity, { around: 512, along: 1 }),
      );
      const theirs = longBearing(eccentricity);
      expect(ours.sommerfeld / theirs.sommerfeld).toBeCloseTo(1, 4);
      expect(ours.attitude).toBeCloseTo(theirs.attitude, 4);
      expect(ours.flowVariable).toBeCloseTo(theirs.flowVariable, 4);
      expect(ours.meanToPeakPressure).toBeCloseTo(theirs.meanToPeakPressure, 4);
      // a third of a step: the end moves within its cell
      expect(Math.abs(ours.filmEndAngle - theirs.filmEnd)).toBeLessThan(4e-3);
      expect(ours.sideFlowRatio).toBe(0);
    },
  );

  test("a very long bearing comes near to one without ends, and nearer the longer it is", () => {
    const endless = longBearing(0.5).sommerfeld;
    const excess = (length: number) =>
      got(solveReynolds(length, 0.5, { around: 128, along: 48 })).sommerfeld /
        endless -
      1;
    const [ten, twenty] = [excess(10), excess(20)];
    expect(ten).toBeGreaterThan(twenty);
    expect(twenty).toBeGreaterThan(0);
    // the ends' loss is one length of diameter order, whatever the length: it halves
    expect(ten / twenty).toBeCloseTo(2, 0);
    expect(twenty).toBeLessThan(0.07);
  });

  test.each([0.2, 0.5, 0.8])(
    "a very short one becomes Ocvirk's: %d",
    (eccentricity) => {
      const ours = got(
        solveReynolds(1 / 64, eccentricity, { around: 192, along: 24 }),
      );
      const theirs = shortBearing(1 / 64, eccentricity);
      expect(Math.abs(ours.sommerfeld / theirs.sommerfeld - 1)).toBeLessThan(
        2e-3,
      );
      expect(Math.abs(ours.attitude - theirs.attitude)).toBeLessThan(1e-3);
      expect(
        Math.abs(ours.flowVariable / theirs.flowVariable - 1),
      ).toBeLessThan(1e-3);
      expect(
        Math.abs(ours.sideFlowRatio / theirs.sideFlowRatio - 1),
      ).toBeLessThan(1e-3);
      expect(
        Math.abs(ours.meanToPeakPressure / theirs.meanToPeakPressure - 1),
      ).toBeLessThan(3e-3);
    },
  );

  test("refuses what it doesn't reach", () => {
    expect(solveReynolds(1, 0).valid).toBe(false);
    expect(solveReynolds(1, 0.99).valid).toBe(false);
    expect(solveReynolds(1, NaN).valid).toBe(false);
    expect(solveReynolds(0, 0.5).valid).toBe(false);
    expect(solveReynolds(NaN, 0.5).valid).toBe(false);
    expect(solveReynolds(-1, 0.5).valid).toBe(false);
  });
});

describe("a banded system", () => {
  test("is solved: what was multiplied comes back", () => {
    const [rows, band] = [40, 5];
    const matrix = emptyBand(rows, band);
    const dense = (i: number, j: number) =>
      i === j ? 12 : Math.abs(i - j) <= band ? 1 / (1 + ((i * j) % 7)) : 0;
    for (let i = 0; i < rows; i++)
      for (let j = Math.max(0, i - band); j <= i; j++)
        matrix.entries[i * (band + 1) + i - j] = dense(i, j);
    const b = new Float64Array(rows);
    for (let i = 0; i < rows; i++)
      for (let j = 0; j < rows; j++)
        b[i] =
          (b[i] ?? 0) + dense(Math.max(i, j), Math.min(i, j)) * Math.cos(j);
    expect(solveInPlace(matrix, b)).toBe(true);
    b.forEach((x, i) => {
      expect(x).toBeCloseTo(Math.cos(i), 12);
    });
  });

  test("is refused where it isn't positive definite", () => {
    const matrix = emptyBand(2, 1);
    matrix.entries.set([1, 0, 1, 2]);
    expect(solveInPlace(matrix, new Float64Array(2))).toBe(false);
  });
});

test.each([
  [(x: number) => x ** 3 - 2, 0, 3, Math.cbrt(2)],
  [(x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
  [(x: number) => Math.exp(-20 * x) - 1e-8, 0, 5, Math.log(1e8) / 20],
  [(x: number) => 1 - x, 1, 2, 1],
  [(x: number) => 2 - x, 1, 2, 2],
])("a root is found (%#)", (f, low, high, root) => {
  expect(Math.abs(rootBetween(f, low, high, 1e-12) - root)).toBeLessThan(1e-11);
});
