// The pressed rings: limits that have a closed form, properties, finite elements, refusals. Worked examples from
// textbooks are in test/checks/press.checks.ts.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  closure,
  contactPressure,
  interferenceFor,
  pressStresses,
  type PressedPair,
} from "../../../server/core/press/ring.ts";
import { got } from "../readings/got.ts";
import { pressTogether } from "./elastic-rings.ts";
import { anyPair, winchBush } from "./pairs.ts";

const microns = fc.double({ min: 1e-9, max: 2e-4, noNaN: true });

describe("closed forms", () => {
  test("of one material: E·δ·(Do²−D²)(D²−d²)/(2·D³·(Do²−d²)), Shigley eq. (3-57)", () => {
    fc.assert(
      fc.property(anyPair, microns, (pair, delta) => {
        const { bore: d, od: D, bushMaterial } = pair;
        const boss = pair.boss === Infinity ? 3 * D : pair.boss;
        const same = { ...pair, boss, caseMaterial: bushMaterial };
        const expected =
          ((bushMaterial.modulus * delta) / (2 * D ** 3)) *
          (((boss ** 2 - D ** 2) * (D ** 2 - d ** 2)) / (boss ** 2 - d ** 2));
        const pressure = got(contactPressure(same, delta));
        expect(Math.abs(pressure - expected)).toBeLessThanOrEqual(
          1e-9 * expected,
        );
      }),
    );
  });

  test("of thin walls: two hoops in series, and closure the hoop stiffness's share", () => {
    const D = 0.1;
    const thin = 1e-5;
    const pair: PressedPair = {
      bore: D - 2 * thin,
      od: D,
      boss: D + 4 * thin,
      bushMaterial: { modulus: 100e9, poisson: 0.3 },
      caseMaterial: { modulus: 200e9, poisson: 0.3 },
    };
    // each hoop gives way by p·D²/(2·t·E) on diameter; the bush takes 4 parts in 5 of what both give
    const give = D ** 2 / (2 * thin * 100e9) + D ** 2 / (4 * thin * 200e9);
    expect(got(contactPressure(pair, 1e-6)) / (1e-6 / give)).toBeCloseTo(1, 3);
    expect(got(closure(pair))).toBeCloseTo(0.8, 3);
  });

  test("of a solid plug in an endless plate of the same metal: E·δ/(2·D)", () => {
    const steel = { modulus: 207e9, poisson: 0.29 };
    const plug = {
      bore: 0,
      od: 0.05,
      boss: Infinity,
      bushMaterial: steel,
      caseMaterial: steel,
    };
    expect(got(contactPressure(plug, 2e-5))).toBeCloseTo(
      (207e9 * 2e-5) / (2 * 0.05),
      0,
    );
    const { bushBore } = got(pressStresses(plug, 1e6));
    expect(bushBore.hoop).toBe(-1e6);
    expect(bushBore.radial).toBe(-1e6);
    expect(bushBore.vonMises).toBeCloseTo(1e6, 3);
  });

  test("a very wide boss comes to the endless one, a very stiff one to the rigid one", () => {
    const endless = { ...winchBush, boss: Infinity };
    const wide = { ...winchBush, boss: 300 * winchBush.od };
    expect(got(closure(wide)) / got(closure(endless))).toBeCloseTo(1, 4);
    const material = (modulus: number) => ({ modulus, poisson: 0.3 });
    const rigid = { ...winchBush, caseMaterial: material(Infinity) };
    const stiff = { ...winchBush, caseMaterial: material(1e16) };
    expect(got(closure(stiff)) / got(closure(rigid))).toBeCloseTo(1, 5);
  });
});

test("finite elements that share no formula give the same pressure, closure and stresses", () => {
  fc.assert(
    fc.property(
      anyPair,
      fc.double({ min: 1e-6, max: 1e-4, noNaN: true }),
      (pair, delta) => {
        const boss = pair.boss === Infinity ? 4 * pair.od : pair.boss;
        const ring = { ...pair, boss };
        const solved = pressTogether(
          {
            innerRadius: pair.bore / 2,
            outerRadius: pair.od / 2,
            ...pair.bushMaterial,
            freeStrain: 0,
          },
          {
            innerRadius: pair.od / 2,
            outerRadius: boss / 2,
            ...pair.caseMaterial,
            freeStrain: 0,
          },
          delta / 2,
        );
        const pressure = got(contactPressure(ring, delta));
        const stresses = got(pressStresses(ring, pressure));
        const within = (ours: number, theirs: number) => {
          expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-4);
        };
        within(pressure, solved.pressure);
        within(got(closure(ring)) * delta, -2 * solved.boreMoves);
        within(stresses.bushBore.hoop, solved.hoopAtBore);
        within(stresses.hole.hoop, solved.hoopAtHole);
      },
    ),
    { numRuns: 60 },
  );
});

