import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  chanceBelow,
  chanceBetween,
  coverageFactor,
} from "../../../server/core/line/spread.ts";
import { known, refusal } from "./answers.ts";

interface Distribution {
  cdf(x: number, ...of: number[]): number;
  inv(p: number, ...of: number[]): number;
}
// jstat ships no types; these are the four functions of it that are used
const jstat = createRequire(import.meta.url)("jstat") as {
  normal: Distribution;
  studentt: Distribution;
};

describe("against jstat, which shares no code", () => {
  test.each([-8, -3.2, -3, -1, -0.1, 0, 0.3, 1.96, 2.999, 3, 3.001, 5])(
    "normal below %f",
    (z) => {
      expect(known(chanceBelow(z, Infinity))).toBeCloseTo(
        jstat.normal.cdf(z, 0, 1),
        14,
      );
    },
  );

  test.each([1, 2, 3, 4.5, 7, 16, 40, 1000])(
    "Student's t with %f degrees of freedom",
    (nu) => {
      for (const t of [-20, -2.5, -0.4, 0, 0.01, 1, 3, 12.7]) {
        expect(known(chanceBelow(t, nu))).toBeCloseTo(
          jstat.studentt.cdf(t, nu),
          7,
        ); // jstat itself is off by 2e-8 at zero
      }
      expect(known(coverageFactor(0.95, nu))).toBeCloseTo(
        jstat.studentt.inv(0.975, nu),
        7,
      );
    },
  );
});

test.each([2, 5, 9, 30])(
  "Student's t with %d degrees of freedom against its density summed by Simpson's rule",
  (nu) => {
    // the front factor from the product for whole degrees of freedom, so without a gamma function
    let front =
      nu % 2 === 0 ? 1 / (2 * Math.sqrt(nu)) : 1 / (Math.PI * Math.sqrt(nu));
    for (let m = nu - 1; 1 < m; m -= 2) front *= m / (m - 1);
    const density = (t: number) =>
      front * (1 + (t * t) / nu) ** (-(nu + 1) / 2);
    const [steps, to] = [2000, 2.3];
    let sum = density(0) + density(to);
    for (let step = 1; step < steps; step++)
      sum += (step % 2 === 1 ? 4 : 2) * density((step * to) / steps);
    expect(known(chanceBelow(to, nu)) - 0.5).toBeCloseTo(
      (sum * to) / steps / 3,
      12,
    );
  },
);

test("one and two degrees of freedom have closed forms", () => {
  for (const t of [0.3, 1, 4, 63]) {
    expect(known(chanceBelow(t, 1))).toBeCloseTo(
      0.5 + Math.atan(t) / Math.PI,
      13,
    );
    expect(known(chanceBelow(t, 2))).toBeCloseTo(
      0.5 + t / (2 * Math.SQRT2 * Math.sqrt(1 + (t * t) / 2)),
      13,
    );
  }
});

test("many degrees of freedom come to the normal", () => {
  expect(known(chanceBelow(1.5, 9e6))).toBeCloseTo(
    known(chanceBelow(1.5, Infinity)),
    7,
  );
  expect(known(coverageFactor(0.95, Infinity))).toBeCloseTo(1.959964, 6);
});

test("far tails keep their digits", () => {
  // φ(z)/z·(1 − 1/z² + 3/z⁴ − 15/z⁶ + 105/z⁸): the asymptotic series at z = 12
  const z = 12;
  const series = (1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6 + 105 / z ** 8) / z;
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * series;
  expect(known(chanceBelow(-z, Infinity)) / tail).toBeCloseTo(1, 6);
  expect(chanceBetween(z, Infinity, Infinity) / tail).toBeCloseTo(1, 6);
});

test("chances lie in 0 to 1, are symmetrical and grow with the interval", () => {
  const z = fc.double({ min: -40, max: 40, noNaN: true });
  const nu = fc.oneof(
    fc.constant(Infinity),
    fc.double({ min: 0.5, max: 1e4, noNaN: true }),
  );
  fc.assert(
    fc.property(
      z,
      z,
      fc.double({ min: 0, max: 5, noNaN: true }),
      nu,
      (low, high, more, of) => {
        const chance = chanceBetween(low, high, of);
        expect(0 <= chance && chance <= 1).toBe(true);
        expect(chanceBetween(-high, -low, of)).toBeCloseTo(chance, 12);
        expect(
          chance - 1e-12 <= chanceBetween(low - more, high + more, of),
        ).toBe(true);
      },
    ),
  );
});

test("the coverage factor covers", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 0.9999, noNaN: true }),
      fc.integer({ min: 1, max: 200 }),
      (chance, nu) => {
        const factor = known(coverageFactor(chance, nu));
        expect(chanceBetween(-factor, factor, nu)).toBeCloseTo(chance, 10);
      },
    ),
  );
});

test("refuses what is no chance", () => {
  expect(refusal(chanceBelow(NaN, 3))).toContain("not a number");
  expect(refusal(chanceBelow(1, 0))).toContain("degrees of freedom");
  expect(refusal(coverageFactor(1, 3))).toContain("coverage");
  expect(refusal(coverageFactor(0.95, -1))).toContain("degrees of freedom");
});
