// Owns the way back: from limits or a measured pair to the common classes and fits that come nearest.
import { metresToTenths, tenthsToMetres } from "../quantity/exact.ts";
import { commonClassesAt, commonFitsAt } from "./common-classes.ts";
import type { FitClass } from "./class-words.ts";
import type { Clearance } from "./fit.ts";
import type { Feature, Limits, Zone } from "./limits.ts";

/** A class and how far its limits lie from those asked: the larger of the differences at the two ends, m. */
export interface NearClass {
  readonly word: string;
  readonly zone: Zone;
  readonly distance: number;
}

/** A fit and how far its clearance lies from that asked, m. */
export interface NearFit {
  readonly word: string;
  readonly clearance: Clearance;
  /** The larger of the differences between the two ends; 0 where both are the same. */
  readonly distance: number;
  /** How far the clearance asked reaches out of the fit's; 0 where the fit holds it. */
  readonly outside: number;
}

/**
 * The common ISO classes of a feature, nearest first, for limits of size at a nominal size (all m); of equal distance the earlier in
 * the standard's list. Empty where the size is outside ISO 286. Inch classes name fits: see `nearestFits`.
 */
export function nearestClasses(
  sizeMetres: number,
  feature: Feature,
  limits: Limits,
): readonly NearClass[] {
  return commonClassesAt(sizeMetres, feature)
    .map((each) => ({
      ...each,
      distance: furthest(
        limits.lower,
        limits.upper,
        each.zone.lower,
        each.zone.upper,
      ),
    }))
    .sort((a, b) => a.distance - b.distance);
}

/**
 * The common fits of a system, nearest first, for a clearance between least and most at a nominal size (all m, diametral, negative for
 * interference): the fit that was written. Empty where the size is outside the standard.
 */
export function nearestFits(
  sizeMetres: number,
  system: FitClass["system"],
  clearance: { readonly least: number; readonly most: number },
): readonly NearFit[] {
  return fits(sizeMetres, system, clearance).sort(
    (a, b) => a.distance - b.distance,
  );
}

/**
 * The same for a measured pair, whose clearance is one value or a narrow range: first the fits that hold it, and of these the one
 * in whose middle it lies nearest; then the others by how far it reaches out.
 */
export function fitsHolding(
  sizeMetres: number,
  system: FitClass["system"],
  clearance: { readonly least: number; readonly most: number },
): readonly NearFit[] {
  const offMiddle = (fit: NearFit): number =>
    Math.abs(
      fit.clearance.least +
        fit.clearance.most -
        clearance.least -
        clearance.most,
    );
  return fits(sizeMetres, system, clearance).sort(
    (a, b) => a.outside - b.outside || offMiddle(a) - offMiddle(b),
  );
}

function fits(
  sizeMetres: number,
  system: FitClass["system"],
  asked: { readonly least: number; readonly most: number },
): NearFit[] {
  return commonFitsAt(sizeMetres, system).map(({ word, clearance }) => ({
    word,
    clearance,
    distance: furthest(
      asked.least,
      asked.most,
      clearance.least,
      clearance.most,
    ),
    outside: Math.max(
      0,
      difference(clearance.least, asked.least),
      difference(asked.most, clearance.most),
    ),
  }));
}

function furthest(
  lower: number,
  upper: number,
  otherLower: number,
  otherUpper: number,
): number {
  return Math.max(
    Math.abs(difference(lower, otherLower)),
    Math.abs(difference(upper, otherUpper)),
  );
}

/** a - b to the nearest 0.1 nm. */
function difference(a: number, b: number): number {
  return tenthsToMetres(metresToTenths(a) - metresToTenths(b));
}
