// By how much something is over or under a bound, in a sentence: with digits enough that it never reads as nothing.
import {
  UNIT_OF_SYSTEM,
  decimalsFor,
  lengthDigits,
  showLength,
  type System,
} from "../core/quantity/show.ts";

/** The step to show an excess in, and the value that has it: the value's own, or finer where the excess is. All in m. */
export function stepOfExcess(
  excess: number,
  step: number | undefined,
): number | undefined {
  return step === undefined ? excess : Math.min(step, excess);
}

/** "0.0002 in", or "less than 0.000001 in" where the finest digits that are shown would read as nothing. */
export function showExcess(
  excess: number,
  system: System,
  step: number | undefined,
): string {
  const shown = stepOfExcess(excess, step);
  if (Number(lengthDigits(excess, system, shown)) !== 0)
    return showLength(excess, system, shown);
  const unit = UNIT_OF_SYSTEM[system];
  const least = 10 ** -decimalsFor(shown, system);
  return `less than ${least.toFixed(decimalsFor(shown, system))} ${unit}`;
}
