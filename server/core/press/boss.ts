// What a boss that is no plain round ring of the bush's length does to closure and pressure: brackets, not values.
// The ring itself is ring.ts.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
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
 * the edges of any boss the true pressure is higher than a ring's, and this does not see it. Refuses reversed limits, and what
 * `contactPressure` refuses. Source: ring.ts.
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

/** Von Mises stress in the boss at the hole, Pa. */
export interface HoleStress extends Band {
  /** At the most interference, in the bare ring and in a boss that does not give at all. */
  readonly bare: number;
  readonly rigid: number;
}

/**
 * Stress in the boss at the hole, Pa, of a band of effective interferences in m. In a boss that is no plain ring pressure and stress are
 * taken together: the hole opens by what the bush does not close by, so its hoop strain is interference/D − p·fb (fb: the bush's own
 * give per diameter and Pa), its hoop stress E·strain − ν·p, its radial stress −p. The stiffer the boss the higher p and the less it is
 * stretched; a rigid one has a hoop stress of −ν·p. Von Mises' square is a parabola in p, so its most is at an end of the
 * bracket of p and its least there or at the vertex. Refuses what `contactPressure` refuses.
 * Source: Hooke's law in plane stress at the hole; for a plain ring it is Lamé's stress (ring.ts).
 */
export function holeStressBand(
  pair: PressedPair,
  interference: Band,
  form: BossForm,
): Answer<HoleStress> {
  if (interference.high < interference.low)
    return notValid("the interference's limits are reversed");
  for (const each of [interference.low, interference.high]) {
    const fault = contactPressure(pair, each);
    if (!fault.valid) return fault;
  }
  const bare = contactPressure(pair, 1);
  const rigid = contactPressure(inRigidBoss(pair), 1);
  if (!bare.valid) return bare;
  if (!rigid.valid) return rigid;
  const { modulus, poisson } = pair.caseMaterial;
  // per metre of interference: hoop = a − b·p
  const a = modulus / pair.od;
  const b = modulus / (pair.od * rigid.value) + poisson;
  const at = (pressure: number, hoop: number): number =>
    Math.sqrt(hoop * hoop + hoop * pressure + pressure * pressure);
  const ofRigid = at(rigid.value, -poisson * rigid.value);
  const ofBare = Number.isFinite(modulus)
    ? at(bare.value, a - b * bare.value)
    : ofRigid;
  const isPlain = form === "plain" || !Number.isFinite(modulus);
  const vertex = (2 * a * b - a) / (2 * (b * b - b + 1));
  const least =
    isPlain || vertex < bare.value || rigid.value < vertex
      ? Math.min(ofBare, isPlain ? ofBare : ofRigid)
      : at(vertex, a - b * vertex);
  const most = Math.max(ofBare, isPlain ? ofBare : ofRigid);
  return valid({
    low: least * interference.low,
    high: most * interference.high,
    bare: ofBare * interference.high,
    rigid: ofRigid * interference.high,
  });
}

/**
 * The least effective interference at which the pair may yield first (yield.ts). In a boss that is no plain ring the bush yields with the
 * rigid boss's smaller interference, the boss where the worse of bare and rigid brings it there, each pressure with its own
 * stress (holeStressBand). Refuses what `firstYield` refuses.
 */
export function elasticLimit(
  pair: PressedPair,
  yields: Yields,
  form: BossForm,
): Answer<YieldOnset> {
  const onset = firstYield(pair, yields);
  if (!onset.valid || form === "plain") return onset;
  const rigid = inRigidBoss(pair);
  const onsets: YieldOnset[] = [];
  if (yields.bush !== undefined) {
    const ofBush = firstYield(pair, { bush: yields.bush });
    if (!ofBush.valid) return ofBush;
    const interference = interferenceFor(rigid, ofBush.value.pressure);
    if (!interference.valid) return interference;
    onsets.push({ ...ofBush.value, interference: interference.value });
  }
  if (yields.case !== undefined) {
    const perMetre = holeStressBand(pair, { low: 1, high: 1 }, form);
    if (!perMetre.valid) return perMetre;
    const interference = yields.case / perMetre.value.high;
    const worse = perMetre.value.bare < perMetre.value.rigid ? rigid : pair;
    const pressure = contactPressure(worse, interference);
    if (!pressure.valid) return pressure;
    onsets.push({ pressure: pressure.value, interference, where: "hole" });
  }
  return valid(
    onsets.reduce(
      (first, each) => (each.interference < first.interference ? each : first),
      onsets[0] ?? onset.value,
    ),
  );
}

function inRigidBoss(pair: PressedPair): PressedPair {
  return { ...pair, caseMaterial: { ...pair.caseMaterial, modulus: Infinity } };
}
