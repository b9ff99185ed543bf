// A press fit and its running bore at working temperature: what is left of the interference, the bore, the clearance, and when
// the case lets go. Sizes are diameters at 20 °C in m, temperatures in °C, expansions mean ones from 20 °C in 1/K.
import { notValid, valid, type Answer } from "../answer.ts";
import { growthAt } from "../quantity/growth.ts";

export interface PressAt20 {
  /** Running bore as it is at 20 °C with the bush in place. */
  readonly bore: number;
  /** The contact's diameter. */
  readonly od: number;
  /** Effective interference at 20 °C: od − hole less smoothing, not under zero. */
  readonly interference: number;
  /** Closure per unit of interference, of the bush as it now is (ring.ts). */
  readonly closure: number;
  readonly bushExpansion: number;
  readonly caseExpansion: number;
}

export interface PressAtTemperature {
  /** Effective interference there, m; nothing once the case has let go. */
  readonly interference: number;
  /** Running bore there, m. */
  readonly bore: number;
  readonly released: boolean;
}

/**
 * The press at a bush and a case temperature. Elastic, moduli as at 20 °C, −80 to 300 °C. Refuses sizes that are none.
 *
 * δ(T) = max(0, δ20 + D·[αb·(Tb−20) − αh·(Th−20)]), bore(T) = bore20·(1 + αb·(Tb−20)) + C·[δ20 − δ(T)], both δ effective.
 *
 * Derived: the bush out of its case has the bore bore20 + C·δ20; it grows with Tb, and what closes it there is C·δ(T).
 * The growth of C·δ20 itself is left out, about a millionth of the bore. Checked against finite elements with thermal
 * strain.
 */
export function pressAtTemperature(
  press: PressAt20,
  bush: number,
  housing: number,
): Answer<PressAtTemperature> {
  const fault =
    faultOf(press) ?? faultOfTemperature(bush) ?? faultOfTemperature(housing);
  if (fault !== undefined) return notValid(fault);
  const left =
    press.interference +
    press.od *
      (press.bushExpansion * (bush - 20) -
        press.caseExpansion * (housing - 20));
  const interference = Math.max(0, left);
  const bore =
    press.bore * growthAt(bush, press.bushExpansion) +
    press.closure * (press.interference - interference);
  return valid({ interference, bore, released: left <= 0 });
}

/** A size in m at a temperature: a journal, or a bore that runs in its part without a bush. Refuses as `pressAtTemperature`. */
export function sizeAtTemperature(
  size: number,
  expansion: number,
  temperature: number,
): Answer<number> {
  const fault = isExpansion(expansion)
    ? faultOfTemperature(temperature)
    : "an expansion is missing or out of all range";
  if (fault !== undefined) return notValid(fault);
  if (!(0 < size && Number.isFinite(size)))
    return notValid("a size is missing or not positive");
  return valid(size * growthAt(temperature, expansion));
}

/**
 * Temperature in °C, of bush and case alike, at which a case that grows faster lets its bush go:
 * 20 + δ20/(D·(αh − αb)). Refuses a bush that grows as fast or faster, which heat only tightens, and a release beyond 300 °C.
 */
export function releaseTemperature(
  press: Omit<PressAt20, "bore" | "closure">,
): Answer<number> {
  const fault = faultOf({ ...press, bore: press.od / 2, closure: 0 });
  if (fault !== undefined) return notValid(fault);
  const faster = press.caseExpansion - press.bushExpansion;
  if (faster <= 0)
    return notValid(
      "the bush grows as fast as the case or faster, so heat does not loosen it",
    );
  const temperature = 20 + press.interference / (press.od * faster);
  if (300 < temperature)
    return notValid("it lets go only beyond the range of a constant expansion");
  return valid(temperature);
}

function isExpansion(expansion: number): boolean {
  return 0 <= expansion && expansion < 1e-3;
}

function faultOf(press: PressAt20): string | undefined {
  if (!(0 < press.bore && press.bore < press.od && Number.isFinite(press.od)))
    return "a diameter is missing or the bush has no wall";
  if (!(0 <= press.interference && press.interference < press.od))
    return "the interference is missing or negative";
  if (!(0 <= press.closure && press.closure < 2))
    return "the closure is missing or out of all range";
  if (!isExpansion(press.bushExpansion) || !isExpansion(press.caseExpansion))
    return "an expansion is missing or out of all range";
  return undefined;
}

function faultOfTemperature(temperature: number): string | undefined {
  return -80 <= temperature && temperature <= 300
    ? undefined
    : "a temperature is outside −80 to 300 °C";
}
