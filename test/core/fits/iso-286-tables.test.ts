// The tables of ISO 286: against printed copies value by value, and against the formulas row by row.
import { describe, expect, test } from "vitest";
import {
  fineSteps,
  mainSteps,
  standardTolerances,
} from "../../../server/core/fits/iso-286-tables.ts";
import * as comparisons from "./comparisons.ts";
import {
  deviationExceptions,
  timesTenExceptions,
  toleranceExceptions,
  type Exception,
} from "./iso-exceptions.ts";
import { meanSize, toleranceByRule } from "./iso-by-rule.ts";

function named(exceptions: readonly Exception[]): readonly string[] {
  return exceptions.flatMap(({ rows }) => rows).sort();
}

describe("printed copies, every value", () => {
  test.each([
    ["IT01 to IT16 to 500 mm", comparisons.printedTolerances, 234],
    ["IT5 to IT11, 400 to 3150 mm", comparisons.printedTolerancesTo3150, 63],
    ["shafts m to zc to 180 mm", comparisons.printedShaftsTight, 181],
    ["shafts a to k, 180 to 500 mm", comparisons.printedShaftsLoose, 55],
    ["holes A to J to 225 mm", comparisons.printedHoles4500, 189],
    ["holes A to M, 120 to 500 mm", comparisons.printedHolesLoose, 76],
    ["holes P to ZC, 180 to 500 mm", comparisons.printedHolesTight, 101],
    ["delta, 180 to 500 mm", comparisons.printedDelta, 24],
    ["holes and shafts over 500 mm", comparisons.printedOver500, 384],
    ["limits of holes, 18 to 250 mm", comparisons.printedHoleLimits, 252],
    ["the corrections of 2006", comparisons.printedCorrigendum, 4],
    ["U to 225 mm", [comparisons.printedHoleU], 1],
  ] as const)("%s", (_, pairs, count) => {
    expect(
      pairs.filter(({ ours, theirs }) => !(Math.abs(ours - theirs) < 1e-4)),
    ).toEqual([]);
    expect(pairs.length).toBe(count);
  });
});

describe("formulas, row by row", () => {
  test("IT5 to IT11 lie within a rounding step, but for the named rows", () => {
    expect(
      [...comparisons.beyondRounding(comparisons.tolerancesByRule)].sort(),
    ).toEqual(named(toleranceExceptions));
    expect(comparisons.tolerancesByRule.length).toBe(147);
  });

  // published: "From IT6 to IT18, the standard tolerances are multiplied by the factor 10 at each fifth step" (Wikipedia, IT Grade)
  test("IT11 to IT18 are ten times the grade five finer, but for the named row", () => {
    const beside = [11, 12, 13, 14, 15, 16, 17, 18].flatMap((grade) =>
      (standardTolerances.get(grade) ?? []).map((value, step) => ({
        name: `IT${grade} ${mainSteps[step] ?? 0}`,
        off: value !== 10 * (standardTolerances.get(grade - 5)?.[step] ?? NaN),
      })),
    );
    expect(beside.filter(({ off }) => off).map(({ name }) => name)).toEqual(
      named(timesTenExceptions),
    );
    expect(beside.length).toBe(168);
  });

  test("IT1 to IT4 over 500 mm lie within 7 % of the formula", () => {
    for (const grade of [1, 2, 3, 4])
      for (const [step, value] of (
        standardTolerances.get(grade) ?? []
      ).entries())
        if (13 <= step)
          expect(
            Math.abs(
              value / toleranceByRule(grade, meanSize(mainSteps, step)) - 1,
            ),
          ).toBeLessThan(0.07);
  });

  // the small values are rounded to 0.1, 0.2 or 0.5 µm and to a series, so the formula only fences them in
  test("IT01 to IT4 to 500 mm lie within 30 % of the formula", () => {
    for (const grade of ["01", 0, 1, 2, 3, 4] as const)
      for (const [step, value] of (standardTolerances.get(grade) ?? [])
        .slice(0, 13)
        .entries())
        expect(
          Math.abs(
            value / toleranceByRule(grade, meanSize(mainSteps, step)) - 1,
          ),
        ).toBeLessThan(0.3);
  });

  test("the letters lie within a rounding step, but for the named rows", () => {
    expect(
      [...comparisons.beyondRounding(comparisons.deviationsByRule)].sort(),
    ).toEqual(named(deviationExceptions));
    expect(comparisons.deviationsByRule.length).toBe(585);
  });

  test("every exception has a reason", () => {
    for (const { rows, reason } of [
      ...toleranceExceptions,
      ...timesTenExceptions,
      ...deviationExceptions,
    ]) {
      expect(rows.length).toBeGreaterThan(0);
      expect(reason.length).toBeGreaterThan(20);
    }
  });
});

test("the finer steps divide the main ones", () => {
  for (const step of mainSteps) expect(fineSteps).toContain(step);
  for (const grade of [1, 5, 18])
    expect(standardTolerances.get(grade)?.length).toBe(mainSteps.length);
  expect(standardTolerances.get("01")?.length).toBe(13);
});
