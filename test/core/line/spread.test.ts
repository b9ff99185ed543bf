import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chanceBetween } from "../../../server/core/line/spread.ts";

describe("normal", () => {
  test.each([0.2, 1, 1.96, 3, 6])(
    "within ± %f against its power series",
    (z) => {
      // 2·(Φ(z) − ½) = √(2/π)·(z − z³/(2·3) + z⁵/(2²·2!·5) − …)
      let [term, sum] = [z, z];
      for (let n = 1; n < 120; n++) {
        term *= -(z * z) / (2 * n);
        sum += term / (2 * n + 1);
      }
      expect(chanceBetween(-z, z, Infinity)).toBeCloseTo(
        Math.sqrt(2 / Math.PI) * sum,
        9,
      );
    },
  );

  test("far tails keep their digits", () => {
    // φ(z)/z·(1 − 1/z² + 3/z⁴ − 15/z⁶ + 105/z⁸): the asymptotic series at z = 5
    const z = 5;
    const series =
      (1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6 + 105 / z ** 8) / z;
    const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * series;
    expect(chanceBetween(z, Infinity, Infinity) / tail).toBeCloseTo(1, 3);
    expect(chanceBetween(-Infinity, -z, Infinity) / tail).toBeCloseTo(1, 3);
  });
});

describe("Student's t", () => {
  test("one and two degrees of freedom have closed forms", () => {
    for (const t of [0.3, 1, 4, 63]) {
      expect(chanceBetween(-Infinity, t, 1)).toBeCloseTo(
        0.5 + Math.atan(t) / Math.PI,
        7,
      );
      expect(chanceBetween(-Infinity, t, 2)).toBeCloseTo(
        0.5 + t / (2 * Math.SQRT2 * Math.sqrt(1 + (t * t) / 2)),
        7,
      );
    }
  });

  test.each([2, 5, 9, 30])(
    "with %d degrees of freedom against its density summed by Simpson's rule",
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
      expect(chanceBetween(-to, to, nu)).toBeCloseTo(
        (2 * sum * to) / steps / 3,
        7,
      );
    },
  );

  test("comes to the normal with many degrees of freedom", () => {
    for (const nu of [9e5, 1e6, 1e9])
      expect(chanceBetween(-1.5, 1.5, nu)).toBeCloseTo(
        chanceBetween(-1.5, 1.5, Infinity),
        5,
      );
  });
});

test("chances lie in 0 to 1, are symmetrical and grow with the interval", () => {
  const z = fc.double({ min: -40, max: 40, noNaN: true });
  const nu = fc.oneof(
    fc.constant(Infinity),
    fc.double({ min: 1, max: 1e4, noNaN: true }),
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
        expect(chanceBetween(-high, -low, of)).toBeCloseTo(chance, 6);
        expect(
          chance - 1e-7 <= chanceBetween(low - more, high + more, of),
        ).toBe(true);
      },
    ),
  );
});
