// The rules of ISO 286: properties over every class and size, edges of the steps, exactness, and what is refused.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  featureOf,
  isoGrades,
  isoLimits,
  isoTolerance,
  type IsoGrade,
} from "../../../server/core/fits/iso-286.ts";
import {
  mainSteps,
  shaftLetters,
} from "../../../server/core/fits/iso-286-tables.ts";
import type { Zone } from "../../../server/core/fits/limits.ts";

const shafts: readonly string[] = shaftLetters;
const holes = shafts.map((letters) => letters.toUpperCase());

/** Sizes in whole tenths of a nanometre, with the ends of the steps and their neighbours among them. */
const ends = mainSteps
  .flatMap((step) => [step * 1e7 - 1, step * 1e7, step * 1e7 + 1])
  .filter((size) => size <= 3150e7);
const sizes = fc
  .oneof(fc.constantFrom(...ends), fc.integer({ min: 1, max: 3150e7 }))
  .map((tenths) => tenths / 1e10);
const grades = fc.constantFrom(...isoGrades);

function zone(sizeMetres: number, letters: string, grade: IsoGrade): Zone {
  const answer = isoLimits(sizeMetres, letters, grade);
  if (!answer.valid)
    throw new Error(`${letters}${grade} at ${sizeMetres}: ${answer.because}`);
  return answer.value;
}

/** The grades in which the letters are defined at a size, finest first. */
function gradesAt(sizeMetres: number, letters: string): readonly IsoGrade[] {
  return isoGrades.filter(
    (grade) => isoLimits(sizeMetres, letters, grade).valid,
  );
}

const tenths = (metres: number): number => Math.round(metres * 1e10);

describe("every class at every size", () => {
  test("has the width of its grade, and its limits are the size and the deviations", () => {
    fc.assert(
      fc.property(
        sizes,
        fc.constantFrom(...shafts, ...holes),
        grades,
        (size, letters, grade) => {
          const found = isoLimits(size, letters, grade);
          const tolerance = isoTolerance(size, grade);
          if (!found.valid) {
            expect(found.because).not.toMatch(/\.$|NaN|undefined/);
            return;
          }
          expect(tolerance.valid && tenths(tolerance.value)).toBe(
            tenths(found.value.upper) - tenths(found.value.lower),
          );
          expect(tenths(found.value.lower)).toBe(
            tenths(size) + tenths(found.value.lowerDeviation),
          );
          expect(tenths(found.value.upper)).toBe(
            tenths(size) + tenths(found.value.upperDeviation),
          );
          expect(found.value.feature).toBe(featureOf(letters));
        },
      ),
      { numRuns: 2000 },
    );
  });

  test("H begins and h ends at the nominal size; js and JS are symmetric and the same", () => {
    fc.assert(
      fc.property(sizes, grades, (size, grade) => {
        if (!isoTolerance(size, grade).valid) return;
        expect(zone(size, "H", grade).lowerDeviation).toBe(0);
        expect(zone(size, "h", grade).upperDeviation).toBe(0);
        expect(zone(size, "h", grade).lowerDeviation).toBe(
          -zone(size, "H", grade).upperDeviation,
        );
        const { lowerDeviation, upperDeviation } = zone(size, "js", grade);
        expect(lowerDeviation).toBe(-upperDeviation);
        expect(zone(size, "JS", grade)).toEqual({
          ...zone(size, "js", grade),
          feature: "hole",
        });
      }),
    );
  });

  test("holes A to G mirror shafts a to g", () => {
    fc.assert(
      fc.property(
        sizes,
        fc.constantFrom(..."a b c cd d e ef f fg g".split(" ")),
        grades,
        (size, letters, grade) => {
          const shaft = isoLimits(size, letters, grade);
          const hole = isoLimits(size, letters.toUpperCase(), grade);
          expect(hole.valid).toBe(shaft.valid);
          if (!hole.valid || !shaft.valid) return;
          expect(hole.value.lowerDeviation).toBe(-shaft.value.upperDeviation);
          expect(hole.value.upperDeviation + shaft.value.lowerDeviation).toBe(
            0,
          );
        },
      ),
      { numRuns: 500 },
    );
  });

  // the delta rule exists for this: H6/p5 and P6/h5 leave the same clearance
  test("over 3 to 500 mm, a hole and the shaft one grade finer fit alike on either basis", () => {
    const between = fc
      .integer({ min: 3e7 + 1, max: 500e7 })
      .map((size) => size / 1e10);
    const cases = fc.oneof(
      fc.tuple(fc.constantFrom("m", "n"), fc.integer({ min: 3, max: 8 })),
      fc.tuple(fc.constant("k"), fc.integer({ min: 5, max: 8 })),
      fc.tuple(
        fc.constantFrom(..."p r s t u v x y z za zb zc".split(" ")),
        fc.integer({ min: 3, max: 7 }),
      ),
    );
    fc.assert(
      fc.property(between, cases, (size, [letters, grade]) => {
        const onHole = isoLimits(size, letters, grade - 1);
        const onShaft = isoLimits(size, letters.toUpperCase(), grade);
        if (!onHole.valid || !onShaft.valid) return;
        if (letters === "m" && grade === 6 && 0.25 < size && size <= 0.315)
          return; // M6 is the special case
        const least =
          tenths(zone(size, "H", grade).lower) - tenths(onHole.value.upper);
        expect(
          tenths(onShaft.value.lower) -
            tenths(zone(size, "h", grade - 1).upper),
        ).toBe(least);
      }),
      { numRuns: 1000 },
    );
  });

  test("over 500 mm, holes K to U mirror shafts k to u", () => {
    const beyond = fc
      .integer({ min: 500e7 + 1, max: 3150e7 })
      .map((size) => size / 1e10);
    fc.assert(
      fc.property(
        beyond,
        fc.constantFrom(..."k m n p r s t u".split(" ")),
        grades,
        (size, letters, grade) => {
          const shaft = isoLimits(size, letters, grade);
          const hole = isoLimits(size, letters.toUpperCase(), grade);
          expect(hole.valid).toBe(shaft.valid);
          if (hole.valid && shaft.valid)
            expect(hole.value.upperDeviation + shaft.value.lowerDeviation).toBe(
              0,
            );
        },
      ),
    );
  });

  test("a coarser grade is wider, and no grade narrows with size", () => {
    for (const step of mainSteps) {
      const widths = gradesAt(step / 1000, "H").map(
        (grade) => zone(step / 1000, "H", grade).upperDeviation,
      );
      for (const [index, width] of widths.entries())
        expect(width).toBeGreaterThan(widths[index - 1] ?? 0);
    }
    for (const grade of isoGrades) {
      const widths = mainSteps
        .map((step) => isoTolerance(step / 1000, grade))
        .flatMap((each) => (each.valid ? [each.value] : []));
      for (const [index, width] of widths.entries())
        expect(width).toBeGreaterThanOrEqual(widths[index - 1] ?? 0);
    }
  });

  test("the letters run from loose to tight", () => {
    for (const step of mainSteps) {
      const letters = shafts.filter((each) => each !== "js" && each !== "j");
      const uppers = letters.flatMap((each) => {
        const found = isoLimits(step / 1000, each, 7);
        return found.valid ? [found.value.upperDeviation] : [];
      });
      for (const [index, each] of uppers.entries())
        expect(each).toBeGreaterThanOrEqual(uppers[index - 1] ?? -1);
    }
  });
});

