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

/** A fit, its clearance, and how far a pair lies out of it, m. */
export interface NearFit {
  readonly word: string;
  readonly clearance: Clearance;
  /** How far the clearance asked reaches out of the fit's; 0 where the fit holds it. */
  readonly outside: number;
}

/**
 * The nominal size (m) that a class would be written at for a part of this diameter (m): the nearest whole millimetre or 1/16 in, never zero;
 * what is made runs a little off its nominal size. Common practice, no source.
 */
export function roundSize(
  diameter: number,
  system: FitClass["system"],
): number {
  const step = system === "iso" ? 0.001 : 0.0254 / 16;
  return Math.max(step, Math.round(diameter / step) * step);
}

/**
 * The common ISO classes of a feature, nearest first, for limits of size at a nominal size (all m); of equal distance the earlier in
 * the standard's list. Empty where the size is outside ISO 286. Inch classes name fits: see `fitsHolding`.
 */
export function nearestClasses(
  sizeMetres: number,
  feature: Feature,
  limits: Limits,
): readonly NearClass[] {
  return commonClassesAt(sizeMetres, feature)
    .map((each) => ({
      ...each,
      distance: Math.max(
        Math.abs(difference(limits.lower, each.zone.lower)),
        Math.abs(difference(limits.upper, each.zone.upper)),
      ),
    }))
    .sort((a, b) => a.distance - b.distance);
}

/**
 * The common fits of a system for the clearance of a measured pair, between least and most (m, diametral, negative for interference), at a
 * nominal size (m): first the fits that hold it, and of these the one in whose middle it lies nearest; then the others by how far it
 * reaches out. Empty where the size is outside the standard.
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
    outside: Math.max(
      0,
      difference(clearance.least, asked.least),
      difference(asked.most, clearance.most),
    ),
  }));
}

/** a - b to the nearest 0.1 nm. */
function difference(a: number, b: number): number {
  return tenthsToMetres(metresToTenths(a) - metresToTenths(b));
}
