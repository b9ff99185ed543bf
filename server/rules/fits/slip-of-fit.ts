// A slip in one of the two sizes of a fit, such as the other unit, makes a clearance that no machine has.
import type { Clearance } from "../../model/evaluate/fit.ts";
import { slipWords } from "../readings/slip.ts";

/** ", as if …"; "" where none explains it. */
export function slipOf({ journal, bore }: Clearance): string {
  return slipWords(bore.nominal, journal);
}
