import fc from "fast-check";
import { expect, test } from "vitest";
import {
  grubbsCritical,
  grubbsTest,
} from "../../../server/core/readings/stray.ts";
import { chance } from "./chance.ts";
import { got } from "./got.ts";

const uranium = [
  199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57,
];

test("finds the stray of the mass spectrometer counts, and none among the rest", () => {
  const all = got(grubbsTest(uranium));
  expect(all.index).toBe(7);
  expect(all.stray).toBe(true);
  expect(got(grubbsTest(uranium.slice(0, 7))).stray).toBe(false);
});

test("calls about one clean group in twenty strayed", () => {
  const { normal } = chance(3);
  const groups = 4000;
  let called = 0;
  for (let i = 0; i < groups; i++)
    if (got(grubbsTest(Array.from({ length: 8 }, normal))).stray) called++;
  expect(Math.abs(called / groups - 0.05)).toBeLessThan(0.012);
});

test("does not depend on unit or zero, nor on the side", () => {
  const whole = fc.array(fc.integer({ min: -1000, max: 1000 }), {
    minLength: 3,
    maxLength: 20,
  });
  fc.assert(
    fc.property(
      whole,
      fc.integer({ min: -1000, max: 1000 }),
      (values, shift) => {
        const plain = got(grubbsTest(values)).statistic;
        expect(
          got(grubbsTest(values.map((value) => 2 * (value + shift)))).statistic,
        ).toBeCloseTo(plain, 9);
        expect(
          got(grubbsTest(values.map((value) => -value))).statistic,
        ).toBeCloseTo(plain, 12);
      },
    ),
  );
});

test("the statistic stays under (n−1)/√n, and so does the critical value, which grows with n", () => {
  let before = 0;
  for (let count = 3; count <= 100; count++) {
    const critical = got(grubbsCritical(count));
    const bound = (count - 1) / Math.sqrt(count);
    expect(critical).toBeLessThan(bound);
    expect(before).toBeLessThan(critical);
    before = critical;
    const one = [1, ...Array<number>(count - 1).fill(0)];
    expect(got(grubbsTest(one)).statistic).toBeCloseTo(bound, 10);
    expect(got(grubbsTest(one)).stray).toBe(true);
  }
});

test("a smaller alpha asks for more", () => {
  expect(got(grubbsCritical(8, 0.05))).toBeLessThan(
    got(grubbsCritical(8, 0.01)),
  );
});

test("equal repeats have no stray", () => {
  expect(got(grubbsTest([5, 5, 5, 5]))).toMatchObject({
    index: 0,
    statistic: 0,
    stray: false,
  });
});

test.each([[[]], [[1, 2]], [[1, 2, NaN]], [[1, 2, Infinity]]])(
  "refuses %j",
  (values) => {
    expect(grubbsTest(values).valid).toBe(false);
  },
);

test.each([
  [2, 0.05],
  [3.5, 0.05],
  [10_001, 0.05],
  [NaN, 0.05],
  [5, 0],
  [5, 1],
  [5, NaN],
])("refuses a critical value for %d readings at %d", (count, alpha) => {
  expect(grubbsCritical(count, alpha).valid).toBe(false);
});
