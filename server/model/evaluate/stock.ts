// The stock that a line has to take off each bore, what it may be, and in how many passes it comes off. All on diameter.
import {
  passPlan,
  stockAllowance,
  stockToCut,
  stockVerdict,
  type PassPlan,
  type StockAllowance,
  type StockVerdict,
} from "../../core/line/stock.ts";
import type {
  Drive,
  StockThresholds,
} from "../../core/line/stock-allowances.ts";
import type { Band } from "../../core/quantity/band.ts";
import { showRange } from "../../core/quantity/show.ts";
import {
  known,
  lacking,
  need,
  outside,
  SILENT,
  statusOf,
  unknown,
  type Estimate,
  type Extent,
  type Known,
} from "../known.ts";
import { finer } from "../ranges.ts";
import { nameOf } from "../reference.ts";
import { query, type Shop } from "../shop.ts";
import { boreBeforeCut } from "./before-cut.ts";
import { cutOf } from "./bore.ts";
import { lineOfBore } from "./index-of.ts";
import { reamerOfLine, reamerTool } from "./line-bores.ts";
import { materialClass } from "./material-class.ts";
import { reamerValue } from "./reamer.ts";
import { settings } from "./settings.ts";
import { materialOfFeature, placesOf } from "./size.ts";
import { cribRankingOf } from "./window.ts";

export interface Stock extends Estimate {
  readonly before: Extent & {
    readonly outOfRound: number | undefined;
    /** Read, and not foretold of its press. */
    readonly isRead: boolean;
  };
  readonly cut: Extent;
}

/** The cut that a bore's line will make, an adjustable reamer at the setting that is worked out for it. */
function cutSizeOf(
  shop: Shop,
  bore: string,
): Known<Extent & { readonly step: number | undefined }> {
  const line = lineOfBore(shop, bore);
  const cut = cutOf(shop, bore);
  if (line === undefined || cut === undefined)
    return unknown(
      need(
        line ?? bore,
        "ream",
        `the reamer of ${line ?? `the line of ${bore}`}`,
      ),
    );
  if (cut.known) return cut;
  const reamer = reamerOfLine(shop, line);
  if (!reamer.known || reamer.value === undefined) return cut;
  const tool = reamerValue(shop, reamer.value);
  if (!tool.known || tool.value.expands === undefined) return cut;
  const ranking = cribRankingOf(shop, line);
  if (!ranking.known) return ranking;
  const at = ranking.value.demands.findIndex((demand) => demand.bore === bore);
  const set = ranking.value.crib.find(
    (choice) => choice.reamer === reamer.value,
  )?.ranked.cuts[at];
  return set === undefined ? cut : known({ ...set, step: undefined });
}

/** The stock on a bore of a line. */
export const stockOf = query<Known<Stock>>("stock", (shop, bore) => {
  const before = boreBeforeCut(shop, bore);
  const cut = cutSizeOf(shop, bore);
  if (!before.known || !cut.known) return lacking(before, cut);
  const found = stockToCut(before.value, cut.value);
  if (!found.valid) return outside(found.because);
  const { system } = settings(shop);
  const step = finer(before.value.step, cut.value.step);
  const { low, high } = found.value;
  return known({
    low,
    nominal: cut.value.nominal - before.value.nominal,
    high,
    status: statusOf(before.value, { status: "predicted" }),
    step,
    before: {
      low: before.value.low,
      nominal: before.value.nominal,
      high: before.value.high,
      outOfRound: before.value.outOfRound,
      isRead: before.value.form !== undefined,
    },
    cut: {
      low: cut.value.low,
      nominal: cut.value.nominal,
      high: cut.value.high,
    },
    working: [
      ...before.value.working,
      {
        formula: "stock = bore as cut − bore before the cut",
        with: `${showRange(cut.value.low, cut.value.high, system, step)} − ${showRange(before.value.low, before.value.high, system, step)} = ${showRange(low, high, system, step)}`,
        source: "",
      },
    ],
  });
});

export interface Passes {
  readonly drive: Drive;
  readonly allowance: StockAllowance;
  /** "written": the reamer's own `stock`; "table": by size and material. */
  readonly from: "written" | "table";
  readonly plan: PassPlan;
}

