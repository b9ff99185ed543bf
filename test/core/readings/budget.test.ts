import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  budget,
  clearanceBudget,
  commonCorrelation,
  type Budget,
} from "../../../server/core/readings/budget.ts";
import {
  settingComponent,
  type Component,
} from "../../../server/core/readings/components.ts";
import { got } from "./got.ts";

const uncertainty = fc.double({ min: 1e-9, max: 1e-5, noNaN: true });
const degrees = fc.oneof(
  fc.integer({ min: 1, max: 100 }),
  fc.constant(Infinity),
);
const component: fc.Arbitrary<Component> = fc
  .tuple(uncertainty, degrees, fc.constantFrom(-2, -1, 0.5, 1))
  .map(([standardUncertainty, degreesOfFreedom, sensitivity]) => ({
    name: "some",
    sensitivity,
    standardUncertainty,
    distribution: "normal",
    degreesOfFreedom,
  }));
const components = fc.array(component, { minLength: 1, maxLength: 8 });

function simple(
  standardUncertainty: number,
  degreesOfFreedom = Infinity,
): Budget {
  return got(
    budget([got(settingComponent(standardUncertainty, degreesOfFreedom))]),
  );
}

describe("a budget", () => {
  test("of 3 and 4 is 5, and keeps its rows", () => {
    const found = got(
      budget([
        got(settingComponent(3)),
        { ...got(settingComponent(2)), sensitivity: -2 },
      ]),
    );
    expect(found.combined).toBe(5);
    expect(found.rows.map((row) => row.contribution)).toEqual([3, 4]);
    expect(found.effectiveDegreesOfFreedom).toBe(Infinity);
    expect(found.expanded).toBeCloseTo(5 * 1.959964, 5);
  });

  test("of like components has all their degrees of freedom, even where rounding would take one off", () => {
    for (let count = 1; count <= 5; count++)
      for (let dof = 1; dof <= 60; dof++) {
        const one = got(settingComponent(0.3e-6, dof));
        const all = got(budget(Array<Component>(count).fill(one)));
        expect(all.effectiveDegreesOfFreedom).toBe(count * dof);
      }
  });

  test("lies between its largest component and their sum, and is not smaller for one more", () => {
    fc.assert(
      fc.property(components, component, (some, more) => {
        const { combined, rows, coverageFactor } = got(budget(some));
        const each = rows.map((row) => row.contribution);
        expect(combined).toBeGreaterThanOrEqual(
          Math.max(...each) * (1 - 1e-15),
        );
        expect(combined).toBeLessThanOrEqual(
          each.reduce((a, b) => a + b) * (1 + 1e-15),
        );
        expect(got(budget([...some, more])).combined).toBeGreaterThanOrEqual(
          combined,
        );
        expect(coverageFactor).toBeGreaterThan(1.9599);
      }),
    );
  });

  test("has no fewer degrees of freedom than its poorest component, no more than all together", () => {
    fc.assert(
      fc.property(components, (some) => {
        const { effectiveDegreesOfFreedom } = got(budget(some));
        const each = some.map((one) => one.degreesOfFreedom);
        expect(effectiveDegreesOfFreedom).toBeGreaterThanOrEqual(
          Math.min(...each),
        );
        if (each.every(Number.isFinite))
          expect(effectiveDegreesOfFreedom).toBeLessThanOrEqual(
            each.reduce((a, b) => a + b),
          );
      }),
    );
  });

  test("does not depend on order or unit", () => {
    fc.assert(
      fc.property(components, (some) => {
        const plain = got(budget(some));
        const turned = got(budget(some.toReversed()));
        expect(turned.combined / plain.combined).toBeCloseTo(1, 12);
        const inches = some.map((one) => ({
          ...one,
          standardUncertainty: one.standardUncertainty / 0.0254,
        }));
        const found = got(budget(inches));
        expect((found.combined * 0.0254) / plain.combined).toBeCloseTo(1, 12);
      }),
    );
  });

  test("of nothing but zeros is zero", () => {
    expect(simple(0, 3)).toMatchObject({
      combined: 0,
      expanded: 0,
      effectiveDegreesOfFreedom: Infinity,
    });
  });

  const good = got(settingComponent(1e-6));
  test.each([
    [[]],
    [[{ ...good, standardUncertainty: -1 }]],
    [[{ ...good, standardUncertainty: NaN }]],
    [[{ ...good, sensitivity: Infinity }]],
    [[{ ...good, degreesOfFreedom: 0 }]],
    [[{ ...good, degreesOfFreedom: NaN }]],
  ])("refuses %j", (some) => {
    expect(budget(some).valid).toBe(false);
  });

  test("refuses a coverage that is none", () => {
    for (const coverage of [0, 1, NaN])
      expect(budget([good], coverage).valid).toBe(false);
  });
});

