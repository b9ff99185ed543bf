import fc from "fast-check";
import { expect, test } from "vitest";
import {
  studentCoverage,
  studentQuantile,
} from "../../../server/core/quantity/student.ts";
import { got } from "../readings/got.ts";

const share = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const dof = fc.double({ min: 1, max: 1e5, noNaN: true });

test("one degree of freedom is the tangent, two a root", () => {
  for (const p of [1e-6, 0.01, 0.4, 0.6, 0.95, 0.975, 0.9995, 1 - 1e-9]) {
    const one = Math.tan(Math.PI * (p - 0.5));
    const two = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
    expect(got(studentQuantile(p, 1)) / one).toBeCloseTo(1, 6);
    expect(got(studentQuantile(p, 2)) / two).toBeCloseTo(1, 6);
  }
});

test("near a half it keeps its digits: t is nearly the normal's, z = √(2π)·(p − ½)", () => {
  // next in both series (Fisher's for many degrees of freedom, the normal's own) is 1/(4ν) and z²/6: 3.5e-6 at most together here
  for (const dof of [100_000, 300_000, 999_999])
    for (const area of [1e-3, 1e-5, 1e-7]) {
      const z = Math.sqrt(2 * Math.PI) * area;
      expect(got(studentQuantile(0.5 + area, dof)) / z).toBeCloseTo(1, 5);
      expect(got(studentQuantile(0.5 - area, dof)) / z).toBeCloseTo(-1, 5);
    }
});

test("it is the same below as above, but for the sign", () => {
  fc.assert(
    fc.property(share, dof, (p, n) => {
      const above = got(studentQuantile(p, n));
      const below = got(studentQuantile(1 - p, n));
      expect(Math.abs(above + below)).toBeLessThan(
        1e-5 * (1 + Math.abs(above)),
      );
    }),
  );
});

test("it grows with the probability and, above a half, shrinks with the degrees of freedom", () => {
  fc.assert(
    fc.property(share, share, dof, dof, (p, q, m, n) => {
      const [low, high] = p < q ? [p, q] : [q, p];
      const slack = 1e-6;
      expect(got(studentQuantile(low, m))).toBeLessThanOrEqual(
        got(studentQuantile(high, m)) * (1 + slack * (high < 0.5 ? -1 : 1)) +
          slack,
      );
      const upper = Math.max(p, 1 - p);
      const [few, many] = m < n ? [m, n] : [n, m];
      expect(got(studentQuantile(upper, many))).toBeLessThanOrEqual(
        got(studentQuantile(upper, few)) * (1 + slack) + slack,
      );
    }),
  );
});

test("a million degrees of freedom join the normal without a step", () => {
  const before = got(studentQuantile(0.975, 999_999));
  const after = got(studentQuantile(0.975, 1_000_000));
  expect(Math.abs(before - after)).toBeLessThan(3e-6);
  expect(got(studentQuantile(0.5, 7))).toBe(0);
  expect(Object.is(got(studentQuantile(0.5, Infinity)), 0)).toBe(true);
});

test("coverage takes both tails", () => {
  expect(got(studentCoverage(0.95, 16))).toBe(got(studentQuantile(0.975, 16)));
});

test.each([
  [0, 3],
  [1, 3],
  [-0.1, 3],
  [NaN, 3],
  [0.9, 0.5],
  [0.9, NaN],
  [0.9, -Infinity],
])("refuses probability %d with %d degrees of freedom", (p, n) => {
  expect(studentQuantile(p, n).valid).toBe(false);
  expect(studentCoverage(p, n).valid).toBe(false);
});