/** The passes that take the stock off; it needs a reamer that says how it is driven. Undefined for a line that is bored or honed. */
export const passesOf = query<Known<Passes> | undefined>(
  "passes",
  (shop, bore) => {
    const stock = stockOf(shop, bore);
    if (!stock.known) return stock;
    const tool = toolOf(shop, bore);
    if (tool?.known !== true) return tool;
    const { drive, written } = tool.value;
    const { before, cut } = stock.value;
    let allowance: StockAllowance;
    if (written !== undefined)
      allowance = { least: written.low, most: written.high };
    else {
      const material = classFor(shop, bore, drive);
      if (!material.known) return material;
      const found = stockAllowance(cut.nominal, material.value, drive);
      if (!found.valid) return outside(found.because);
      allowance = found.value;
    }
    const plan = passPlan(before, cut.nominal, allowance);
    return plan.valid
      ? known({
          drive,
          allowance,
          from: written === undefined ? "table" : "written",
          plan: plan.value,
        })
      : outside(plan.because);
  },
);

interface Tool {
  readonly drive: Drive;
  readonly written: Band | undefined;
}

function toolOf(shop: Shop, bore: string): Known<Tool> | undefined {
  const line = lineOfBore(shop, bore);
  const reamer = line === undefined ? undefined : reamerOfLine(shop, line);
  if (reamer === undefined) return undefined;
  if (!reamer.known) return reamer;
  if (reamer.value === undefined) return undefined;
  const tool = reamerTool(shop, reamer.value);
  if (
    tool === undefined ||
    tool.damaged.includes("stock") ||
    tool.damaged.includes("drive")
  )
    return SILENT;
  if (tool.drive === undefined)
    return unknown(need(reamer.value, "drive", `the drive of ${reamer.value}`));
  return known({ drive: tool.drive, written: tool.stock });
}

/** By hand the allowance is the same in every material; by machine it is the class's. */
function classFor(
  shop: Shop,
  bore: string,
  drive: Drive,
): Known<"steel" | Exclude<ReturnType<typeof materialClass>, undefined>> {
  if (drive === "hand") return known("steel");
  const material = materialOfFeature(shop, bore);
  if (!material.known) return material;
  const found = materialClass(material.value.family);
  return found === undefined
    ? outside(
        `no table says how much a machine reamer takes off ${nameOf(material.value.ref)}`,
      )
    : known(found);
}

/**
 * Whether the stock of a bore is thin or heavy: by the job's own thresholds (m), else by the reamer's own `stock`, else by the shipped
 * ones. Undefined where it can't be said, and for a bore that is cut and read already.
 */
export function stockJudged(
  shop: Shop,
  bore: string,
  own: {
    readonly thin: number | undefined;
    readonly heavy: number | undefined;
  },
):
  | {
      readonly stock: Stock;
      readonly verdict: StockVerdict;
      readonly drive: Drive;
    }
  | undefined {
  const stock = stockOf(shop, bore);
  const tool = toolOf(shop, bore);
  if (!stock.known || tool?.known !== true || isCut(shop, bore))
    return undefined;
  const { drive, written } = tool.value;
  const material = classFor(shop, bore, drive);
  const thin = own.thin ?? written?.low;
  const heavy = own.heavy ?? written?.high;
  // the class only counts where a table is looked into
  if (!material.known && heavy === undefined) return undefined;
  const thresholds: Partial<StockThresholds> = {
    ...(thin === undefined ? {} : { thin }),
    ...(heavy === undefined ? {} : { heavy }),
  };
  const verdict = stockVerdict(
    stock.value,
    stock.value.cut.nominal,
    material.known ? material.value : "steel",
    drive,
    thresholds,
  );
  return verdict.valid
    ? { stock: stock.value, verdict: verdict.value, drive }
    : undefined;
}

/** It has readings of its finished size. */
export const isCut = query<boolean>("is-cut", (shop, bore) => {
  const places = placesOf(shop, bore);
  return places.known && 0 < places.value.length;
});
