// What the difference of two sizes comes to at best, and the verdict on it: a part that is read has all of its sizes, of one that is
// foretold that size counts which would serve best.
import { metresToTenths } from "../../core/quantity/exact.ts";
import type { Band } from "../../core/quantity/band.ts";
import type { Budget } from "../../core/readings/budget.ts";
import type { Estimate, Extent } from "../known.ts";
import type { Shop } from "../shop.ts";
import { judgeEstimate, type Judged } from "./size.ts";

/** m; where a part is foretold, `least` may be over `most`. */
export interface AtBest {
  /** The most that the least of it may be. */
  readonly least: number;
  /** The least that the most of it may be. */
  readonly most: number;
}

/** A size with how it is known. */
export type Sized = Extent & Pick<Estimate, "status">;

/** Of the outer less the inner: a bore less its journal, a bush's od less its hole. */
export function differenceAtBest(outer: Sized, inner: Sized): AtBest {
  const isRead = (size: Sized): boolean => size.status === "measured";
  const smallestOuter = isRead(outer) ? outer.low : outer.high;
  const largestOuter = isRead(outer) ? outer.high : outer.low;
  const largestInner = isRead(inner) ? inner.high : inner.low;
  const smallestInner = isRead(inner) ? inner.low : inner.high;
  return {
    least: smallestOuter - largestInner,
    most: largestOuter - smallestInner,
  };
}

/** Against what is wanted, of which either end may be left open: foretold, it is out where the best that can come of it is. */
export function judgeAtBest(
  shop: Shop,
  found: Band & Pick<Estimate, "status"> & { readonly atBest: AtBest },
  want: Partial<Band>,
  budget: Budget | undefined,
): Judged {
  const judged = judgeEstimate(shop, found, want, budget);
  const { low = -Infinity, high = Infinity } = want;
  const isOut =
    metresToTenths(found.atBest.least) < metresToTenths(low) ||
    metresToTenths(high) < metresToTenths(found.atBest.most);
  return found.status === "predicted" && isOut
    ? { ...judged, verdict: "out" }
    : judged;
}
