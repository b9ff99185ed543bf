// The inch fits of ANSI B4.1: against printed copies, against their own arithmetic and grades, and what is refused.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  inchFitLimits,
  inchSeries,
  inchTolerance,
  type InchSeries,
} from "../../../server/core/fits/b4-1.ts";
import {
  fitSteps,
  forceSteps,
  gradeSteps,
  inchFits,
  inchGrades,
} from "../../../server/core/fits/b4-1-tables.ts";
import type { FitLimits } from "../../../server/core/fits/fit.ts";
import {
  agreeing,
  printedInchFits,
  printedInchGrades,
  printedRunningClearances,
} from "./comparisons.ts";

const inch = 0.0254;
const words = [...inchSeries].flatMap(([series, count]) =>
  Array.from({ length: count }, (_, index) => ({
    series,
    number: index + 1,
    word: `${series}${index + 1}`,
  })),
);
const tenths = (metres: number): number => Math.round(metres * 1e10);
const thousandths = (metres: number): number =>
  Math.round(metres * 1e10) / 254000;

function fit(
  sizeInches: number,
  series: InchSeries,
  number: number,
): FitLimits {
  const answer = inchFitLimits(sizeInches * inch, series, number);
  if (!answer.valid)
    throw new Error(
      `${series}${number} at ${sizeInches} in: ${answer.because}`,
    );
  return answer.value;
}

describe("printed copies, every value", () => {
  test.each([
    ["grades", printedInchGrades, 210],
    ["fits", printedInchFits, 1081],
    ["running clearances", printedRunningClearances, 143],
  ] as const)("%s", (_, pairs, count) => {
    expect(
      pairs.filter(({ ours, theirs }) => !(Math.abs(ours - theirs) < 1e-4)),
    ).toEqual([]);
    expect(agreeing(pairs)).toBe(count);
  });
});

describe("every fit at every step", () => {
  const cases = words.flatMap(({ series, number, word }) =>
    [
      ...(inchFits.get(word)?.steps ?? []),
      ...gradeSteps.slice(fitSteps.length),
    ].flatMap((size) => {
      const answer = inchFitLimits(size * inch, series, number);
      return answer.valid
        ? [{ series, number, word, size, value: answer.value }]
        : [];
    }),
  );

  test("all 34 classes are there", () => {
    expect([...inchFits.keys()]).toEqual(words.map(({ word }) => word));
    expect(words.length).toBe(34);
  });

  test("least and most clearance are those of the limits, and the hole begins at the nominal size", () => {
    expect(cases.length).toBe(34 * 13 + 5 * 12 - 4 - 6 + 4 * 8);
    for (const { value, size } of cases) {
      expect(value.hole.lower).toBe(tenths(size * inch) / 1e10);
      expect(tenths(value.least)).toBe(
        tenths(value.hole.lower) - tenths(value.shaft.upper),
      );
      expect(tenths(value.most)).toBe(
        tenths(value.hole.upper) - tenths(value.shaft.lower),
      );
      expect(value.shaft.lower).toBeLessThan(value.shaft.upper);
    }
  });

  test("the series are what they are called", () => {
    for (const { series, word, value } of cases) {
      if (series === "RC" || series === "LC")
        expect(value.kind, word).toBe("clearance");
      if (series === "LT") expect(value.kind, word).toBe("transition");
      if (series === "LN" || series === "FN")
        expect(value.most, word).toBeLessThanOrEqual(0);
    }
  });

  // the standard builds each shaft on a grade of Table 1; where the fit tables do otherwise they stand, and the rows are these
  test("the shaft's tolerance is that of the grade in its symbol, but for the named rows", () => {
    const shaftGrades = new Map([
      ["RC9", 10],
      ["LC10", 12],
      ["LC11", 13],
      ["FN1", 5],
    ]);
    const unnamed = [...inchFits].filter(([, { shaft }]) => shaft === "");
    expect(unnamed.map(([word]) => word)).toEqual([...shaftGrades.keys()]);
    const off = new Set<string>();
    for (const { word, size, value } of cases) {
      const grade =
        shaftGrades.get(word) ??
        Number(/\d+$/.exec(inchFits.get(word)?.shaft ?? "")?.[0]);
      const tolerance = inchTolerance(size * inch, grade);
      const found = tenths(value.shaft.upper) - tenths(value.shaft.lower);
      if (!(tolerance.valid && tenths(tolerance.value) === found))
        off.add(`${word} ${size}`);
    }
    expect([...off].sort()).toEqual([...shaftExceptions].sort());
  });

  test("the hole's tolerance is that of the grade in its symbol, but for RC1 up to 0.12 in", () => {
    const off = new Set<string>();
    for (const { word, size, value } of cases) {
      const tolerance = inchTolerance(
        size * inch,
        inchFits.get(word)?.hole ?? NaN,
      );
      if (!(tolerance.valid && tolerance.value === value.hole.upperDeviation))
        off.add(`${word} ${size}`);
    }
    expect([...off]).toEqual(["RC1 0.12"]);
  });

  test("within a class clearances of running fits and interferences of force fits grow with size", () => {
    for (const { series, number, word } of words) {
      const own = cases
        .filter((each) => each.series === series && each.number === number)
        .sort((a, b) => a.size - b.size);
      for (const [index, { value }] of own.entries()) {
        const before = own[index - 1]?.value ?? value;
        if (series === "RC" || series === "LC")
          expect(value.most, word).toBeGreaterThanOrEqual(before.most);
        if (series === "FN")
          expect(value.least, word).toBeLessThanOrEqual(before.least);
        if (series === "LT")
          expect(value.least, word).toBeLessThanOrEqual(before.least);
      }
    }
  });

  test("within a series the classes run from close to free, and from light to heavy", () => {
    for (const size of [...fitSteps, ...forceSteps]) {
      const at = (series: InchSeries): FitLimits[] =>
        Array.from({ length: inchSeries.get(series) ?? 0 }, (_, index) =>
          inchFitLimits(size * inch, series, index + 1),
        ).flatMap((each) => (each.valid ? [each.value] : []));
      for (const series of ["RC", "LN", "FN"] as const)
        for (const [index, each] of at(series).entries()) {
          const before = at(series)[index - 1] ?? each;
          if (series === "RC")
            expect(each.most).toBeGreaterThanOrEqual(before.most);
          else expect(each.least).toBeLessThanOrEqual(before.least);
        }
    }
  });

  test("a size takes the step that it is over the lower end of, up to and including the upper", () => {
    expect(thousandths(fit(0.71, "RC", 4).most)).toBe(2.3);
    expect(thousandths(fit(0.7100001, "RC", 4).most)).toBe(2.8);
    // 0.71 in as millimetres
    expect(inchFitLimits(0.018034, "RC", 4)).toEqual(
      inchFitLimits(0.71 * inch, "RC", 4),
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1969 }),
        fc.constantFrom(...words),
        (hundredths, { series, number }) => {
          const size = hundredths / 100;
          const next = [...forceSteps].find((step) => size <= step) ?? NaN;
          const [here, there] = [size, next].map((each) =>
            inchFitLimits(each * inch, series, number),
          );
          if (here?.valid !== true || there?.valid !== true) return;
          expect(here.value.shaft.upperDeviation).toBe(
            there.value.shaft.upperDeviation,
          );
        },
      ),
    );
  });
});