describe("exact", () => {
  test("results are the doubles nearest to the decimal value", () => {
    expect(zone(0.025, "H", 7)).toEqual({
      feature: "hole",
      lower: 0.025,
      upper: 0.025021,
      lowerDeviation: 0,
      upperDeviation: 0.000021,
    });
    expect(zone(0.025, "f", 7)).toMatchObject({
      lower: 0.024959,
      upper: 0.02498,
      lowerDeviation: -41e-6,
      upperDeviation: -20e-6,
    });
    expect(zone(0.1, "js", 7)).toMatchObject({
      lower: 0.0999825,
      upper: 0.1000175,
    });
    expect(zone(0.002, "js", "01")).toMatchObject({
      lower: 0.00199985,
      upper: 0.00200015,
    });
    expect(zone(0.004, "K", 4)).toMatchObject({
      lowerDeviation: -3.5e-6,
      upperDeviation: 0.5e-6,
    });
    expect(Object.is(zone(0.025, "h", 6).upperDeviation, 0)).toBe(true);
  });

  test("a step ends with its last size and the next begins a tenth of a nanometre on", () => {
    expect(zone(0.018, "H", 7).upperDeviation).toBe(18e-6);
    expect(zone(0.0180000001, "H", 7).upperDeviation).toBe(21e-6);
    // 18 mm as it falls out of arithmetic
    expect(zone(0.006 * 3, "H", 7).upperDeviation).toBe(18e-6);
    expect(zone(0.3 - 0.12, "H", 7).upperDeviation).toBe(40e-6);
    // 24 mm divides t, u and the letters after them, not p
    expect(isoLimits(0.024, "t", 6).valid).toBe(false);
    expect(zone(0.0240000001, "t", 6).lowerDeviation).toBe(41e-6);
    expect(zone(0.024, "p", 6).lowerDeviation).toBe(22e-6);
    expect(zone(3.15, "H", 7).upperDeviation).toBe(210e-6);
  });

  test("an inch size stands in the step of its millimetres", () => {
    expect(zone(0.875 * 0.0254, "H", 7)).toMatchObject({
      lower: 0.022225,
      upper: 0.022246,
    });
  });
});

