// A bush pressed into a bored round boss as two elastic rings: contact pressure, stresses, and how far the bush's
// bore closes. It does not know limits, yield, roughness, temperature or friction; those are its neighbours.
import { notValid, valid, type Answer } from "../answer.ts";

/** Elastic constants: modulus in Pa (Infinity is a rigid part), Poisson's ratio. */
export interface Elastic {
  readonly modulus: number;
  readonly poisson: number;
}

/** A hollow bush in a bored round boss. Diameters in m, at one temperature. */
export interface PressedPair {
  /** Bore of the bush; 0 is a solid plug. */
  readonly bore: number;
  /** Outside diameter of the bush, which is the hole's too. */
  readonly od: number;
  /** Outside diameter of the boss; Infinity is an endless plate. */
  readonly boss: number;
  readonly bushMaterial: Elastic;
  readonly caseMaterial: Elastic;
  /** How the boss is split, where it is. */
  readonly split?: "along" | "across" | undefined;
}

/** Principal stresses in the plane of the rings and von Mises' of them, Pa; tension is positive. */
export interface RingStress {
  readonly hoop: number;
  readonly radial: number;
  readonly vonMises: number;
}

export interface PressStresses {
  /** At the bore of the bush; of a solid plug, all through it. */
  readonly bushBore: RingStress;
  /** In the bush, at the contact. */
  readonly bushOutside: RingStress;
  /** In the boss, at the contact. */
  readonly hole: RingStress;
  readonly bossOutside: RingStress;
}

/**
 * Contact pressure in Pa of an effective diametral interference in m (what is left of od − hole after smoothing).
 * Lamé's rings of two materials in plane stress, of equal length, both elastic.
 * Refuses a negative interference, rings that are no rings, a boss split along its axis.
 * Source: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9th ed., sec. 3-16, eq. (3-56), with diameters for
 * radii and the diametral interference for the radial one, as the text there allows; derived again from
 * E·u/r = hoop − ν·radial at both faces of the contact, whose movements add up to the interference.
 */
export function contactPressure(
  pair: PressedPair,
  interference: number,
): Answer<number> {
  const fault = faultOf(pair);
  if (fault !== undefined) return notValid(fault);
  if (!Number.isFinite(interference))
    return notValid("the interference is no finite number");
  if (interference < 0)
    return notValid("the bush is smaller than the hole, so nothing is pressed");
  return valid(
    interference / (pair.od * (bushFlexibility(pair) + caseFlexibility(pair))),
  );
}

/** The effective diametral interference in m that gives a contact pressure in Pa: `contactPressure` turned round. */
export function interferenceFor(
  pair: PressedPair,
  pressure: number,
): Answer<number> {
  const fault = faultOf(pair);
  if (fault !== undefined) return notValid(fault);
  if (!Number.isFinite(pressure) || pressure < 0)
    return notValid("the pressure is no pressure");
  return valid(
    pressure * pair.od * (bushFlexibility(pair) + caseFlexibility(pair)),
  );
}

/**
 * How far the bush's bore closes on diameter, per unit of effective interference: C, a plain number. Ranges as
 * `contactPressure`; a solid plug has no bore and is refused.
 *
 * C = 2Dd/((D²−d²)·Eb) ÷ {[(D²+d²)/(D²−d²) − νb]/Eb + [(Do²+D²)/(Do²−D²) + νh]/Eh}
 *
 * Derived: under an outside pressure p the bore's hoop stress is −2pD²/(D²−d²) and its radial stress nothing, so it moves
 * by d/Eb times that; p is Lamé's of one unit of interference. A stiffer boss only raises it, and in a rigid one it is
 * 2x/((1−νb) + (1+νb)x²) with x = d/D, whose greatest value 1/√(1−νb²) is at x² = (1−νb)/(1+νb): so C may pass 1, but
 * never 1/√(1−νb²). A bush reamed in place keeps the relation, with the bore as reamed: taking stressed metal off an
 * elastic ring leaves what pressing the thinner ring would have left.
 */
