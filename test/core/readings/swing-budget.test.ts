import { expect, test } from "vitest";
import {
  clearanceBudget,
  lessOthers,
  type Budget,
} from "../../../server/core/readings/budget.ts";
import { swingBudget } from "../../../server/core/readings/swing-budget.ts";
import { got } from "./got.ts";

test("a swing is two readings, each rounded, over the factor", () => {
  // by hand: √2·1 µm/√12 and 3 µm/2, over 2
  const found = got(swingBudget({ resolution: 1e-6, calibration: 3e-6 }, 2));
  expect(found.combined).toBeCloseTo(
    Math.hypot(1e-6 / Math.sqrt(6), 1.5e-6) / 2,
    15,
  );
  // Student's t for infinitely many degrees of freedom is the normal's
  expect(found.expanded / found.combined).toBeCloseTo(1.959964, 6);
});

test("a pointer known by its largest error alone counts that, and of both the larger", () => {
  expect(got(swingBudget({ mpe: 3e-6 }, 1)).combined).toBeCloseTo(
    3e-6 / Math.sqrt(3),
    15,
  );
  expect(
    got(swingBudget({ mpe: 3e-6, calibration: 2e-6 }, 1)).combined,
  ).toBeCloseTo(3e-6 / Math.sqrt(3), 15);
  expect(
    got(swingBudget({ mpe: 3e-6, calibration: 4e-6 }, 1)).combined,
  ).toBeCloseTo(2e-6, 15);
});

test.each([
  [{ resolution: 1e-6 }, 1],
  [{ calibration: 1e-6 }, 0],
  [{ calibration: 1e-6 }, NaN],
  [{ calibration: -1e-6 }, 1],
  [{ calibration: 1e-6, resolution: 0 }, 1],
])("refuses %j over %d", (gauge, factor) => {
  expect(swingBudget(gauge, factor).valid).toBe(false);
});

test("what is taken besides adds in squares, whatever the two sizes share", () => {
  const size = (combined: number): Budget => ({
    rows: [
      {
        name: "calibration",
        sensitivity: 1,
        standardUncertainty: combined,
        distribution: "normal",
        degreesOfFreedom: Infinity,
        contribution: combined,
      },
    ],
    combined,
    effectiveDegreesOfFreedom: Infinity,
    coverage: 0.95,
    coverageFactor: 2,
    expanded: 2 * combined,
  });
  for (const r of [0, 0.5, 1]) {
    const both = got(clearanceBudget(size(3e-6), size(4e-6), r));
    const less = got(
      lessOthers(both, [{ name: "journal lobes", budget: size(2e-6) }]),
    );
    expect(less.combined).toBeCloseTo(Math.hypot(both.combined, 2e-6), 15);
    expect(less.correlation).toBe(r);
    expect(less.rows.map(({ name }) => name)).toContain(
      "journal lobes calibration",
    );
  }
});