describe("the budget of a clearance", () => {
  const correlation = fc.double({ min: -1, max: 1, noNaN: true });

  test("without correlation is that of all rows together", () => {
    fc.assert(
      fc.property(components, components, (bore, journal) => {
        const apart = got(
          clearanceBudget(got(budget(bore)), got(budget(journal))),
        );
        const together = got(budget([...bore, ...journal]));
        expect(apart.combined / together.combined).toBeCloseTo(1, 12);
        expect(apart.rows.length).toBe(bore.length + journal.length);
        expect(apart.rows[0]?.name).toBe("bore some");
        expect(apart.rows.at(-1)?.name).toBe("journal some");
        expect(apart.rows.at(-1)?.sensitivity).toBe(
          -(journal.at(-1)?.sensitivity ?? NaN),
        );
      }),
    );
  });

  test("runs from the difference to the sum, the smaller the more they share", () => {
    fc.assert(
      fc.property(
        uncertainty,
        uncertainty,
        correlation,
        correlation,
        (a, b, r, q) => {
          const u = (at: number): number =>
            got(clearanceBudget(simple(a), simple(b), at)).combined;
          expect(u(1)).toBeCloseTo(Math.abs(a - b), 18);
          expect(u(-1) / (a + b)).toBeCloseTo(1, 12);
          const [low, high] = r < q ? [r, q] : [q, r];
          expect(u(high)).toBeLessThanOrEqual(u(low) * (1 + 1e-12));
          expect(u(r) ** 2 / (a * a + b * b)).toBeCloseTo(
            1 - (2 * r * a * b) / (a * a + b * b),
            10,
          );
        },
      ),
    );
  });

  test("of one and the same error is nothing", () => {
    const same = simple(0.7e-6, 5);
    expect(got(clearanceBudget(same, same, 1))).toMatchObject({
      combined: 0,
      expanded: 0,
      correlation: 1,
    });
  });

  test("with a shared setting is the budget of what is not shared, degrees of freedom and all", () => {
    fc.assert(
      fc.property(
        uncertainty,
        uncertainty,
        uncertainty,
        fc.integer({ min: 2, max: 30 }),
        (own, other, both, dof) => {
          const setting = got(settingComponent(both));
          const repeats = (u: number): Component =>
            got(settingComponent(u, dof));
          const bore = got(budget([repeats(own), setting]));
          const journal = got(budget([repeats(other), setting]));
          const r = got(
            commonCorrelation(bore, journal, { bore: both, journal: both }),
          );
          const found = got(clearanceBudget(bore, journal, r));
          const rest = got(budget([repeats(own), repeats(other)]));
          // where the shared part is far larger than the rest, its going out leaves only rounding
          const lost = 1e-14 * (both / rest.combined) ** 2;
          expect(Math.abs(found.combined / rest.combined - 1)).toBeLessThan(
            1e-9 + lost,
          );
          expect(
            Math.abs(
              found.effectiveDegreesOfFreedom - rest.effectiveDegreesOfFreedom,
            ),
          ).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  test("refuses a correlation that is none", () => {
    for (const r of [1.01, -1.01, NaN])
      expect(clearanceBudget(simple(1), simple(1), r).valid).toBe(false);
  });
});

describe("a correlation from what is shared", () => {
  test("is nothing without a share, one where all is shared", () => {
    expect(
      got(commonCorrelation(simple(2), simple(3), { bore: 0, journal: 1 })),
    ).toBe(0);
    expect(
      got(commonCorrelation(simple(2), simple(3), { bore: 2, journal: 3 })),
    ).toBe(1);
    expect(
      got(commonCorrelation(simple(0), simple(3), { bore: 0, journal: 3 })),
    ).toBe(0);
  });

  test("refuses more than the whole, and less than nothing", () => {
    expect(
      commonCorrelation(simple(2), simple(3), { bore: 2.1, journal: 1 }).valid,
    ).toBe(false);
    expect(
      commonCorrelation(simple(2), simple(3), { bore: 1, journal: -1 }).valid,
    ).toBe(false);
    expect(
      commonCorrelation(simple(2), simple(3), { bore: NaN, journal: 1 }).valid,
    ).toBe(false);
  });
});
