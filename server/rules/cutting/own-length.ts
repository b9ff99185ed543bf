// A job's own threshold for the findings of a cut, where only a length means anything.
import type { Shop } from "../../model/shop.ts";
import { ownThreshold } from "../threshold.ts";

/** The length in m that the job writes for a code; undefined where it writes none, or a share. */
export function ownLength(shop: Shop, code: string): number | undefined {
  const own = ownThreshold(shop, code);
  return own !== undefined && "length" in own ? own.length : undefined;
}
