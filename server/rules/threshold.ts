// A finding's threshold: the job's own where it writes one with `warn CODE at VALUE`, else the shipped default.
import { settings } from "../model/evaluate/settings.ts";
import type { Shop } from "../model/shop.ts";

/** A share of something, or a length in m. */
export type Threshold =
  { readonly share: number } | { readonly length: number };

/** The job's threshold for a code as a share (`40 %`, `0.4`) or a length with its unit; undefined where it writes none. */
export function ownThreshold(shop: Shop, code: string): Threshold | undefined {
  const written = settings(shop, "job").warn[code];
  if (written === undefined) return undefined;
  return written.dimension === "length"
    ? { length: written.value }
    : { share: written.value };
}

/** The job's threshold for a code that is a length: a bare number is one in the file's unit. */
export function ownLength(shop: Shop, code: string): number | undefined {
  const written = settings(shop, "job").warn[code];
  if (written === undefined) return undefined;
  return written.dimension === "length" ? written.value : written.asLength;
}
