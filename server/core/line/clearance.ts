// The diametral clearance of a bore over a journal.
// It doesn't own its uncertainty (../readings/budget.ts), what clearance to want, hot clearance, or what a reamer will cut.
import { notValid, valid, type Answer } from "../answer.ts";
import { faultOfDiameters } from "./range.ts";

/** The diameters of one bore or journal: of readings, of limits, or as predicted. */
export interface Sizes {
  /** m */
  readonly smallest: number;
  /** m */
  readonly largest: number;
  /** m; where it isn't given, halfway between the two */
  readonly mean?: number;
  /** Roundness where known: the radial deviation from peak to valley (ISO 12181), m */
  readonly roundness?: number;
}

export interface Clearance {
  /** m, diametral; below zero they interfere */
  readonly least: number;
  readonly mean: number;
  readonly most: number;
}

/**
 * Diametral clearance, m: least = smallest bore − largest journal, most = largest bore − smallest journal, mean of the
 * means. Two-point diameters don't see a form with an odd number of lobes, whose surrounding circle is larger (journal)
 * or inscribed circle smaller (bore) in diameter by the radial roundness; so roundness, where known, is added to the
 * largest journal and taken off the smallest bore. It touches the least clearance only.
 * Refuses: sizes that aren't numbers or aren't above zero, a mean outside its sizes, a roundness below zero.
 * Range: any clearance, interference included. Source: geometry.
 */
export function clearance(bore: Sizes, journal: Sizes): Answer<Clearance> {
  const fault =
    faultOfSizes("the bore", bore) ?? faultOfSizes("the journal", journal);
  if (fault !== undefined) return notValid(fault);
  return valid({
    least:
      bore.smallest -
      (bore.roundness ?? 0) -
      (journal.largest + (journal.roundness ?? 0)),
    mean: meanOf(bore) - meanOf(journal),
    most: bore.largest - journal.smallest,
  });
}

function meanOf(sizes: Sizes): number {
  return sizes.mean ?? sizes.smallest + (sizes.largest - sizes.smallest) / 2;
}

function faultOfSizes(name: string, sizes: Sizes): string | undefined {
  const range = { low: sizes.smallest, high: sizes.largest };
  const fault = faultOfDiameters(`the size of ${name}`, range);
  if (fault !== undefined) return fault;
  const { mean, roundness } = sizes;
  // a mean of equal readings may miss them by the rounding of a sum
  const room = 1e-12;
  if (
    mean !== undefined &&
    !(range.low - room <= mean && mean <= range.high + room)
  ) {
    return `the mean of ${name} lies outside its sizes`;
  }
  if (
    roundness !== undefined &&
    !(0 <= roundness && Number.isFinite(roundness))
  ) {
    return `the roundness of ${name} is below zero`;
  }
  return undefined;
}
