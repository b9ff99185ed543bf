// Which readings a person would look at twice, and what slip would explain them.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  bandOf,
  factorOf,
  isExpected,
} from "../../../server/core/readings/expected.ts";

const SEVEN_EIGHTHS = { low: 0.022225, high: 0.022225 };

test("a hundredth of the size either way is near, and the ends count", () => {
  const { low, high } = bandOf(SEVEN_EIGHTHS);
  expect(low).toBeCloseTo(0.022225 * 0.99, 12);
  expect(high).toBeCloseTo(0.022225 * 1.01, 12);
  expect(isExpected(low, SEVEN_EIGHTHS)).toBe(true);
  expect(isExpected(high, SEVEN_EIGHTHS)).toBe(true);
  expect(isExpected(low - 1e-9, SEVEN_EIGHTHS)).toBe(false);
  expect(isExpected(high + 1e-9, SEVEN_EIGHTHS)).toBe(false);
});

test("wide limits reach three of their widths", () => {
  const wide = { low: 0.02, high: 0.021 };
  expect(isExpected(0.0239, wide)).toBe(true);
  expect(isExpected(0.0241, wide)).toBe(false);
});

test("a slip of the unit or of the decimal mark is found, and nothing else is", () => {
  const factors = [25.4, 1 / 25.4, 10, 1 / 10, 100, 1 / 100, 1000, 1 / 1000];
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      fc.constantFrom(...factors),
      fc.double({ min: 0.995, max: 1.005, noNaN: true }),
      (size, factor, near) => {
        const expected = { low: size, high: size };
        expect(factorOf(size * near, expected)).toBeUndefined();
        expect(factorOf(size * near * factor, expected)).toBe(factor);
        expect(factorOf(size * 1.5, expected)).toBeUndefined();
      },
    ),
  );
});