describe("special rules", () => {
  test("M6 over 250 to 315 mm is -9 and not -11 µm", () => {
    expect(zone(0.2500000001, "M", 6).upperDeviation).toBe(-9e-6);
    expect(zone(0.315, "M", 6).upperDeviation).toBe(-9e-6);
    expect(zone(0.25, "M", 6).upperDeviation).toBe(-8e-6);
    expect(zone(0.3150000001, "M", 6).upperDeviation).toBe(-10e-6);
    expect(zone(0.3, "M", 7).upperDeviation).toBe(0);
  });

  test("k has a deviation in IT4 to IT7 only", () => {
    expect(zone(0.025, "k", 7).lowerDeviation).toBe(2e-6);
    expect(zone(0.025, "k", 3).lowerDeviation).toBe(0);
    expect(zone(0.025, "k", 8).lowerDeviation).toBe(0);
    expect(zone(0.6, "k", 6).lowerDeviation).toBe(0);
  });

  test("N over IT8 ends at the nominal size over 3 mm", () => {
    expect(zone(0.003, "N", 9).upperDeviation).toBe(-4e-6);
    expect(zone(0.0031, "N", 9).upperDeviation).toBe(0);
    expect(zone(0.5, "N", 9).upperDeviation).toBe(0);
    expect(zone(0.501, "N", 9).upperDeviation).toBe(-44e-6);
  });

  // Machine Drawing, below Table 15.3: "For P7, from diameters 18 to 30 mm, delta = 8; hence ES = -14"
  test("P7 over 18 to 30 mm is -14 µm", () => {
    expect(zone(0.025, "P", 7).upperDeviation).toBe(-14e-6);
    expect(zone(0.025, "P", 8).upperDeviation).toBe(-22e-6);
  });
});

describe("refused, by name", () => {
  test.each([
    [0, "H", 7, "greater than 0"],
    [-0.01, "H", 7, "greater than 0"],
    [NaN, "H", 7, "greater than 0"],
    [Infinity, "H", 7, "3150 mm"],
    [3.1500000001, "H", 7, "3150 mm"],
    [0.025, "I", 7, "“I”"],
    [0.025, "Js", 7, "“Js”"],
    [0.025, "", 7, "letters"],
    [0.025, "H", 19, "IT19"],
    [0.025, "H", 6.5, "IT6.5"],
    [0.025, "H", NaN, "ITNaN"],
    [0.6, "H", "01", "IT01 up to 500 mm"],
    [0.6, "js", 0, "IT0 up to 500 mm"],
    [0.001, "H", 14, "IT14"],
    [0.001, "a", 11, "a up to 1 mm"],
    [0.0005, "B", 11, "B up to 1 mm"],
    [0.001, "N", 9, "N over IT8 up to 1 mm"],
    [0.051, "cd", 8, "cd over 50 mm"],
    [0.06, "EF", 8, "EF over 50 mm"],
    [0.0500000001, "fg", 6, "fg over 50 mm"],
    [0.501, "c", 11, "c over 500 mm"],
    [0.6, "A", 11, "A over 500 mm"],
    [0.6, "x", 7, "x over 500 mm"],
    [0.6, "ZC", 9, "ZC over 500 mm"],
    [0.6, "j", 6, "j6 over 500 mm"],
    [0.024, "t", 6, "t up to 24 mm, and u serves there"],
    [0.02, "T", 7, "T up to 24 mm, and U serves there"],
    [0.014, "v", 6, "v up to 14 mm"],
    [0.018, "Y", 7, "Y up to 18 mm"],
    [0.025, "j", 9, "j in the grades 5, 6, 7, 8"],
    [0.025, "j", 8, "j8 over 3 mm"],
    [0.025, "J", 5, "J in the grades 6, 7, 8"],
    [0.025, "K", 9, "K over IT8"],
    [0.025, "P", 2, "P2"],
    [0.025, "N", "01", "N01"],
  ] as const)("%d m %s%s", (size, letters, grade, part) => {
    const answer = isoLimits(size, letters, grade);
    expect(answer).toMatchObject({
      valid: false,
      because: expect.stringContaining(part) as string,
    });
  });
});

test("the letters at a size are those that answer in some grade", () => {
  const lettersAt = (size: number, all: readonly string[]): string =>
    all.filter((letters) => 0 < gradesAt(size, letters).length).join(" ");
  expect(lettersAt(0.025, shafts)).toBe(shafts.join(" "));
  expect(lettersAt(0.01, holes).split(" ")).not.toContain("T");
  expect(lettersAt(0.6, shafts)).toBe("d e f g h js k m n p r s t u");
  expect(lettersAt(4, holes)).toBe("");
  expect(gradesAt(0.025, "J")).toEqual([6, 7, 8]);
  expect(gradesAt(0.6, "H")).toEqual(isoGrades.slice(2));
});
