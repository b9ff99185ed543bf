// A finding's threshold: the job's own where it writes one with `warn CODE at VALUE`, else the shipped default.
import type { Shop } from "../shop.ts";
import { settings } from "./settings.ts";

/** A share of something, or a length in m. */
export type Threshold =
  { readonly share: number } | { readonly length: number };

/**
 * The job's threshold for a code: a share (`40 %`), or a length. A bare number is a length in the file's unit, as everywhere; in a file
 * without a unit it says nothing. Undefined where the job writes none.
 */
export function ownThreshold(shop: Shop, code: string): Threshold | undefined {
  const written = settings(shop).warn[code];
  if (written === undefined) return undefined;
  if (written.dimension === undefined)
    return written.asLength === undefined
      ? undefined
      : { length: written.asLength };
  if (written.dimension === "length") return { length: written.value };
  return written.dimension === "ratio" ? { share: written.value } : undefined;
}

/** The length in m that the job writes for a code, where only a length means anything; undefined where it writes none, or a share. */
export function ownLength(shop: Shop, code: string): number | undefined {
  const own = ownThreshold(shop, code);
  return own !== undefined && "length" in own ? own.length : undefined;
}
