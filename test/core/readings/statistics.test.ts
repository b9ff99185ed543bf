import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  largest,
  mean,
  pooledRepeatability,
  smallest,
  standardDeviation,
} from "../../../server/core/readings/statistics.ts";
import { exactMean, exactVariance, toNumber } from "./exact.ts";
import { got } from "./got.ts";

// diameters: 1 mm to 1 m, as far apart as readings of one part are, and farther
const size = fc.double({ min: 1e-3, max: 1, noNaN: true });
const near = fc
  .tuple(
    size,
    fc.array(fc.integer({ min: -500, max: 500 }), {
      minLength: 2,
      maxLength: 40,
    }),
  )
  .map(([middle, steps]) => steps.map((step) => middle + step * 1e-7));
const any = fc.array(size, { minLength: 2, maxLength: 40 });

describe("mean and scatter", () => {
  test("are those of exact fractions to the last digits, also where readings hardly differ", () => {
    fc.assert(
      fc.property(fc.oneof(near, any), (values) => {
        const exact = toNumber(exactMean(values));
        expect(Math.abs(got(mean(values)) - exact)).toBeLessThanOrEqual(
          2.3e-16 * exact,
        );
        const scatter = Math.sqrt(toNumber(exactVariance(values)));
        expect(Math.abs(got(standardDeviation(values)) - scatter))
          // values that differ in their last binary digit only: the mean itself is rounded there
          .toBeLessThanOrEqual(1e-13 * scatter + 2.3e-16 * exact);
      }),
    );
  });

  test("do not depend on the order, and scale with the unit", () => {
    fc.assert(
      fc.property(near, (values) => {
        const turned = values.toReversed();
        const middle = got(mean(values));
        const scatter = got(standardDeviation(values));
        expect(got(mean(turned))).toBeCloseTo(middle, 15);
        expect(got(standardDeviation(turned))).toBeCloseTo(scatter, 15);
        const inches = values.map((value) => value / 0.0254);
        expect(got(mean(inches)) * 0.0254).toBeCloseTo(middle, 14);
        expect(got(standardDeviation(inches)) * 0.0254).toBeCloseTo(
          scatter,
          14,
        );
      }),
    );
  });

  test("of equal readings are that reading and nothing", () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 2, max: 30 }), (value, count) => {
        const values = Array<number>(count).fill(value);
        expect(got(mean(values))).toBe(value);
        expect(got(standardDeviation(values))).toBe(0);
      }),
    );
  });

  test("the mean lies between the extremes", () => {
    fc.assert(
      fc.property(any, (values) => {
        const [low, middle, high] = [
          got(smallest(values)),
          got(mean(values)),
          got(largest(values)),
        ];
        expect(values).toContain(low);
        expect(values).toContain(high);
        expect(values.every((value) => low <= value && value <= high)).toBe(
          true,
        );
        expect(
          low * (1 - 1e-15) <= middle && middle <= high * (1 + 1e-15),
        ).toBe(true);
      }),
    );
  });

  test("say why where there is nothing to say", () => {
    for (const of of [mean, largest, smallest]) {
      expect(of([])).toEqual({
        valid: false,
        because: "there are no readings",
      });
      expect(of([1, NaN]).valid).toBe(false);
      expect(of([Infinity]).valid).toBe(false);
    }
    expect(standardDeviation([1]).valid).toBe(false);
    expect(standardDeviation([1, NaN]).valid).toBe(false);
  });
});

describe("pooled repeatability", () => {
  test("of one group is its standard deviation, with one degree of freedom less than repeats", () => {
    fc.assert(
      fc.property(near, (values) => {
        const pooled = got(pooledRepeatability([values]));
        expect(pooled.standardDeviation).toBe(got(standardDeviation(values)));
        expect(pooled.degreesOfFreedom).toBe(values.length - 1);
      }),
    );
  });

  test("does not see how far the groups lie apart, nor groups of one", () => {
    fc.assert(
      fc.property(near, near, size, (a, b, shift) => {
        const together = got(pooledRepeatability([a, b]));
        const apart = got(
          pooledRepeatability([a, b.map((value) => value + shift), [shift]]),
        );
        expect(apart.degreesOfFreedom).toBe(together.degreesOfFreedom);
        // moving them rounds each reading anew
        expect(
          Math.abs(apart.standardDeviation - together.standardDeviation),
        ).toBeLessThan(5e-16);
      }),
    );
  });

  test("of pairs is the root of the squared differences over twice their number", () => {
    // IUPAC Gold Book P04758, special case of duplicates
    const pairs = [
      [20.001, 20.003],
      [31.5, 31.499],
      [7, 7.004],
    ] as const;
    const squares = pairs.reduce((sum, [a, b]) => sum + (a - b) ** 2, 0);
    const pooled = got(pooledRepeatability(pairs));
    expect(pooled.standardDeviation).toBeCloseTo(Math.sqrt(squares / 6), 12);
    expect(pooled.degreesOfFreedom).toBe(3);
  });

  test("needs a group of two", () => {
    expect(pooledRepeatability([]).valid).toBe(false);
    expect(pooledRepeatability([[1], [2]]).valid).toBe(false);
    expect(pooledRepeatability([[1, NaN]]).valid).toBe(false);
  });
});
