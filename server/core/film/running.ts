// Owns how fast the surfaces slide and how hard they are pressed: surface speed, specific load, PV.
// Does not own what a material bears of them (server/core/materials), nor whether a film carries.
import { notValid, valid, type Answer } from "../answer.ts";

/**
 * Surface speed of a turning journal, m/s: π·d·N, diameter in m, N in turns per second (its sign doesn't count).
 * Refuses a diameter not above zero and a speed not finite. Source: arc length.
 */
export function turningSpeed(
  diameter: number,
  turnsPerSecond: number,
): Answer<number> {
  if (!positive(diameter))
    return notValid("a journal needs a diameter above zero");
  if (!Number.isFinite(turnsPerSecond))
    return notValid("a turning journal needs a speed");
  return valid(Math.PI * diameter * Math.abs(turnsPerSecond));
}

/**
 * Mean surface speed of an oscillating journal, m/s: 2·φ·r·f, with φ the total angle from end to end in rad (the
 * bearing maker's β is half of it) and f the full cycles per second: each cycle goes there and back. The greatest
 * speed, in mid-swing, is π/2 times that where the swing is a sine. Refuses what isn't above zero. Source: arc
 * length; derived here.
 */
export function oscillatingSpeed(
  diameter: number,
  totalAngle: number,
  cyclesPerSecond: number,
): Answer<number> {
  if (!positive(diameter))
    return notValid("a journal needs a diameter above zero");
  if (!positive(totalAngle) || !positive(cyclesPerSecond))
    return notValid(
      "an oscillating journal needs an angle and a frequency above zero",
    );
  return valid(totalAngle * diameter * cyclesPerSecond);
}

/**
 * Specific load, Pa: the load in N on the projected area d·L, in m. Refuses a load below zero and a size not above
 * zero. Source: definition.
 */
export function specificLoad(
  load: number,
  diameter: number,
  length: number,
): Answer<number> {
  if (!positive(diameter) || !positive(length))
    return notValid(
      "a projected area needs a diameter and a length above zero",
    );
  if (!(0 <= load && load < Infinity))
    return notValid("a load is zero or above");
  return valid(load / (diameter * length));
}

/** Specific load times surface speed, Pa·m/s. Refuses what isn't a finite number of zero or above. */
export function pressureTimesSpeed(
  pressure: number,
  speed: number,
): Answer<number> {
  if (!(0 <= pressure && pressure < Infinity && 0 <= speed && speed < Infinity))
    return notValid("a specific load and a speed are zero or above");
  return valid(pressure * speed);
}

function positive(value: number): boolean {
  return 0 < value && value < Infinity;
}
