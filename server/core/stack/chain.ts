// An axial chain of lengths that add and take away: its end float cold and at temperature, at worst and by root-sum-square.
// Lengths in m at 20 °C, temperatures in °C. Shims are chosen in shims.ts, drawn floats are in draws.ts.
import { notValid, valid, type Answer } from "../answer.ts";
import { halfWidth, isBand, middle, type Band } from "../quantity/band.ts";
import { growthAt } from "../quantity/growth.ts";

export interface Member {
  /** 1 where its length opens the float, −1 where it closes it. */
  readonly sign: 1 | -1;
  /** Its limits, or its reading with both ends equal. */
  readonly length: Band;
}

/** A member with what makes it grow: mean expansion from 20 °C in 1/K, and its own temperature. */
export interface WarmMember extends Member {
  readonly expansion: number;
  readonly temperature: number;
}

/** All in m; negative is a chain that binds. */
export interface EndFloat {
  readonly nominal: number;
  /** Every member at its own worst limit together. */
  readonly worst: Band;
  /** Limits of all members at the same number of deviations, independent: the float's at that same number. */
  readonly rootSumSquare: Band;
}

/**
 * End float of a chain, m; negative is a chain that binds. Refuses an empty chain and reversed or missing limits.
 * Source: worst case as Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9th ed., sec. 1-13, example 1-3;
 * root-sum-square as the law of propagation for a sum (JCGM 100:2008, 5.1.2).
 */
export function endFloat(members: readonly Member[]): Answer<EndFloat> {
  if (members.length === 0) return notValid("the chain has no members");
  if (!members.every(({ length }) => isBand(length) && 0 <= length.low))
    return notValid("a member's limits are reversed, negative or missing");
  let nominal = 0;
  let worst = 0;
  let squares = 0;
  for (const { sign, length } of members) {
    nominal += sign * middle(length);
    worst += halfWidth(length);
    squares += halfWidth(length) ** 2;
  }
  const likely = Math.sqrt(squares);
  return valid({
    nominal,
    worst: { low: nominal - worst, high: nominal + worst },
    rootSumSquare: { low: nominal - likely, high: nominal + likely },
  });
}

/**
 * The same with every member grown to its own temperature: L·(1 + α·(T − 20)). Free growth: no member is squeezed. Holds from
 * −80 to 300 °C; refuses beyond, and an expansion out of all range. Source: definition of expansion; the rest as endFloat.
 */
export function endFloatAtTemperature(
  members: readonly WarmMember[],
): Answer<EndFloat> {
  for (const { expansion, temperature } of members) {
    if (!(0 <= expansion && expansion < 1e-3))
      return notValid("an expansion is missing or out of all range");
    if (!(-80 <= temperature && temperature <= 300))
      return notValid("a temperature is outside −80 to 300 °C");
  }
  return endFloat(
    members.map(({ sign, length, expansion, temperature }) => {
      const growth = growthAt(temperature, expansion);
      return {
        sign,
        length: { low: length.low * growth, high: length.high * growth },
      };
    }),
  );
}
