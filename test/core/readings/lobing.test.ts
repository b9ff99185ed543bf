import fc from "fast-check";
import { expect, test } from "vitest";
import {
  bestVee,
  lobingFactor,
  radialRoundness,
  type RoundnessMethod,
} from "../../../server/core/readings/lobing.ts";
import { got } from "./got.ts";
import { threeContactSwing, twoPointSwing, veeSwing } from "./turned.ts";

function vee(
  degrees: number,
  indicator: "opposite" | "between" = "opposite",
): RoundnessMethod {
  return { kind: "vee", angle: (degrees * Math.PI) / 180, indicator };
}

test("factors at the common angles", () => {
  // by hand from 1 + cos n(90° + θ/2)/sin(θ/2)
  expect(got(lobingFactor(vee(60), 3))).toBeCloseTo(3, 12);
  expect(got(lobingFactor(vee(90), 2))).toBeCloseTo(1, 12);
  expect(got(lobingFactor(vee(90), 3))).toBeCloseTo(2, 12);
  expect(got(lobingFactor(vee(90), 5))).toBeCloseTo(2, 12);
  expect(got(lobingFactor(vee(90), 4))).toBeCloseTo(Math.SQRT2 - 1, 12);
  expect(got(lobingFactor({ kind: "two-point" }, 2))).toBe(2);
  expect(got(lobingFactor({ kind: "three-contacts" }, 3))).toBe(2);
});

test("refuses where a method is blind, and the turned outline is still there too", () => {
  const outline = (lobes: number) => ({ radius: 1, amplitude: 1e-5, lobes });
  const blind = 1e-4 * 2e-5;
  for (const lobes of [3, 5, 7]) {
    expect(lobingFactor({ kind: "two-point" }, lobes).valid).toBe(false);
    expect(twoPointSwing(outline(lobes))).toBeLessThan(10 * blind);
  }
  for (const lobes of [2, 4, 5]) {
    expect(lobingFactor(vee(60), lobes).valid).toBe(false);
    expect(veeSwing(outline(lobes), Math.PI / 3, "opposite")).toBeLessThan(
      10 * blind,
    );
    expect(lobingFactor({ kind: "three-contacts" }, lobes).valid).toBe(false);
    expect(threeContactSwing(outline(lobes))).toBeLessThan(10 * blind);
  }
  for (const lobes of [7, 9]) {
    expect(lobingFactor(vee(90), lobes)).toEqual({
      valid: false,
      because: `this method is blind to ${lobes} lobes`,
    });
    expect(veeSwing(outline(lobes), Math.PI / 2, "opposite")).toBeLessThan(
      10 * blind,
    );
  }
});

test("a vee that opens flat becomes the two-point method", () => {
  for (const lobes of [2, 4, 6])
    expect(got(lobingFactor(vee(179.99), lobes))).toBeCloseTo(2, 3);
  expect(lobingFactor(vee(179.99), 3).valid).toBe(false);
});

test("the factor never passes 1 + 1/sin(θ/2), and never goes below the blind bound", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 50 }),
      fc.double({ min: 20, max: 170, noNaN: true }),
      fc.constantFrom("opposite" as const, "between" as const),
      (lobes, degrees, indicator) => {
        const factor = lobingFactor(vee(degrees, indicator), lobes);
        if (!factor.valid) return;
        expect(factor.value).toBeLessThanOrEqual(
          1 + 1 / Math.sin((degrees * Math.PI) / 360) + 1e-12,
        );
        expect(factor.value).toBeGreaterThanOrEqual(0.1);
      },
    ),
  );
});

test("roundness is the swing over the factor", () => {
  expect(got(radialRoundness(6e-6, vee(60), 3))).toBeCloseTo(2e-6, 15);
  expect(got(radialRoundness(0, vee(60), 3))).toBe(0);
  expect(radialRoundness(6e-6, vee(60), 5).valid).toBe(false);
  expect(radialRoundness(-1e-6, vee(60), 3).valid).toBe(false);
  expect(radialRoundness(NaN, vee(60), 3).valid).toBe(false);
});

test.each([1, 0, -3, 2.5, NaN, Infinity, 1001])("refuses %d lobes", (lobes) => {
  expect(lobingFactor(vee(90), lobes).valid).toBe(false);
});

test.each([0, -60, 180, 400, NaN])("refuses a vee of %d°", (degrees) => {
  expect(lobingFactor(vee(degrees), 3).valid).toBe(false);
});

test("the vee to take is the one in which the turned outline swings most", () => {
  for (const lobes of [2, 3, 5, 7, 8, 9, 11]) {
    const outline = { radius: 1, amplitude: 1e-5, lobes };
    const swings = [60, 90, 108, 120].map(
      (degrees) =>
        veeSwing(outline, (degrees * Math.PI) / 180, "opposite") / 2e-5,
    );
    const best = bestVee(lobes);
    expect(best?.factor).toBeCloseTo(Math.max(...swings), 2);
    expect(swings[[60, 90, 108, 120].indexOf(best?.degrees ?? 0)]).toBeCloseTo(
      Math.max(...swings),
      2,
    );
  }
  // 1 + cos 49·(90° + θ/2)/sin(θ/2) is near nothing at 60 and 90°, and at 108 and 120°
  expect(bestVee(49)).toBeUndefined();
  expect(bestVee(1)).toBeUndefined();
});
