import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  reamerLimits,
  reamerLimitsH7,
  reamerLimitsInch,
} from "../../../server/core/line/reamer-limits.ts";
import {
  sizesToBuy,
  type SizeSeries,
} from "../../../server/core/line/sizes-to-buy.ts";
import { known, refusal } from "./answers.ts";
import {
  h7Reamers,
  inchesInOrder,
  inchesOfClearanceDrills,
  inchesOfTapDrills,
  millimetresOfLetters,
  millimetresOfNumbers,
} from "./gauge-sizes.published.ts";

const inch = 0.0254;
const all = sizesToBuy({ low: 0, high: 1 });

function nominal(series: SizeSeries, designation: string): number {
  const size = all.find(
    (one) => one.series === series && one.designation === designation,
  );
  if (!size) throw new Error(`no ${series} ${designation}`);
  return size.nominal;
}

describe("number and letter sizes against published tables", () => {
  test("numbers in millimetres", () => {
    for (const [number, millimetres] of Object.entries(millimetresOfNumbers)) {
      expect(nominal("number", number) * 1e3).toBeCloseTo(millimetres, 7);
    }
  });

  test.each([inchesOfTapDrills, inchesOfClearanceDrills])(
    "numbers and letters in tables of tap and clearance drills",
    (table) => {
      for (const [name, inches] of Object.entries(table)) {
        expect(
          nominal(/\d/.test(name) ? "number" : "letter", name) / inch,
        ).toBeCloseTo(inches, 9);
      }
    },
  );

  test("letters in millimetres, to the half hundredth that the chart prints", () => {
    expect(Object.keys(millimetresOfLetters).length).toBe(26);
    for (const [letter, millimetres] of Object.entries(millimetresOfLetters)) {
      expect(
        Math.abs(nominal("letter", letter) * 1e3 - millimetres),
      ).toBeLessThan(0.005);
    }
  });

  test("all eighty numbers in order", () => {
    const numbers = all.filter(({ series }) => series === "number");
    expect(
      numbers.map((size) => Number((size.nominal / inch).toFixed(6))),
    ).toEqual(inchesInOrder);
    expect(numbers.map(({ designation }) => Number(designation))).toEqual(
      inchesInOrder.map((_, index) => 80 - index),
    );
  });
});

describe("fractions and metric steps", () => {
  test("are named as they are asked for", () => {
    expect(nominal("fraction", "1/16") / inch).toBeCloseTo(0.0625, 12);
    expect(nominal("fraction", "7/8") / inch).toBeCloseTo(0.875, 12);
    expect(nominal("fraction", "1") / inch).toBeCloseTo(1, 12);
    expect(nominal("fraction", "1 3/16") / inch).toBeCloseTo(1.1875, 12);
    expect(nominal("fraction", "3") / inch).toBeCloseTo(3, 12);
    expect(nominal("metric", "22")).toBeCloseTo(0.022, 12);
    expect(nominal("metric", "7.5")).toBeCloseTo(0.0075, 12);
    expect(nominal("metric-hundredth", "6.35")).toBeCloseTo(0.00635, 12);
  });

  test("the steps widen: 1/64 to 1 1/2, 1/32 to 2, 1/16 to 3", () => {
    const fractions = all
      .filter(({ series }) => series === "fraction")
      .map((size) => (size.nominal / inch) * 64);
    const steps = fractions
      .slice(1)
      .map((at, index) => Math.round(at - (fractions[index] ?? 0)));
    expect([...new Set(steps)]).toEqual([1, 2, 4]);
    expect(fractions.length).toBe(93 + 16 + 16);
  });

  test("metric steps: by half a millimetre to 20 mm, by one to 50; by a hundredth to 12.7", () => {
    const ofSeries = (series: SizeSeries): readonly string[] =>
      all.flatMap((one) => (one.series === series ? [one.designation] : []));
    const count = (from: number, to: number): readonly number[] =>
      Array.from({ length: to - from + 1 }, (_, at) => from + at);
    expect(ofSeries("metric")).toEqual([
      ...count(2, 40).map((halves) => String(halves / 2)),
      ...count(21, 50).map(String),
    ]);
    expect(ofSeries("metric-hundredth")).toEqual(
      count(100, 1270).map((hundredths) => (hundredths / 100).toFixed(2)),
    );
  });

  test("each series has its own limits as made", () => {
    for (const { series, nominal: size, limits } of all) {
      const wanted =
        series === "metric-hundredth"
          ? { low: size, high: size + 4e-6 }
          : known(
              series === "metric"
                ? reamerLimitsH7(size)
                : reamerLimitsInch(size),
            );
      expect(limits).toEqual(wanted);
    }
  });

  test.each([
    // ASME B94.2: over the nominal, to 1/4 in, to 1 in, to 3 in
    [0.25, 1, 4],
    [0.2501, 1, 5],
    [1, 1, 5],
    [1.0001, 2, 6],
    [3, 2, 6],
  ])("an inch reamer of %d in is made +%d to +%d tenths", (size, low, high) => {
    const limits = known(reamerLimitsInch(size * inch));
    expect((limits.low / inch - size) * 1e4).toBeCloseTo(low, 6);
    expect((limits.high / inch - size) * 1e4).toBeCloseTo(high, 6);
  });

  test("a range holds just the sizes in it, in order, ends included", () => {
    const tenth = fc
      .integer({ min: 0, max: 800_000 })
      .map((tenths) => tenths * 1e-7);
    fc.assert(
      fc.property(tenth, tenth, (one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        const some = sizesToBuy({ low, high });
        expect(some).toEqual(
          all.filter(
            (size) =>
              low <= size.nominal + 5e-11 && size.nominal - 5e-11 <= high,
          ),
        );
        expect([...some].sort((a, b) => a.nominal - b.nominal)).toEqual(some);
      }),
      { numRuns: 40 },
    );
    expect(
      sizesToBuy({ low: 0.25 * inch, high: 0.25 * inch }).map(
        ({ designation }) => designation,
      ),
    ).toEqual(["1/4", "E", "6.35"]);
    expect(sizesToBuy({ low: 1, high: 0 })).toEqual([]);
  });

  test("every size lies within or under its limits as made", () => {
    for (const size of all) {
      expect(
        size.nominal <= size.limits.low && size.limits.low < size.limits.high,
      ).toBe(true);
      expect(size.limits.high - size.nominal).toBeLessThan(26e-6);
    }
  });
});

