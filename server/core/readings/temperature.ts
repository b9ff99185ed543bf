// Owns the way from what a gauge shows to the size at 20 °C: zero correction, the gauge's own growth, the part's growth.
// Does not own the growth of parts that run hot (fits and presses have their own), nor the uncertainty of any of it.
import { notValid, valid, type Answer } from "../answer.ts";
import { growthAt } from "../quantity/growth.ts";

/** A body at one temperature all through. */
export interface Warm {
  /** °C */
  readonly temperature: number;
  /** Mean coefficient of linear expansion from 20 °C to that temperature, per K. */
  readonly expansion: number;
}

/**
 * The scale of a gauge of which nothing else is written: steel, per K, and how far it may be off. Source: ISO 3650:1998, 6.2.2, of steel gauge
 * blocks, (11.5 ± 1.0)·10⁻⁶ (from memory).
 */
export const steelScale = { expansion: 11.5e-6, within: 1e-6 } as const;

export interface Indication {
  /** What the gauge shows, in m. */
  readonly reading: number;
  /** Added to the reading: what the gauge shows too little, in m. */
  readonly correction?: number | undefined;
  readonly part: Warm;
  /** Left out where its temperature or expansion is unknown: its scale then counts as right, as at 20 °C. */
  readonly gauge?: Warm | undefined;
}

/**
 * Size at 20 °C, in m: (reading + correction)·(1 + αg(Tg − 20)) / (1 + αp(Tp − 20)). The gauge's scale, grown, shows too little;
 * the part, grown, too much; alike in both they cancel. It is the exact form of L·(1 − α(T − 20)), which shop tables give and which
 * differs in the second order only. Refuses lengths not finite or a size not above zero, temperatures outside −50 to
 * 200 °C and expansions outside ±100e-6 per K, where a constant coefficient is not to be relied on.
 * Source: ISO 1 for 20 °C; the linear law as the National Physical Laboratory's length FAQ "How do I correct lengths to 20 °C?" gives it.
 */
export function sizeAtReference({
  reading,
  correction = 0,
  part,
  gauge,
}: Indication): Answer<number> {
  const shown = reading + correction;
  if (!(0 < shown && shown < Infinity))
    return notValid("a size is a number above zero");
  const ofPart = growth(part);
  if (!ofPart.valid) return ofPart;
  const ofGauge = gauge === undefined ? valid(1) : growth(gauge);
  return ofGauge.valid
    ? valid((shown * ofGauge.value) / ofPart.value)
    : ofGauge;
}

// what a length of 1 at 20 °C has become
function growth({ temperature, expansion }: Warm): Answer<number> {
  if (!(-50 <= temperature && temperature <= 200))
    return notValid("the temperature is not between −50 and 200 °C");
  if (!(Math.abs(expansion) <= 100e-6))
    return notValid("the expansion is not within ±100 millionths per K");
  return valid(growthAt(temperature, expansion));
}
