// How near a press fit is to yielding, and the interference at which closure stops being elastic. No plasticity beyond it.
import { notValid, valid, type Answer } from "../answer.ts";
import {
  faultOf,
  interferenceFor,
  pressStresses,
  type PressedPair,
} from "./ring.ts";

/** Yield or proof stresses in Pa; what is not known is left out and not judged. */
export interface Yields {
  readonly bush?: number | undefined;
  readonly case?: number | undefined;
}

export interface YieldOnset {
  /** Contact pressure at first yield, Pa. */
  readonly pressure: number;
  /** Effective diametral interference at first yield, m: closure is not valid past it, measure after pressing. */
  readonly interference: number;
  readonly where: "bush" | "hole";
}

/**
 * Where and when the pair first yields, by von Mises in plane stress: the bush at its bore, at p = σy·(1 − d²/D²)/2; the
 * boss at its hole. The lesser decides. Refuses a pair that is none, and one with no yield known.
 * Source: Lamé's stresses of ring.ts set equal to the yield. A brittle boss (grey iron) has a proof stress in its
 * place: past that, cracking is the worry, not closure.
 */
export function firstYield(
  pair: PressedPair,
  yields: Yields,
): Answer<YieldOnset> {
  const fault = faultOf(pair);
  if (fault !== undefined) return notValid(fault);
  const perUnit = pressStresses(pair, 1);
  if (!perUnit.valid) return perUnit;
  const onsets: { pressure: number; where: "bush" | "hole" }[] = [];
  for (const [where, stress, limit] of [
    ["bush", perUnit.value.bushBore.vonMises, yields.bush],
    ["hole", perUnit.value.hole.vonMises, yields.case],
  ] as const) {
    if (limit === undefined) continue;
    if (!(0 < limit)) return notValid("a yield strength is not positive");
    onsets.push({ pressure: limit / stress, where });
  }
  const first = onsets.sort((a, b) => a.pressure - b.pressure)[0];
  if (first === undefined)
    return notValid("no yield strength is known of bush or case");
  const interference = interferenceFor(pair, first.pressure);
  if (!interference.valid) return interference;
  const { pressure, where } = first;
  return valid({ pressure, where, interference: interference.value });
}