/** Shafts whose tolerance is not that of Table 1. All are as printed but LC1, which is from memory; the shipped answer follows the fit tables. */
const shaftExceptions: readonly string[] = [
  // up to 0.12 in the fit tables have 0.15 and 0.2 where Table 1 has 0.12 and 0.15 for the grades 4 and 5
  ...["RC1 0.12", "RC2 0.12", "LC1 0.12", "LN1 0.12", "FN1 0.12"],
  // half of an odd tolerance is rounded down to print ± the same
  ...["LT1 0.12", "LT1 3.15", "LT1 4.73", "LT2 15.75", "LT2 19.69"],
  // printed so, with no reason to be seen: 0.4 and 0.5 for 0.3 and 0.4, 1.5 for 1.8, 1.1 for 1.0
  ...["LN1 0.71", "LN1 1.19", "LN1 1.97", "RC9 0.24", "FN1 15.75"],
];

test("exact: 0.875 RC4", () => {
  const { hole, shaft, least, most, kind } = fit(0.875, "RC", 4);
  expect([hole.lower, hole.upper, shaft.lower, shaft.upper]).toEqual([
    0.022225, 0.02225548, 0.02218436, 0.02220468,
  ]);
  expect([least, most, kind]).toEqual([0.00002032, 0.00007112, "clearance"]);
});

test("over 19.69 in, LC1 to LC4 follow from the grades up to 200 in", () => {
  expect(thousandths(fit(25, "LC", 2).most)).toBe(5);
  expect(thousandths(fit(200, "LC", 4).most)).toBe(100);
  expect(inchGrades.get(10)?.length).toBe(gradeSteps.length);
});

test.each([
  [0, "RC", 4, "greater than 0"],
  [NaN, "RC", 4, "greater than 0"],
  [200.01, "LC", 1, "200 in"],
  [25, "RC", 4, "RC4"],
  [1, "RC", 10, "RC1 to RC9, and no RC10"],
  [1, "FN", 0, "no FN0"],
  [1, "LC", 1.5, "no LC1.5"],
  [0.24, "LT", 3, "LT3 up to 0.24 in"],
  [0.95, "FN", 3, "FN3 up to 0.95 in"],
] as const)("refuses %d in %s%d", (size, series, number, part) => {
  expect(inchFitLimits(size * inch, series, number)).toMatchObject({
    valid: false,
    because: expect.stringContaining(part) as string,
  });
});

test.each([
  [1, 3, "no 3"],
  [0, 4, "greater than 0"],
  [201, 4, "200 in"],
])("refuses the tolerance at %d in of grade %d", (size, grade, part) => {
  expect(inchTolerance(size * inch, grade)).toMatchObject({
    valid: false,
    because: expect.stringContaining(part) as string,
  });
});
