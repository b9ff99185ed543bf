// What a boss that is no plain round ring of the bush's length does to closure and pressure: brackets, not values.
// The ring itself is ring.ts.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "./band.ts";
import {
  closure,
  contactPressure,
  interferenceFor,
  type PressedPair,
} from "./ring.ts";
import { firstYield, type YieldOnset, type Yields } from "./yield.ts";

/**
 * The boss round the bush: `plain` is a round ring as long as the bush; `stiffer` has more metal than that somewhere (it
 * stands past the bush, or has a flange, ribs, a blind end, a web); `bush-overhangs` leaves an end of the bush free.
 */
export type BossForm = "plain" | "stiffer" | "bush-overhangs";

/**
 * Closure of the bore per unit of interference, between two bounds. Metal beyond the plain ring can only hold the contact
 * stiffer, and nothing is stiffer than a rigid boss, so C lies between the plain ring's and the rigid boss's; a free
 * end of the bush does not close at all, so there the bracket begins at zero. A boss split across keeps its rings; one split
 * along is refused, as all that `closure` refuses.
 * Source: derived (C falls with the boss's flexibility, ring.ts); that the brackets are wide is honest, not a fault.
 */
export function closureBand(pair: PressedPair, form: BossForm): Answer<Band> {
  const plain = closure(pair);
  if (!plain.valid) return plain;
  if (form === "plain") return valid({ low: plain.value, high: plain.value });
  const rigid = closure(inRigidBoss(pair));
  if (!rigid.valid) return rigid;
  return valid({
    low: form === "bush-overhangs" ? 0 : plain.value,
    high: rigid.value,
  });
}

/**
 * Contact pressure in Pa of a band of effective interferences in m: the least of the least and the most of the most, from
 * plain boss to rigid boss where it is no plain one. For a bush that overhangs it is of the length that is held; at
 * the edges of any boss the true pressure is higher than a ring's, and this does not see it.
 */
export function pressureBand(
  pair: PressedPair,
  interference: Band,
  form: BossForm,
): Answer<Band> {
  if (interference.high < interference.low)
    return notValid("the interference's limits are reversed");
  const low = contactPressure(pair, interference.low);
  if (!low.valid) return low;
  const high = contactPressure(
    form === "plain" ? pair : inRigidBoss(pair),
    interference.high,
  );
  if (!high.valid) return high;
  return valid({ low: low.value, high: high.value });
}

/**
 * The least effective interference at which the pair may yield first (yield.ts): in a boss that is no plain ring, the
 * pressure of first yield is reached with the rigid boss's smaller interference. Refuses what `firstYield` refuses.
 */
export function elasticLimit(
  pair: PressedPair,
  yields: Yields,
  form: BossForm,
): Answer<YieldOnset> {
  const onset = firstYield(pair, yields);
  if (!onset.valid || form === "plain") return onset;
  const interference = interferenceFor(inRigidBoss(pair), onset.value.pressure);
  return interference.valid
    ? valid({ ...onset.value, interference: interference.value })
    : interference;
}

function inRigidBoss(pair: PressedPair): PressedPair {
  return { ...pair, caseMaterial: { ...pair.caseMaterial, modulus: Infinity } };
}
