// The diametral clearance of a bore over a journal, with its uncertainty.
// It doesn't own what clearance to want, hot clearance, or what a reamer will cut.
import { notValid, valid, type Answer } from "../answer.ts";
import { faultOfDiameters } from "./range.ts";

export interface Uncertainties {
  /** Standard uncertainty (k = 1) of the smallest size, m */
  readonly smallest: number;
  /** of the mean size, m */
  readonly mean: number;
  /** of the largest size, m */
  readonly largest: number;
}

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
  readonly uncertainties?: Uncertainties;
}

export interface Clearance {
  /** m, diametral; below zero they interfere */
  readonly least: number;
  readonly mean: number;
  readonly most: number;
  /** Standard uncertainties of the three, m; undefined where either part's are not known */
  readonly uncertainties:
    | { readonly least: number; readonly mean: number; readonly most: number }
    | undefined;
}

/**
 * Diametral clearance, m: least = smallest bore − largest journal, most = largest bore − smallest journal, mean of the
 * means. Two-point diameters don't see a form with an odd number of lobes, whose surrounding circle is larger (journal)
 * or inscribed circle smaller (bore) in diameter by the radial roundness; so roundness, where known, is added to the
 * largest journal and taken off the smallest bore. It touches the least clearance only.
 * Uncertainty: u² = uB² + uJ² − 2r·uB·uJ with r the correlation of bore and journal (a bore gauge set in the
 * micrometer that read the journal: r > 0, and the micrometer's error cancels).
 * Refuses: sizes that aren't numbers or aren't above zero, a mean outside its sizes, roundness or uncertainty below
 * zero, r outside −1 to 1. Range: any clearance, interference included.
 * Source: JCGM 100:2008 (GUM) eq. (16) for the uncertainty, from memory; roundness: geometry.
 */
export function clearance(
  bore: Sizes,
  journal: Sizes,
  correlation = 0,
): Answer<Clearance> {
  const fault =
    faultOfSizes("the bore", bore) ?? faultOfSizes("the journal", journal);
  if (fault !== undefined) return notValid(fault);
  if (!(-1 <= correlation && correlation <= 1))
    return notValid("a correlation lies between -1 and 1");

  const both = (ofBore: number, ofJournal: number): number =>
    // the root can't be of less than zero, but rounding can make it so at r = 1
    Math.sqrt(
      Math.max(
        0,
        ofBore ** 2 + ofJournal ** 2 - 2 * correlation * ofBore * ofJournal,
      ),
    );
  const uB = bore.uncertainties;
  const uJ = journal.uncertainties;
  return valid({
    least:
      bore.smallest -
      (bore.roundness ?? 0) -
      (journal.largest + (journal.roundness ?? 0)),
    mean: meanOf(bore) - meanOf(journal),
    most: bore.largest - journal.smallest,
    uncertainties:
      uB && uJ
        ? {
            least: both(uB.smallest, uJ.largest),
            mean: both(uB.mean, uJ.mean),
            most: both(uB.largest, uJ.smallest),
          }
        : undefined,
  });
}

function meanOf(sizes: Sizes): number {
  return sizes.mean ?? sizes.smallest + (sizes.largest - sizes.smallest) / 2;
}

function faultOfSizes(name: string, sizes: Sizes): string | undefined {
  const range = { low: sizes.smallest, high: sizes.largest };
  const fault = faultOfDiameters(`the size of ${name}`, range);
  if (fault !== undefined) return fault;
  const { mean, roundness, uncertainties } = sizes;
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
  const all = uncertainties
    ? [uncertainties.smallest, uncertainties.mean, uncertainties.largest]
    : [];
  if (!all.every((one) => 0 <= one && Number.isFinite(one)))
    return `the uncertainty of ${name} is below zero`;
  return undefined;
}
