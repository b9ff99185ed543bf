// Friction at the contact: the force that presses the bush in, and the torque that it holds. Pressure comes from ring.ts.
import { notValid, valid, type Answer } from "../answer.ts";
import { isBand, type Band } from "../quantity/band.ts";

/** Friction of a press fit where none is written; common practice for oiled to dry metal, no source. */
export const usualFriction: Band = { low: 0.05, high: 0.15 };

/** Least friction torque of the fit over the journal's at which the bush is taken to hold; common practice, no source. */
export const usualHolding = 2;

/**
 * Force in N at the end of the stroke, where the whole length is engaged: μ·p·π·D·L, from the least pressure with the
 * least friction to the most with the most. Pressure in Pa, od and engaged length in m. Refuses negative or reversed values.
 * Source: Shigley's Mechanical Engineering Design, 9th ed., eq. (7-48). Galling and a bush that is cocked cost more.
 */
export function pressForce(
  pressure: Band,
  od: number,
  length: number,
  friction: Band,
): Answer<Band> {
  const fault = faultOf(pressure, od, length, friction);
  if (fault !== undefined) return notValid(fault);
  const area = Math.PI * od * length;
  return valid({
    low: friction.low * pressure.low * area,
    high: friction.high * pressure.high * area,
  });
}

/**
 * Torque in N·m at which the bush turns in its hole: μ·p·π·D²·L/2, both ends as `pressForce`.
 * Source: the same, eq. (7-49).
 */
export function torqueCapacity(
  pressure: Band,
  od: number,
  length: number,
  friction: Band,
): Answer<Band> {
  const force = pressForce(pressure, od, length, friction);
  if (!force.valid) return force;
  return valid({
    low: (force.value.low * od) / 2,
    high: (force.value.high * od) / 2,
  });
}

function faultOf(
  pressure: Band,
  od: number,
  length: number,
  friction: Band,
): string | undefined {
  if (!isBand(pressure) || pressure.low < 0)
    return "the pressure is missing, negative or reversed";
  if (!(0 < od && 0 < length && Number.isFinite(od * length)))
    return "a diameter or length is missing or not positive";
  if (!isBand(friction) || friction.low < 0 || 1 < friction.high)
    return "the friction is not between 0 and 1";
  return undefined;
}
