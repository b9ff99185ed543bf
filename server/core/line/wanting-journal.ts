// A journal with the clearance that it wants, and the bore sizes that give it.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import { faultOfDiameters, faultOfRange } from "./range.ts";

/** All in m. */
export interface WantingJournal {
  /** Its smallest diameter over all places */
  readonly least: number;
  /** Its largest diameter over all places, after form: with radial roundness added where known */
  readonly greatest: number;
  /** The wanted diametral clearance */
  readonly wanted: Band;
}

/** The bore sizes that one journal allows: low may pass high, and then no bore gives it what it wants everywhere. */
export interface BoreLimits {
  readonly low: number;
  readonly high: number;
}

/**
 * The bore sizes (m) that give a journal its wanted diametral clearance at every place: least clearance over the
 * largest diameter at least wanted.low, most clearance over the smallest at most wanted.high. So low = greatest +
 * wanted.low and high = least + wanted.high. Low passes high where the journal's own sizes differ by more than the
 * wanted clearance is wide. Refuses sizes that aren't above zero or are reversed. Derived from the definition.
 */
export function boreLimits(journal: WantingJournal): Answer<BoreLimits> {
  const fault =
    faultOfDiameters("the size of the journal", {
      low: journal.least,
      high: journal.greatest,
    }) ?? faultOfRange("the wanted clearance", journal.wanted);
  if (fault !== undefined) return notValid(fault);
  return valid({
    low: journal.greatest + journal.wanted.low,
    high: journal.least + journal.wanted.high,
  });
}
