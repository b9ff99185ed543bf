// Bosses that are no plain ring: the bracket holds what it must, and yield is looked for at its smaller end.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  closureBand,
  elasticLimit,
  holeStressBand,
  pressureBand,
} from "../../../server/core/press/boss.ts";
import {
  closure,
  contactPressure,
  pressStresses,
} from "../../../server/core/press/ring.ts";
import { firstYield } from "../../../server/core/press/yield.ts";
import { got } from "../readings/got.ts";
import { anyPair, winchBush } from "./pairs.ts";

describe("closure", () => {
  test("a plain boss has no bracket", () => {
    const C = got(closure(winchBush));
    expect(got(closureBand(winchBush, "plain"))).toEqual({ low: C, high: C });
  });

  test("any stiffening of the boss falls within the bracket", () => {
    fc.assert(
      fc.property(
        anyPair,
        fc.double({ min: 1, max: 100, noNaN: true }),
        (pair, times) => {
          const { low, high } = got(closureBand(pair, "stiffer"));
          const { modulus, poisson } = pair.caseMaterial;
          const stiffer = {
            ...pair,
            caseMaterial: { modulus: modulus * times, poisson },
          };
          const C = got(closure(stiffer));
          expect(low).toBeLessThanOrEqual(C * (1 + 1e-12));
          expect(C).toBeLessThanOrEqual(high * (1 + 1e-12));
        },
      ),
    );
  });

  test("an end of the bush that stands free need not close at all", () => {
    const free = got(closureBand(winchBush, "bush-overhangs"));
    expect(free.low).toBe(0);
    expect(free.high).toBe(got(closureBand(winchBush, "stiffer")).high);
  });

  test("split along its axis, it is refused in every form", () => {
    for (const form of ["plain", "stiffer", "bush-overhangs"] as const)
      expect(closureBand({ ...winchBush, split: "along" }, form).valid).toBe(
        false,
      );
  });
});

describe("pressure", () => {
  const interference = { low: 1e-5, high: 3e-5 };
  test("from the least interference in the plain ring to the most in the stiffest", () => {
    const plain = got(pressureBand(winchBush, interference, "plain"));
    expect(plain.low).toBe(got(contactPressure(winchBush, 1e-5)));
    expect(plain.high).toBe(got(contactPressure(winchBush, 3e-5)));
    const stiffer = got(pressureBand(winchBush, interference, "stiffer"));
    expect(stiffer.low).toBe(plain.low);
    expect(stiffer.high).toBeGreaterThan(plain.high);
  });
  test("reversed or loose interference is refused", () => {
    expect(pressureBand(winchBush, { low: 2, high: 1 }, "plain").valid).toBe(
      false,
    );
    expect(
      pressureBand(winchBush, { low: -1e-6, high: 1e-6 }, "plain").valid,
    ).toBe(false);
  });
});

