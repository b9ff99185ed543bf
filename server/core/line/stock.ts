// The stock that a reamer has to cut: how much there is, how much there should be, in how many passes it comes off, and
// whether it cleans up a hole that is off centre. All on diameter. It doesn't own what the reamer cuts.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import { faultOfDiameters, faultOfRange, isLess } from "./range.ts";
import {
  handStock,
  machineStock,
  machineStockShare,
  stockThresholds,
  type Drive,
  type MaterialClass,
  type StockThresholds,
} from "./stock-allowances.ts";

export interface StockAllowance {
  /** m, on diameter */
  readonly least: number;
  readonly most: number;
}

/**
 * The stock (m, on diameter) to leave for one finishing pass at that diameter (m). Advice: makers' tables differ
 * twofold. Refuses diameters not above zero, over 3 in by hand, over 2.5 in by machine.
 * Source: stock-allowances.ts, at each table.
 */
export function stockAllowance(
  diameter: number,
  material: MaterialClass,
  drive: Drive,
): Answer<StockAllowance> {
  if (!(0 < diameter)) return notValid("the diameter is not above zero");
  const row = (drive === "hand" ? handStock : machineStock).find(
    ({ upTo }) => !isLess(upTo, diameter),
  );
  if (!row)
    return notValid(
      `the table of stock for a ${drive} reamer ends at ${drive === "hand" ? "3" : "2.5"} in`,
    );
  const share = drive === "hand" ? 1 : machineStockShare[material];
  return valid({ least: row.least, most: row.most * share });
}

/**
 * The stock between a bore and the cut (m): least over the largest bore, most over the smallest; below zero the reamer
 * passes without cutting there. Refuses reversed ranges and diameters not above zero.
 */
export function stockToCut(bore: Band, cut: Band): Answer<Band> {
  const fault =
    faultOfDiameters("the bore", bore) ?? faultOfDiameters("the cut", cut);
  if (fault !== undefined) return notValid(fault);
  return valid({ low: cut.low - bore.high, high: cut.high - bore.low });
}

export interface StockVerdict {
  /** The least stock is under the threshold */
  readonly thin: boolean;
  /** The most stock is over it */
  readonly heavy: boolean;
  /** The thresholds that were used, m */
  readonly thresholds: { readonly thin: number; readonly heavy: number };
}

/** Whether stock (m) is thin or heavy for a cut of that diameter (m). Refuses what stockAllowance does, reversed stock. */
export function stockVerdict(
  stock: Band,
  diameter: number,
  material: MaterialClass,
  drive: Drive,
  own: Partial<StockThresholds> = {},
): Answer<StockVerdict> {
  const fault = faultOfRange("the stock", stock);
  if (fault !== undefined) return notValid(fault);
  const thin = own.thin ?? stockThresholds[drive].thin;
  let heavy = own.heavy ?? stockThresholds[drive].heavy;
  if (heavy === undefined) {
    const allowance = stockAllowance(diameter, material, drive);
    if (!allowance.valid) return allowance;
    heavy = allowance.value.most;
  }
  return valid({
    thin: isLess(stock.low, thin),
    heavy: isLess(heavy, stock.high),
    thresholds: { thin, heavy },
  });
}

export interface Pass {
  readonly kind: "bore" | "rough" | "finish";
  /** The diameter that it makes, m */
  readonly to: number;
  /** The most that it takes off the diameter, m */
  readonly stock: number;
}

export type PassPlan =
  | { readonly enough: true; readonly passes: readonly Pass[] }
  /** The largest bore is too near the cut: short by this much, m */
  | { readonly enough: false; readonly shortBy: number };

/**
 * The passes that bring a bore (m, its smallest and largest) to a cut of that diameter (m): one where the stock is
 * within the allowance; else a roughing reamer that leaves the middle of the allowance to finish; where even that would
 * take more than a roughing reamer does (twice the most for one pass), the bore is opened out by drill or boring bar
 * first to leave the roughing reamer its most. Twice: common practice, no source.
 * Refuses reversed or non-positive diameters and an allowance that is reversed.
 */
export function passPlan(
  bore: Band,
  cut: number,
  allowance: StockAllowance,
): Answer<PassPlan> {
  const fault =
    faultOfDiameters("the bore", bore) ??
    faultOfDiameters("the cut", { low: cut, high: cut }) ??
    faultOfRange("the allowance", {
      low: allowance.least,
      high: allowance.most,
    }) ??
    (allowance.least < 0 ? "the allowance is below zero" : undefined);
  if (fault !== undefined) return notValid(fault);
  if (isLess(cut - bore.high, allowance.least)) {
    return valid({
      enough: false,
      shortBy: allowance.least - (cut - bore.high),
    });
  }
  if (!isLess(allowance.most, cut - bore.low)) {
    return valid({
      enough: true,
      passes: [{ kind: "finish", to: cut, stock: cut - bore.low }],
    });
  }
  const left = allowance.least + (allowance.most - allowance.least) / 2;
  // the roughing reamer must clean the largest bore too, and may leave no less than the least for it
  const roughed = Math.max(
    cut - left,
    Math.min(bore.high, cut - allowance.least),
  );
  const finish: Pass = { kind: "finish", to: cut, stock: cut - roughed };
  const roughing = 2 * allowance.most;
  if (!isLess(roughing, roughed - bore.low)) {
    return valid({
      enough: true,
      passes: [
        { kind: "rough", to: roughed, stock: roughed - bore.low },
        finish,
      ],
    });
  }
  const opened = roughed - roughing;
  return valid({
    enough: true,
    passes: [
      { kind: "bore", to: opened, stock: opened - bore.low },
      { kind: "rough", to: roughed, stock: roughing },
      finish,
    ],
  });
}

export interface CleanUp {
  readonly cleansUp: boolean;
  /** Twice the offset + least stock, m, on diameter */
  readonly needed: number;
  /** How much is wanting, m; zero where it cleans up */
  readonly shortBy: number;
}

/**
 * Whether a cut on its own axis cleans up a hole that is off that axis (m, radial) with that stock (m, on diameter, over
 * the hole's largest diameter, which has its out-of-round in it): it must take off twice the offset, and the least that a
 * reamer cuts besides. A floating reamer follows the old hole and trues nothing: this is for a piloted or rigid one.
 * Refuses numbers below zero. Common practice, no source; the geometry is that of a circle in a circle.
 */
export function cleanUp(
  offset: number,
  leastStock: number,
  stock: number,
): Answer<CleanUp> {
  if (
    ![offset, leastStock].every((one) => 0 <= one && Number.isFinite(one)) ||
    !Number.isFinite(stock)
  ) {
    return notValid("offset and least stock are not below zero");
  }
  const needed = 2 * offset + leastStock;
  const cleansUp = !isLess(stock, needed);
  return valid({ cleansUp, needed, shortBy: cleansUp ? 0 : needed - stock });
}