export function closure(pair: PressedPair): Answer<number> {
  const fault = faultOf(pair);
  if (fault !== undefined) return notValid(fault);
  if (pair.bore === 0) return notValid("a solid plug has no bore to close");
  const { bore: d, od: D } = pair;
  const bore = (2 * D * d) / ((D * D - d * d) * pair.bushMaterial.modulus);
  return valid(bore / (bushFlexibility(pair) + caseFlexibility(pair)));
}

/**
 * Stresses in Pa at the four faces under a contact pressure in Pa. Ranges as `contactPressure`.
 * Source: Lamé's stresses, Shigley (as above) eq. (3-49), (3-50), (3-58), (3-59); plane stress, so von Mises is
 * √(hoop² − hoop·radial + radial²), eq. (5-13). The bush is worst at its bore: with b = (D²+d²)/(D²−d²) ≥ 1 it carries
 * (b+1)·p there and √(b²−b+1)·p outside, which is less.
 */
export function pressStresses(
  pair: PressedPair,
  pressure: number,
): Answer<PressStresses> {
  const fault = faultOf(pair);
  if (fault !== undefined) return notValid(fault);
  if (!Number.isFinite(pressure) || pressure < 0)
    return notValid("the pressure is no pressure");
  const bush = wall(pair.bore, pair.od);
  const boss = wall(pair.od, pair.boss);
  // a solid plug is under the same pressure in all directions of the plane, not under twice it as a pierced one is
  const bushBore =
    pair.bore === 0
      ? stress(-pressure, -pressure)
      : stress(-pressure * (bush + 1), 0);
  return valid({
    bushBore,
    bushOutside: stress(-pressure * bush, -pressure),
    hole: stress(pressure * boss, -pressure),
    bossOutside: stress(pressure * (boss - 1), 0),
  });
}

/** Why a pair is none, or nothing. */
export function faultOf(pair: PressedPair): string | undefined {
  const { bore, od, boss, bushMaterial, caseMaterial } = pair;
  if (pair.split === "along")
    return "the boss is split along its axis and is no closed ring";
  if (!(0 <= bore && 0 < od && Number.isFinite(od) && 0 < boss))
    return "a diameter is missing or not positive";
  if (!(bore < od)) return "the bush has no wall";
  if (!(od < boss)) return "the boss has no wall";
  if (!(
    0 < bushMaterial.modulus &&
    Number.isFinite(bushMaterial.modulus) &&
    0 < caseMaterial.modulus
  ))
    return "a modulus is missing or not positive";
  if (!(isPoisson(bushMaterial.poisson) && isPoisson(caseMaterial.poisson)))
    return "a Poisson's ratio is missing or not between 0 and a half";
  return undefined;
}

function isPoisson(ratio: number): boolean {
  return 0 <= ratio && ratio < 0.5;
}

/** (outer² + inner²)/(outer² − inner²), by their ratio, so that an endless boss gives 1. */
function wall(inner: number, outer: number): number {
  const ratio = (inner / outer) ** 2;
  return (1 + ratio) / (1 - ratio);
}

/** How far the contact gives way in the bush, per diameter and pressure, 1/Pa. */
function bushFlexibility({ bore, od, bushMaterial }: PressedPair): number {
  return (wall(bore, od) - bushMaterial.poisson) / bushMaterial.modulus;
}

/** How far it gives way in the boss; nothing in a rigid one. */
function caseFlexibility({ od, boss, caseMaterial }: PressedPair): number {
  return (wall(od, boss) + caseMaterial.poisson) / caseMaterial.modulus;
}

function stress(hoop: number, radial: number): RingStress {
  return {
    hoop,
    radial,
    vonMises: Math.sqrt(hoop * hoop - hoop * radial + radial * radial),
  };
}
