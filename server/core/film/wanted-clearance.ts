// Owns rules for how much running clearance to want, before any film is reckoned. Does not own classes of fit
// (server/core/fits), nor the clearances in which the film carries (clearance-sweep.ts). All clearances are
// diametral.
import { notValid, valid, type Answer } from "../answer.ts";

/**
 * Clearance by speed, m: ψ = 0.8·v^¼ thousandths of the diameter (m), v the surface speed in m/s. Refuses a diameter
 * or a speed not above zero, and a speed over 100 m/s. Source: DIN 31652-3 (from memory).
 */
export function clearanceBySpeed(
  diameter: number,
  surfaceSpeed: number,
): Answer<number> {
  if (!(0 < diameter && diameter < Infinity))
    return notValid("a journal needs a diameter above zero");
  if (!(0 < surfaceSpeed && surfaceSpeed <= 100))
    return notValid("the rule is for surface speeds up to 100 m/s");
  return valid(0.8e-3 * surfaceSpeed ** 0.25 * diameter);
}

/**
 * Clearance by the common shop rule, m: 0.001 in per inch of diameter. Common practice, no source. Refuses a diameter
 * not above zero.
 */
export function clearanceByShopRule(diameter: number): Answer<number> {
  return 0 < diameter && diameter < Infinity
    ? valid(1e-3 * diameter)
    : notValid("a journal needs a diameter above zero");
}
