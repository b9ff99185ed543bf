// Whether a fit interferes, which fit-interferes says and the other findings of a fit leave to it.
import { metresToTenths } from "../../core/quantity/exact.ts";
import type { Clearance } from "../../model/evaluate/fit.ts";

/**
 * No clearance at the tightest place, whatever comes of what is foretold: limits that may or may not clear each other are no finding
 * until one of them is read.
 */
export function interferes({ atBest }: Clearance): boolean {
  return metresToTenths(atBest.least) <= 0;
}
