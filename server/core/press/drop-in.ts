// Temperatures at which a bush drops into its hole without pressing: the case heated, the bush frozen, or both. It warns of
// nothing; a case past its limit is for who asks to see.
import { notValid, valid, type Answer } from "../answer.ts";
import { growthAt } from "../quantity/growth.ts";

/** Sizes in m at 20 °C, mean expansions in 1/K, temperatures in °C. */
export interface DropIn {
  readonly od: number;
  readonly hole: number;
  /** Diametral gap to spare while it drops in, m. */
  readonly gap: number;
  readonly bushExpansion: number;
  readonly caseExpansion: number;
}

/** Where a constant expansion will not do: below, metals shrink less than it says; above, temper, seals and oil go. */
const dropInRange = { coldest: -80, hottest: 300 } as const;

/**
 * Temperature in °C of the case at which the hole is wider by `gap` than the bush at `bushTemperature`. No less than 20:
 * where the bush drops in anyway, 20. Refuses beyond 300 °C and a bush below −80 °C.
 * Derived: hole·(1 + αh·(Th − 20)) = od·(1 + αb·(Tb − 20)) + gap.
 */
export function caseTemperatureToDropIn(
  sizes: DropIn,
  bushTemperature = 20,
): Answer<number> {
  const fault = faultOf(sizes, bushTemperature);
  if (fault !== undefined) return notValid(fault);
  const bush = sizes.od * growthAt(bushTemperature, sizes.bushExpansion);
  const temperature =
    20 + ((bush + sizes.gap) / sizes.hole - 1) / sizes.caseExpansion;
  if (dropInRange.hottest < temperature)
    return notValid(
      "the case would have to be hotter than a press fit may be made",
    );
  return valid(Math.max(20, temperature));
}

/**
 * Temperature in °C of the bush at which it drops into a case at `caseTemperature`; no more than 20. Refuses below −80 °C
 * (dry ice), where the mean expansion from 20 °C down is smaller than the one in use (steel about a fifth less at −196 °C,
 * from memory), and a case beyond 300 °C. Derived as caseTemperatureToDropIn.
 */
export function bushTemperatureToDropIn(
  sizes: DropIn,
  caseTemperature = 20,
): Answer<number> {
  const fault = faultOf(sizes, caseTemperature);
  if (fault !== undefined) return notValid(fault);
  const hole = sizes.hole * growthAt(caseTemperature, sizes.caseExpansion);
  const temperature =
    20 + ((hole - sizes.gap) / sizes.od - 1) / sizes.bushExpansion;
  if (temperature < dropInRange.coldest)
    return notValid(
      "the bush would have to be colder than a constant expansion holds for",
    );
  return valid(Math.min(20, temperature));
}

/**
 * Both: the case at its own limit (°C), or at what it needs where that is less, and the bush as cold as that leaves, °C. Refuses a limit
 * outside 20 to 300 °C, and what bushTemperatureToDropIn refuses. Source: as the two above.
 */
export function temperaturesToDropIn(
  sizes: DropIn,
  caseLimit: number,
): Answer<{ case: number; bush: number }> {
  if (!(20 <= caseLimit && caseLimit <= dropInRange.hottest))
    return notValid("the case's limit is not known");
  const alone = caseTemperatureToDropIn(sizes);
  if (alone.valid && alone.value <= caseLimit)
    return valid({ case: alone.value, bush: 20 });
  const bush = bushTemperatureToDropIn(sizes, caseLimit);
  return bush.valid ? valid({ case: caseLimit, bush: bush.value }) : bush;
}

function faultOf(sizes: DropIn, temperature: number): string | undefined {
  const { od, hole, gap, bushExpansion, caseExpansion } = sizes;
  if (!(0 < od && 0 < hole && Number.isFinite(od * hole)))
    return "a diameter is missing or not positive";
  if (!(0 <= gap)) return "the gap to spare is missing or negative";
  if (!(
    0 < bushExpansion &&
    bushExpansion < 1e-3 &&
    0 < caseExpansion &&
    caseExpansion < 1e-3
  ))
    return "an expansion is missing or out of all range";
  if (!(
    dropInRange.coldest <= temperature && temperature <= dropInRange.hottest
  ))
    return "the other part's temperature is outside the range of a constant expansion";
  return undefined;
}
