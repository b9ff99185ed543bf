// What the picture of a line shows, as data: each bore with its journal, bush and hole where they lie along the axis, and the ledge that the
// reamer leaves. It draws nothing. Depths are from the mouth of a bore.
import { valueIn } from "../model/entry.ts";
import { boreSize } from "../model/evaluate/bore.ts";
import { bushOd } from "../model/evaluate/bush-size.ts";
import {
  clearance,
  clearanceVerdict,
  type Clearance,
} from "../model/evaluate/fit.ts";
import { fitsOfBore, namedIn } from "../model/evaluate/index-of.ts";
import { blindLedgeOf, type BlindLedge } from "../model/evaluate/ledge.ts";
import {
  bushOfBore,
  holeOfBore,
  lineBoresOf,
  type LineBore,
} from "../model/evaluate/line-bores.ts";
import { sizeOf, type Size } from "../model/evaluate/size.ts";
import type { Known } from "../model/known.ts";
import type { Verdict } from "../model/result.ts";
import { entryOf, type Shop } from "../model/shop.ts";

export interface SectionBore {
  readonly ref: string;
  /** Along the axis, m. */
  readonly from: number;
  readonly to: number;
  readonly size: Known<Size>;
  readonly fit: string | undefined;
  readonly journal: string | undefined;
  readonly journalSize: Known<Size> | undefined;
  /** Nominal diameter as written, m: drawn by where nothing is measured. */
  readonly nominal: number | undefined;
  readonly clearance: Known<Clearance> | undefined;
  readonly verdict: Verdict | undefined;
  readonly bush: string | undefined;
  readonly hole: string | undefined;
  /** Diameters, m; undefined where they are not known. */
  readonly od: number | undefined;
  readonly boss: number | undefined;
  readonly bottom: "blind" | "through" | undefined;
  /** m; undefined for a through hole, or where it is not written. */
  readonly depth: number | undefined;
  /** The end that the reamer comes in by; undefined where the bore is not blind, or bores lie on both sides of it. */
  readonly mouth: "from" | "to" | undefined;
  /** No other bore tells on which side the mouth is: it is drawn at the far end. */
  readonly mouthAssumed: boolean;
  /** How deep the journal's end goes into a blind bore, m. */
  readonly reaches: number | undefined;
  readonly ledge: Known<BlindLedge> | undefined;
}

/** In the order of cutting. */
export function sectionOf(
  shop: Shop,
  line: string,
): Known<readonly SectionBore[]> {
  const bores = lineBoresOf(shop, line);
  if (!bores.known) return bores;
  return {
    known: true,
    value: bores.value.map((bore) => boreOf(shop, bore, bores.value)),
  };
}

function boreOf(
  shop: Shop,
  { bore, from, to }: LineBore,
  all: readonly LineBore[],
): SectionBore {
  const [fit] = fitsOfBore(shop, bore);
  const journal = fit === undefined ? undefined : namedIn(shop, fit)[0];
  const bush = bushOfBore(shop, bore);
  const hole = holeOfBore(shop, bore);
  const holeEntry = hole === undefined ? undefined : entryOf(shop, hole);
  const depth = valueIn(holeEntry, "DepthFact");
  const od = bush === undefined ? undefined : bushOd(shop, bush);
  const before = all.some((each) => each.to <= from);
  const behind = all.some((each) => to <= each.from);
  const isBlind = depth?.bottom === "blind";
  return {
    ref: bore,
    from,
    to,
    size: boreSize(shop, bore),
    fit,
    journal,
    journalSize: journal === undefined ? undefined : sizeOf(shop, journal),
    nominal: [bore, journal]
      .map((ref) =>
        ref === undefined
          ? undefined
          : valueIn(entryOf(shop, ref), "NominalFact")?.value,
      )
      .find((size) => size !== undefined),
    clearance: fit === undefined ? undefined : clearance(shop, fit),
    verdict:
      fit === undefined ? undefined : clearanceVerdict(shop, fit)?.verdict,
    bush,
    hole,
    od: od?.known === true ? od.value.nominal : undefined,
    boss: valueIn(holeEntry, "BossFact")?.value,
    bottom: depth?.bottom,
    depth: isBlind ? depth.depth?.value : undefined,
    mouth: !isBlind || (before && behind) ? undefined : before ? "from" : "to",
    mouthAssumed: isBlind && !before && !behind,
    reaches:
      journal === undefined
        ? undefined
        : valueIn(entryOf(shop, journal), "ReachesFact")?.value,
    ledge: blindLedgeOf(shop, bore),
  };
}
