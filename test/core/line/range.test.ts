import { describe, expect, test } from "vitest";
import { isLess, orderedRange } from "../../../server/core/line/range.ts";

describe("lengths compare in tenths of a nanometre", () => {
  test("an inch size and its metric are one length", () => {
    expect(isLess(0.875 * 0.0254, 22.225e-3)).toBe(false);
    expect(isLess(22.225e-3, 0.875 * 0.0254)).toBe(false);
  });

  test("a tenth of a nanometre tells them apart", () => {
    expect(isLess(1, 1 + 1e-10)).toBe(true);
    expect(isLess(1, 1 + 1e-11)).toBe(false);
  });
});

test("the noise of binary fractions is no reversal, and the range comes out in order", () => {
  expect(orderedRange(0.1 + 0.2, 0.3)).toEqual({ low: 0.3, high: 0.1 + 0.2 });
  expect(orderedRange(0.3001, 0.3)).toBeUndefined();
});
