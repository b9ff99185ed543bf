// Reamers for hole classes: the printed table for H7, the printed worked example, and what is refused.
import { expect, test } from "vitest";
import { classReamer } from "../../../server/core/fits/class-reamer.ts";
import { isoLimits } from "../../../server/core/fits/iso-286.ts";
import { reamersForH7 } from "./printed-iso.ts";

test.each(reamersForH7)(
  "H7 up to $upTo mm, as printed for DIN 1420",
  ({ upTo, greatest, least }) => {
    const size = upTo / 1000;
    expect(classReamer(size, "H", 7)).toEqual({
      valid: true,
      value: {
        lower: (upTo * 1000 + least) / 1e6,
        upper: (upTo * 1000 + greatest) / 1e6,
      },
    });
  },
);

// the example printed beside that table: 10 D8, hole 10.040 to 10.062, reamer 10.050 to 10.058
test("10 D8 as worked in print", () => {
  expect(classReamer(0.01, "D", 8)).toEqual({
    valid: true,
    value: { lower: 0.01005, upper: 0.010058 },
  });
});

test("the reamer lies within the hole for every grade that it can be made for", () => {
  for (const grade of [5, 6, 7, 8, 9, 10, 11])
    for (const size of [0.003, 0.025, 0.1, 0.4, 1, 3]) {
      const hole = isoLimits(size, "H", grade);
      const reamer = classReamer(size, "H", grade);
      if (!hole.valid || !reamer.valid) throw new Error("both answer here");
      expect(hole.value.lower).toBeLessThanOrEqual(reamer.value.lower);
      expect(reamer.value.lower).toBeLessThan(reamer.value.upper);
      expect(reamer.value.upper).toBeLessThan(hole.value.upper);
    }
});

test("refuses shafts, classes that are none, and grades too fine", () => {
  expect(classReamer(0.025, "f", 7)).toMatchObject({
    valid: false,
    because: "f7 is a shaft class, and a reamer makes holes",
  });
  expect(classReamer(0.025, "K", 9)).toMatchObject({ valid: false });
  expect(classReamer(0.025, "H", 1)).toMatchObject({ valid: false });
});
