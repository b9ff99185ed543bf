// Owns what a hole and a shaft make together: least and most clearance and the kind of fit. Every clearance is diametral.
import { metresToTenths, tenthsToMetres } from "../quantity/exact.ts";
import type { Limits, Zone } from "./limits.ts";

export type FitKind = "clearance" | "transition" | "interference";

/** A hole and a shaft with what they make together. */
export interface FitLimits extends Clearance {
  readonly hole: Zone;
  readonly shaft: Zone;
}

/** Diametral clearance in metres between its extremes; negative is interference. */
export interface Clearance {
  readonly least: number;
  readonly most: number;
  readonly kind: FitKind;
}

/**
 * Least and most diametral clearance of a hole and a shaft, m, from their limits (of size, or as read), to the nearest 0.1 nm.
 * A fit whose least clearance is 0 is a clearance fit, one whose most is 0 an interference fit (ISO 286-1:2010, 3.3.4 and 3.3.5, from memory);
 * one that is 0 throughout counts as clearance. Limits are taken as they come: lower ≤ upper is the caller's.
 */
export function fitOf(hole: Limits, shaft: Limits): Clearance {
  const least = tenthsToMetres(
    metresToTenths(hole.lower) - metresToTenths(shaft.upper),
  );
  const most = tenthsToMetres(
    metresToTenths(hole.upper) - metresToTenths(shaft.lower),
  );
  return { least, most, kind: kindOf(least, most) };
}

/** The kind of a fit from its least and most clearance. */
export function kindOf(least: number, most: number): FitKind {
  if (0 <= least) return "clearance";
  return most <= 0 ? "interference" : "transition";
}
