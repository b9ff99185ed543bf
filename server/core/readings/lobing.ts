// Owns how far two- and three-point methods magnify a form with a known number of lobes, and where they are blind to it.
// The factor relates the swing of the reading over one turn to radial roundness (largest less smallest radius).
import { notValid, valid, type Answer } from "../answer.ts";

/** How the form was measured. Angles in radians. */
export type RoundnessMethod =
  /** A micrometer, a bore gauge with two contacts, an indicator over a flat: the swing of the diameter. */
  | { readonly kind: "two-point" }
  /** A part turned in a vee of included angle `angle`, the indicator on the bisector, opposite the vee or between its faces. */
  | {
      readonly kind: "vee";
      readonly angle: number;
      readonly indicator: "opposite" | "between";
    }
  /** A bore gauge or a ring with three contacts a third of a turn apart that move out alike: the swing of the diameter. */
  | { readonly kind: "three-contacts" };

/**
 * The swing of the reading per unit of radial roundness, for a form of `lobes` even lobes round the turn; never negative.
 * Vee, indicator opposite: |1 + cos n(90° + θ/2)/sin(θ/2)|; between the faces: |(−1)ⁿ − cos n(90° + θ/2)/sin(θ/2)|.
 * Two points: 2 for an even number of lobes. Three contacts: 2 where three divides the number of lobes.
 * Refuses a method that is blind to that number of lobes (a factor under a tenth: the reading would have to be multiplied by more than
 * ten), a number of lobes that is not whole or below two (one lobe is an offset centre), and an angle not between 0 and 180°.
 * Range: lobes low against the radius (first order) and of one number; contacts small against a lobe.
 * Source: vee with the indicator opposite: J. Jpn. Soc. Precis. Eng. 43 (1977) no. 514, p. 1167, abstract, there named f; the others derived
 * likewise. ISO 4292:1985 tabulates such factors (its table was not at hand).
 */
export function lobingFactor(
  method: RoundnessMethod,
  lobes: number,
): Answer<number> {
  const fault = faultOfForm(method, lobes);
  if (fault !== undefined) return notValid(fault);
  const factor = Math.abs(signedFactor(method, lobes));
  return blindUnder <= factor
    ? valid(factor)
    : notValid(`this method is blind to ${lobes} lobes`);
}

/** Why no form of so many lobes could be turned so at all, whatever the method sees of it; undefined where it could. */
export function faultOfForm(
  method: RoundnessMethod,
  lobes: number,
): string | undefined {
  if (!Number.isInteger(lobes) || lobes < 2)
    return "a form has two lobes at least, and a whole number of them";
  if (1000 < lobes) return "so many lobes are waviness or roughness, not form";
  return method.kind === "vee" && !(0 < method.angle && method.angle < Math.PI)
    ? "the included angle of a vee lies between 0 and 180°"
    : undefined;
}

/**
 * Radial roundness in m (peak to valley) from the swing of the reading in m, for a form of `lobes` lobes.
 * Refuses a swing below zero, and what lobingFactor refuses. Source: as lobingFactor.
 */
export function radialRoundness(
  swing: number,
  method: RoundnessMethod,
  lobes: number,
): Answer<number> {
  if (!(0 <= swing && swing < Infinity))
    return notValid("the swing of a reading is not below zero");
  const factor = lobingFactor(method, lobes);
  return factor.valid ? valid(swing / factor.value) : factor;
}

const blindUnder = 0.1;

function signedFactor(method: RoundnessMethod, lobes: number): number {
  switch (method.kind) {
    case "two-point":
      return lobes % 2 === 0 ? 2 : 0;
    case "three-contacts":
      return lobes % 3 === 0 ? 2 : 0;
    case "vee": {
      const half = method.angle / 2;
      const lift = Math.cos(lobes * (Math.PI / 2 + half)) / Math.sin(half);
      return method.indicator === "opposite"
        ? 1 + lift
        : (lobes % 2 === 0 ? 1 : -1) - lift;
    }
  }
}

/** The vees that are bought, by included angle in degrees: common practice, no source. */
export const usualVees: readonly number[] = [60, 90, 108, 120];

/**
 * The usual vee, indicator opposite, that shows a form of so many lobes largest: its angle in degrees and its factor; the first of equals.
 * Undefined where each of them is blind to it, as to 49 lobes.
 */
export function bestVee(
  lobes: number,
): { readonly degrees: number; readonly factor: number } | undefined {
  let best: { degrees: number; factor: number } | undefined;
  for (const degrees of usualVees) {
    const angle = (degrees * Math.PI) / 180;
    const found = lobingFactor(
      { kind: "vee", angle, indicator: "opposite" },
      lobes,
    );
    if (found.valid && (best?.factor ?? 0) + 1e-9 < found.value)
      best = { degrees, factor: found.value };
  }
  return best;
}
