// Pairs of bush and boss for the tests of the press: one of the winch's, and any that can be.
import fc from "fast-check";
import type { PressedPair } from "../../../server/core/press/ring.ts";

/** A leaded-bronze bush in a cast aluminium boss: 7/8 in bore, 1 in hole, 1 3/4 in boss. */
export const winchBush: PressedPair = {
  bore: 0.022225,
  od: 0.0254,
  boss: 0.04445,
  bushMaterial: { modulus: 100e9, poisson: 0.35 },
  caseMaterial: { modulus: 72.4e9, poisson: 0.33 },
};

const elastic = fc.record({
  modulus: fc.double({ min: 2e9, max: 210e9, noNaN: true }),
  poisson: fc.double({ min: 0.2, max: 0.4, noNaN: true }),
});

/** Bush bores from a fifth to 97 % of the od, bosses from 1.1 times it to endless, any two materials of the trade. */
export const anyPair: fc.Arbitrary<PressedPair> = fc
  .record({
    od: fc.double({ min: 0.005, max: 0.3, noNaN: true }),
    inside: fc.double({ min: 0.2, max: 0.97, noNaN: true }),
    outside: fc.oneof(
      fc.double({ min: 1.1, max: 6, noNaN: true }),
      fc.constant(Infinity),
    ),
    bushMaterial: elastic,
    caseMaterial: elastic,
  })
  .map(({ od, inside, outside, bushMaterial, caseMaterial }) => ({
    od,
    bore: od * inside,
    boss: od * outside,
    bushMaterial,
    caseMaterial,
  }));
