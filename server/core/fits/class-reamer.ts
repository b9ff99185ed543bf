// Owns the limits of a reamer made for a hole class. The rule itself is line/reamer-limits.ts's; what a reamer then really cuts is
// not asked here.
import { notValid, valid, type Answer } from "../answer.ts";
import { reamerLimits } from "../line/reamer-limits.ts";
import { metresToTenths, tenthsToMetres } from "../quantity/exact.ts";
import { featureOf, isoLimits, type IsoGrade } from "./iso-286.ts";
import type { Limits } from "./limits.ts";

/**
 * Limits of size (m) of the reamer for an ISO hole class at a nominal size (m), to 0.1 nm: 25 H7 gives +17 and +9 µm. Refuses what
 * `isoLimits` refuses, shaft classes, and grades so fine that whole micrometres leave no reamer. Source: DIN 1420 (see `reamerLimits`).
 */
export function classReamer(
  sizeMetres: number,
  letters: string,
  grade: IsoGrade,
): Answer<Limits> {
  const hole = isoLimits(sizeMetres, letters, grade);
  if (!hole.valid) return hole;
  if (featureOf(letters) !== "hole")
    return notValid(
      `${letters}${grade} is a shaft class, and a reamer makes holes`,
    );
  const { lower, upper, lowerDeviation, upperDeviation } = hole.value;
  const reamer = reamerLimits(
    { low: lower, high: upper },
    upperDeviation - lowerDeviation,
  );
  if (!reamer.valid) return reamer;
  return valid({
    lower: tenthsToMetres(metresToTenths(reamer.value.low)),
    upper: tenthsToMetres(metresToTenths(reamer.value.high)),
  });
}
