// The pack of shims that brings an end float to what is wanted.
import type { Band } from "../../core/quantity/band.ts";
import { metresToTenths, tenthsToMetres } from "../../core/quantity/exact.ts";

/**
 * The least and the greatest pack, m, of a float as it is and as it is wanted; below zero there is nothing to take up. In whole tenths of a
 * nanometre, as verdicts are: a float that varies by just what is wanted has one pack.
 */
export function packFor(
  is: Band,
  wanted: Band,
): { readonly least: number; readonly greatest: number } {
  const less = (one: number, other: number): number =>
    tenthsToMetres(metresToTenths(one) - metresToTenths(other));
  return {
    least: less(is.high, wanted.high),
    greatest: less(is.low, wanted.low),
  };
}