describe("limits of a reamer", () => {
  test.each(h7Reamers)(
    "for H7 up to %d mm: +%d, +%d µm (DIN 1420), by the table and by the rule",
    (upTo, greatest, least) => {
      const tolerance =
        { 3: 10, 6: 12, 10: 15, 18: 18, 30: 21, 50: 25, 80: 30 }[upTo] ?? NaN; // IT7 of ISO 286-1
      const size = upTo * 1e-3;
      for (const limits of [
        known(reamerLimitsH7(size)),
        known(
          reamerLimits(
            { low: size, high: size + tolerance * 1e-6 },
            tolerance * 1e-6,
          ),
        ),
      ]) {
        expect((limits.high - size) * 1e6).toBeCloseTo(greatest, 6);
        expect((limits.low - size) * 1e6).toBeCloseTo(least, 6);
      }
    },
  );

  test("for 10 D8: 10.058 and 10.050 mm (worked beside the table)", () => {
    const limits = known(
      reamerLimits({ low: 10.04e-3, high: 10.062e-3 }, 22e-6),
    );
    expect(limits.high * 1e3).toBeCloseTo(10.058, 9);
    expect(limits.low * 1e3).toBeCloseTo(10.05, 9);
  });

  test("a part that is a whole micrometre isn't rounded up further", () => {
    const limits = known(reamerLimits({ low: 0.02, high: 0.02002 }, 20e-6)); // 0.15 × 20 = 3, 0.35 × 20 = 7
    expect(limits.high * 1e6).toBeCloseTo(20017, 6);
    expect(limits.low * 1e6).toBeCloseTo(20010, 6);
  });

  test("lie in the hole's limits for any tolerance that leaves room", () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 400 }), (tolerance) => {
        const hole = { low: 0.02, high: 0.02 + tolerance * 1e-6 };
        const limits = known(reamerLimits(hole, tolerance * 1e-6));
        expect(
          hole.low <= limits.low &&
            limits.low < limits.high &&
            limits.high < hole.high,
        ).toBe(true);
      }),
    );
  });

  test("may begin on the least hole itself, at any size", () => {
    // 0.15 × 2 and 0.35 × 2 are a whole micrometre each, rounded up
    for (let millimetres = 1; millimetres <= 80; millimetres++) {
      const low = millimetres * 1e-3;
      const limits = known(reamerLimits({ low, high: low + 2e-6 }, 2e-6));
      expect(limits.low).toBeCloseTo(low, 12);
    }
  });

  test("refuse what the tables don't hold", () => {
    expect(refusal(reamerLimits({ low: 0.02, high: 0.01 }, 1e-5))).toContain(
      "larger to the smaller",
    );
    expect(refusal(reamerLimits({ low: 0.02, high: 0.02001 }, 0))).toContain(
      "not above zero",
    );
    expect(
      refusal(reamerLimits({ low: 0.02, high: 0.020001 }, 1e-6)),
    ).toContain("too fine");
    expect(refusal(reamerLimitsH7(0.1))).toContain("80 mm");
    expect(refusal(reamerLimitsH7(0))).toContain("1 to 80");
    expect(refusal(reamerLimitsInch(0.1))).toContain("3 in");
    expect(refusal(reamerLimitsInch(-1))).toContain("3 in");
  });
});
