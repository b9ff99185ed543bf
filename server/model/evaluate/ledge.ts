// What a line's reamer leaves uncut at the bottom of a blind bore, and how far the journal reaches into it.
import {
  ledgeFoul,
  ledgeOf as ledgeLeft,
  type BlindBore,
  type Ledge,
  type LedgeFoul,
  type ReamerEnd,
} from "../../core/line/blind-bore.ts";
import { lengthDigits, showLength } from "../../core/quantity/show.ts";
import { given, valueIn } from "../entry.ts";
import {
  known,
  lacking,
  need,
  outside,
  SILENT,
  unknown,
  type Estimate,
  type Known,
} from "../known.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import { fitsOfBore, lineOfBore, namedIn } from "./index-of.ts";
import {
  bushOfBore,
  holeOfBore,
  reamerOfLine,
  reamerTool,
} from "./line-bores.ts";
import { settings } from "./settings.ts";
import { sizeOf } from "./size.ts";
import { stockOf } from "./stock.ts";
import { ownLength } from "./threshold.ts";

/**
 * The gap to keep between a reamer's point and the bottom of a blind hole, m, unless `warn ledge-fouls at` says another: 0.010 in.
 * Common practice, no source.
 */
const END_CLEARANCE = 0.01 * 0.0254;

export interface BlindLedge extends Estimate {
  readonly ledge: Ledge;
  readonly bore: BlindBore;
  readonly end: ReamerEnd;
}

/** The ledge in a blind bore of a line that reams; undefined for a bore that is not blind or not reamed. */
export const blindLedgeOf = query<Known<BlindLedge> | undefined>(
  "ledge",
  (shop, bore) => {
    const hole = holeOfBore(shop, bore);
    const line = lineOfBore(shop, bore);
    const holeEntry = hole === undefined ? undefined : entryOf(shop, hole);
    if (hole === undefined || holeEntry === undefined || line === undefined)
      return undefined;
    const depth = given(holeEntry, "DepthFact");
    if (depth.state === "damaged") return SILENT;
    if (depth.state === "absent" || depth.value.bottom === "through")
      return undefined;
    const reamer = reamerOfLine(shop, line);
    if (!reamer.known) return reamer;
    if (reamer.value === undefined) return undefined;
    const deep =
      depth.value.depth === undefined
        ? unknown(need(hole, "depth", `the depth of ${hole}`))
        : known(depth.value.depth.value);
    const end = boreEndOf(shop, bore, deep);
    const tool = endOf(shop, reamer.value);
    const stock = stockOf(shop, bore);
    if (!deep.known || !end.known || !tool.known || !stock.known)
      return lacking(deep, end, tool, stock);
    const blind: BlindBore = {
      depth: deep.value,
      boreEnd: end.value,
      before: stock.value.before.low,
      cut: stock.value.cut.high,
    };
    const clearance = gapKept(shop);
    const reamerEnd: ReamerEnd = { ...tool.value, endClearance: clearance };
    const kept = ledgeLeft(blind, reamerEnd);
    const touching = ledgeLeft(blind, { ...reamerEnd, endClearance: 0 });
    if (!kept.valid) return outside(kept.because);
    if (!touching.valid) return outside(touching.because);
    const { system } = settings(shop);
    const show = (value: number): string => lengthDigits(value, system);
    return known({
      low: touching.value.length,
      nominal: kept.value.length,
      high: kept.value.length,
      status: "predicted",
      step: undefined,
      ledge: kept.value,
      bore: blind,
      end: reamerEnd,
      working: [
        {
          formula:
            "depth as cut = depth of the hole − chamfer − point − gap kept to the bottom",
          with: `${show(blind.depth)} − ${show(tool.value.chamfer)} − ${show(tool.value.point)} − ${show(clearance)} = ${showLength(kept.value.cutDepth, system)}, at most to the end of the bore`,
          source: "geometry; the gap: common practice, no source",
        },
        {
          formula:
            "ledge = end of the bore − depth as cut, least with the reamer run to the bottom",
          with: `bore ends at ${show(blind.boreEnd)}${bushOfBore(shop, bore) === undefined ? "" : ", its bush flush with the mouth"}: ${showLength(touching.value.length, system)} to ${showLength(kept.value.length, system)}`,
          source: "",
        },
      ],
    });
  },
);

/** The job's own gap to the bottom, else the usual one. */
function gapKept(shop: Shop): number {
  return ownLength(shop, "ledge-fouls") ?? END_CLEARANCE;
}

/** How deep the bore goes: its bush's length, or the hole's depth. */
function boreEndOf(
  shop: Shop,
  bore: string,
  depth: Known<number>,
): Known<number> {
  const bush = bushOfBore(shop, bore);
  if (bush === undefined) return depth;
  const entry = entryOf(shop, bush);
  const length = entry === undefined ? undefined : given(entry, "LengthFact");
  if (length === undefined || length.state === "damaged") return SILENT;
  return length.state === "absent"
    ? unknown(need(bush, "length", `the length of ${bush}`))
    : known(length.value.high);
}

function endOf(
  shop: Shop,
  reamer: string,
): Known<{ readonly chamfer: number; readonly point: number }> {
  const tool = reamerTool(shop, reamer);
  if (
    tool === undefined ||
    tool.damaged.includes("chamfer") ||
    tool.damaged.includes("point")
  )
    return SILENT;
  const { chamfer, point } = tool;
  if (chamfer === undefined || point === undefined) {
    return unknown(
      ...(chamfer === undefined
        ? [need(reamer, "chamfer", `the chamfer of ${reamer}`)]
        : []),
      ...(point === undefined
        ? [need(reamer, "point", `the point of ${reamer}`)]
        : []),
    );
  }
  return known({ chamfer, point });
}

/** A journal that reaches into the ledge of a bore. */
export interface Fouling {
  readonly journal: string;
  readonly reaches: number;
  readonly foul: LedgeFoul;
}

/** The journals whose end reaches a bore's ledge. */
export const ledgeFoulsOf = query<readonly Fouling[]>(
  "ledge-fouls",
  (shop, bore) => {
    const found = blindLedgeOf(shop, bore);
    if (found?.known !== true) return [];
    return fitsOfBore(shop, bore).flatMap((fit): readonly Fouling[] => {
      const journal = namedIn(shop, fit)[0];
      const reaches =
        journal === undefined
          ? undefined
          : valueIn(entryOf(shop, journal), "ReachesFact")?.value;
      const diameter =
        journal === undefined ? undefined : largestOf(shop, journal);
      if (
        journal === undefined ||
        reaches === undefined ||
        diameter === undefined
      )
        return [];
      const foul = ledgeFoul(found.value.bore, found.value.end, {
        reach: reaches,
        diameter,
      });
      return foul.valid && foul.value.fouls
        ? [{ journal, reaches, foul: foul.value }]
        : [];
    });
  },
);

/** The largest diameter of a journal, alone, so that a reading that does not change it changes nothing here. */
const largestOf = query<number | undefined>("largest", (shop, journal) => {
  const size = sizeOf(shop, journal);
  return size.known ? size.value.high : undefined;
});
