import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  isLess,
  isWithin,
  orderedRange,
  shared,
} from "../../../server/core/line/range.ts";

describe("lengths compare in tenths of a nanometre", () => {
  test("an inch size and its metric are one length", () => {
    expect(isLess(0.875 * 0.0254, 22.225e-3)).toBe(false);
    expect(isLess(22.225e-3, 0.875 * 0.0254)).toBe(false);
  });

  test("a tenth of a nanometre tells them apart", () => {
    expect(isLess(1, 1 + 1e-10)).toBe(true);
    expect(isLess(1, 1 + 1e-11)).toBe(false);
  });

  test("a size past either end is out by a tenth of a nanometre, and not by less", () => {
    const range = { low: 1, high: 2 };
    expect(
      [1 - 1e-10, 1 - 1e-11, 1.5, 2 + 1e-11, 2 + 1e-10].map((size) =>
        isWithin(size, range),
      ),
    ).toEqual([false, true, true, true, false]);
  });

  test("a size on the limit is in", () => {
    expect(
      isWithin(0.0254 * 0.811, {
        low: 0.0254 * 0.80995 + 0.0254 * 0.00105,
        high: 1,
      }),
    ).toBe(true);
  });
});

const range = fc
  .tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.nat(1e9))
  .map(([low, width]) => ({ low: low * 1e-10, high: (low + width) * 1e-10 }));

test("what two ranges share is in both, and is shared both ways", () => {
  fc.assert(
    fc.property(range, range, (one, other) => {
      const both = shared(one, other);
      expect(both).toEqual(shared(other, one));
      if (both) {
        for (const end of [both.low, both.high])
          expect(isWithin(end, one) && isWithin(end, other)).toBe(true);
      } else {
        expect(isLess(one.high, other.low) || isLess(other.high, one.low)).toBe(
          true,
        );
      }
    }),
  );
});

test("the noise of binary fractions is no reversal, and the range comes out in order", () => {
  expect(orderedRange(0.1 + 0.2, 0.3)).toEqual({ low: 0.3, high: 0.1 + 0.2 });
  expect(orderedRange(0.3001, 0.3)).toBeUndefined();
});