describe("yield", () => {
  test("at first yield the margin is one, and closure stops there", () => {
    fc.assert(
      fc.property(
        anyPair,
        fc.double({ min: 2e7, max: 9e8, noNaN: true }),
        fc.double({ min: 2e7, max: 9e8, noNaN: true }),
        (pair, bush, hole) => {
          const yields = { bush, case: hole };
          const onset = got(firstYield(pair, yields));
          const stresses = got(pressStresses(pair, onset.pressure));
          const margins = {
            bush: bush / stresses.bushBore.vonMises,
            hole: hole / stresses.hole.vonMises,
          };
          const least = Math.min(margins.bush, margins.hole);
          expect(least).toBeCloseTo(1, 9);
          expect(margins[onset.where]).toBe(least);
          expect(
            got(contactPressure(pair, onset.interference)) / onset.pressure,
          ).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  test("of the bush alone: p = σy·(1 − d²/D²)/2", () => {
    const { pressure, where } = got(firstYield(winchBush, { bush: 138e6 }));
    expect(where).toBe("bush");
    expect(pressure).toBeCloseTo(
      (138e6 * (1 - (winchBush.bore / winchBush.od) ** 2)) / 2,
      3,
    );
  });

  test("a stiffer boss brings it on sooner", () => {
    const yields = { bush: 138e6, case: 164e6 };
    const plain = got(elasticLimit(winchBush, yields, "plain"));
    const stiffer = got(elasticLimit(winchBush, yields, "stiffer"));
    expect(plain).toEqual(got(firstYield(winchBush, yields)));
    expect(stiffer.interference).toBeLessThan(plain.interference);
  });

  test("unknown yields are not judged; none known is refused, and so is one that is none", () => {
    expect(firstYield(winchBush, {}).valid).toBe(false);
    expect(firstYield(winchBush, { bush: 0 }).valid).toBe(false);
    expect(
      elasticLimit({ ...winchBush, split: "along" }, { bush: 1e8 }, "plain")
        .valid,
    ).toBe(false);
  });
});

describe("stress at the hole", () => {
  /** Lamé's, of the ring itself. */
  function ringStress(pair: typeof winchBush, interference: number): number {
    const pressure = got(contactPressure(pair, interference));
    return got(pressStresses(pair, pressure)).hole.vonMises;
  }

  test("in a plain boss is Lamé's", () => {
    fc.assert(
      fc.property(anyPair, (pair) => {
        const found = got(
          holeStressBand(pair, { low: 1e-5, high: 3e-5 }, "plain"),
        );
        expect(found.low / ringStress(pair, 1e-5)).toBeCloseTo(1, 6);
        expect(found.high / ringStress(pair, 3e-5)).toBeCloseTo(1, 6);
      }),
    );
  });

  test("of any thicker ring of the same metal lies within the bracket of a stiffer one", () => {
    fc.assert(
      fc.property(
        anyPair,
        fc.double({ min: 1, max: 50, noNaN: true }),
        (pair, times) => {
          const { low, high } = got(
            holeStressBand(pair, { low: 2e-5, high: 2e-5 }, "stiffer"),
          );
          const real = ringStress({ ...pair, boss: pair.boss * times }, 2e-5);
          expect(low).toBeLessThanOrEqual(real * (1 + 1e-6));
          expect(real).toBeLessThanOrEqual(high * (1 + 1e-6));
        },
      ),
    );
  });

  test("the case boss 30 mm round a hole of 25 mm: each pressure with its own stress", () => {
    const pair = {
      bore: 0.02,
      od: 0.025,
      boss: 0.03,
      bushMaterial: { modulus: 100e9, poisson: 0.35 },
      caseMaterial: { modulus: 72.4e9, poisson: 0.33 },
    };
    const found = got(
      holeStressBand(pair, { low: 25e-6, high: 25e-6 }, "bush-overhangs"),
    );
    // by hand, D² − d² of 225 and 275: give of the bush (1025/225 − 0.35)/100e9 = 4.20556e-11, of the boss
    // (1525/275 + 0.33)/72.4e9 = 8.11527e-11; 0.001/(sum) = 8.11634 MPa, and 0.001/4.20556e-11 = 23.77807 MPa when rigid
    // bare: k = 5.54545, √(k² + k + 1) = 6.10717 times 8.11634; rigid: √(1 − 0.33 + 0.33²) = 0.88255 times 23.77807
    expect(found.bare / 1e6).toBeCloseTo(49.568, 2);
    expect(found.rigid / 1e6).toBeCloseTo(20.985, 2);
    expect(found.high).toBe(found.bare);
    // not the rigid pressure with the bare ring's stress: 23.77807 · 6.10717 = 145 MPa
    expect(found.low).toBeLessThanOrEqual(found.rigid);
  });

  test("the boss yields where the worse of bare and rigid brings it", () => {
    const soft = { case: 20e6 };
    const stiffer = got(elasticLimit(winchBush, soft, "stiffer"));
    // the bare ring is the worse here, so that it is as in a plain one
    expect(stiffer.interference).toBeCloseTo(
      got(firstYield(winchBush, soft)).interference,
      12,
    );
    expect(stiffer.where).toBe("hole");
  });

  test("refuses reversed limits and what is no pair", () => {
    expect(
      holeStressBand(winchBush, { low: 2e-5, high: 1e-5 }, "plain").valid,
    ).toBe(false);
    expect(
      holeStressBand(
        { ...winchBush, split: "along" },
        { low: 1e-5, high: 1e-5 },
        "stiffer",
      ).valid,
    ).toBe(false);
  });
});