describe("properties", () => {
  test("nothing at no interference, proportional to it, and interferenceFor turns it round", () => {
    fc.assert(
      fc.property(anyPair, microns, (pair, delta) => {
        expect(got(contactPressure(pair, 0))).toBe(0);
        const pressure = got(contactPressure(pair, delta));
        const twice = got(contactPressure(pair, 2 * delta));
        expect(Math.abs(twice - 2 * pressure)).toBeLessThanOrEqual(
          1e-12 * twice,
        );
        expect(
          Math.abs(got(interferenceFor(pair, pressure)) - delta),
        ).toBeLessThanOrEqual(1e-12 * delta);
      }),
    );
  });

  test("inches or metres: closure and stress do not know, pressure only by its length", () => {
    fc.assert(
      fc.property(anyPair, microns, (pair, delta) => {
        const scale = (x: number) => x / 0.0254;
        const inches = {
          ...pair,
          bore: scale(pair.bore),
          od: scale(pair.od),
          boss: scale(pair.boss),
        };
        const pressure = got(contactPressure(pair, delta));
        expect(
          Math.abs(got(contactPressure(inches, scale(delta))) - pressure),
        ).toBeLessThanOrEqual(1e-9 * pressure);
        expect(
          Math.abs(got(closure(inches)) / got(closure(pair)) - 1),
        ).toBeLessThan(1e-9);
      }),
    );
  });

  test("closure is positive, never over 1/√(1−ν²) of the bush, and a stiffer or thicker boss only raises it", () => {
    fc.assert(
      fc.property(anyPair, (pair) => {
        const C = got(closure(pair));
        expect(C).toBeGreaterThan(0);
        expect(C).toBeLessThanOrEqual(
          (1 + 1e-12) / Math.sqrt(1 - pair.bushMaterial.poisson ** 2),
        );
        const { modulus, poisson } = pair.caseMaterial;
        const stiffer = {
          ...pair,
          caseMaterial: { modulus: 2 * modulus, poisson },
        };
        expect(got(closure(stiffer))).toBeGreaterThan(C);
        expect(
          got(closure({ ...pair, boss: 1.5 * pair.boss })),
        ).toBeGreaterThanOrEqual(C);
      }),
    );
  });

  test("the closure's bound is reached, so it is not a loose one", () => {
    const poisson = 0.35;
    const x = Math.sqrt((1 - poisson) / (1 + poisson));
    const rigid = {
      ...winchBush,
      bore: x * winchBush.od,
      caseMaterial: { modulus: Infinity, poisson: 0.3 },
    };
    expect(got(closure(rigid))).toBeCloseTo(1 / Math.sqrt(1 - poisson ** 2), 9);
  });

  test("the bush is worst at its bore, and hoops balance the pressure across each wall", () => {
    fc.assert(
      fc.property(anyPair, (pair) => {
        const { bushBore, bushOutside, hole, bossOutside } = got(
          pressStresses(pair, 1e7),
        );
        expect(bushBore.vonMises).toBeGreaterThan(bushOutside.vonMises);
        // hoop + radial is one number through a ring
        expect(bushBore.hoop).toBeCloseTo(
          bushOutside.hoop + bushOutside.radial,
          0,
        );
        expect(hole.hoop + hole.radial).toBeCloseTo(bossOutside.hoop, 0);
        expect(hole.vonMises).toBeGreaterThan(bossOutside.vonMises);
      }),
    );
  });
});

describe("refusals", () => {
  const because = (pair: Partial<PressedPair>) => {
    const answer = contactPressure({ ...winchBush, ...pair }, 2e-5);
    return answer.valid ? undefined : answer.because;
  };
  test("a boss split along its axis is no ring; split across, it still is", () => {
    expect(because({ split: "along" })).toMatch(/split along/);
    expect(because({ split: "across" })).toBeUndefined();
    expect(closure({ ...winchBush, split: "along" }).valid).toBe(false);
  });
  test.each([
    [{ bore: winchBush.od }, /no wall/],
    [{ boss: winchBush.od }, /no wall/],
    [{ bore: NaN }, /diameter/],
    [{ od: Infinity }, /diameter/],
    [{ bore: -0.01 }, /diameter/],
    [{ bushMaterial: { modulus: Infinity, poisson: 0.3 } }, /modulus/],
    [{ bushMaterial: { modulus: 0, poisson: 0.3 } }, /modulus/],
    [{ caseMaterial: { modulus: NaN, poisson: 0.3 } }, /modulus/],
    [{ caseMaterial: { modulus: 1e11, poisson: 0.5 } }, /Poisson/],
  ])("%o", (pair, words) => {
    expect(because(pair)).toMatch(words);
  });
  test("a loose bush, a plug's closure, a pressure that is none", () => {
    expect(contactPressure(winchBush, -1e-6).valid).toBe(false);
    expect(contactPressure(winchBush, NaN).valid).toBe(false);
    expect(closure({ ...winchBush, bore: 0 }).valid).toBe(false);
    expect(pressStresses(winchBush, -1).valid).toBe(false);
    expect(interferenceFor(winchBush, NaN).valid).toBe(false);
  });
});
