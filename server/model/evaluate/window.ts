// The window of bore sizes that a line's journals allow, and the reamers ranked against it.
import {
  rankReamers,
  sizeToGrind,
  type CutConditions,
  type RankedReamer,
  type SizeToGrind,
} from "../../core/line/reamer-ranking.ts";
import { lineWindow, type LineWindow } from "../../core/line/reamer-window.ts";
import { sizesToBuy, type SizeToBuy } from "../../core/line/sizes-to-buy.ts";
import type { Band } from "../../core/quantity/band.ts";
import { given } from "../entry.ts";
import {
  everyKnown,
  known,
  need,
  outside,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import type { Status } from "../result.ts";
import { entryOf, query, refsOfKind, type Shop } from "../shop.ts";
import { wanted } from "./wanted.ts";
import { boresOfLine, fitsOfBore, namedIn } from "./index-of.ts";
import { cutConditions, reamerValue } from "./reamer.ts";
import { journalAsMet } from "./roundness.ts";

/** One demand on the bore that a line cuts: a journal's, or the bore's own limits. */
export interface Demand {
  readonly bore: string;
  /** The fit that makes it; undefined for the bore's own limits. */
  readonly fit: string | undefined;
  readonly journal: string | undefined;
  readonly least: number;
  /** With what the journal's lobes take. */
  readonly greatest: number;
  readonly wanted: Band;
  readonly status: Exclude<Status, "unknown">;
  readonly step: number | undefined;
}

/** All that is asked of the bores of a line. */
const demandsOf = query<Known<readonly Demand[]>>("demands", (shop, line) => {
  const all = boresOfLine(shop, line).flatMap(
    (bore): readonly Known<Demand>[] => {
      const fits = fitsOfBore(shop, bore).flatMap(
        (fit) => demandOfFit(shop, bore, fit) ?? [],
      );
      const own = demandOfLimits(shop, bore);
      if (fits.length === 0 && own === undefined) {
        return [
          unknown(
            need(bore, "limits", `a fit with \`want\`, or limits, of ${bore}`),
          ),
        ];
      }
      return own === undefined ? fits : [...fits, own];
    },
  );
  return everyKnown(all);
});

function demandOfFit(
  shop: Shop,
  bore: string,
  fit: string,
): Known<Demand> | undefined {
  const want = wanted(shop, fit);
  if (want === undefined) return undefined;
  if (!want.known) return want;
  const journal = namedIn(shop, fit)[0];
  if (journal === undefined) return SILENT;
  const met = journalAsMet(shop, journal);
  if (!met.known) return met;
  const { low, status, step } = met.value.size;
  return known({
    bore,
    fit,
    journal,
    least: low,
    greatest: met.value.greatest,
    wanted: { low: want.value.low, high: want.value.high },
    status,
    step,
  });
}

/** Limits of the bore itself, as a journal of their lower limit that wants no clearance up to all of the tolerance. */
function demandOfLimits(shop: Shop, bore: string): Known<Demand> | undefined {
  const entry = entryOf(shop, bore);
  const limits = entry === undefined ? undefined : given(entry, "LimitsFact");
  if (limits === undefined || limits.state === "absent") return undefined;
  if (limits.state === "damaged") return SILENT;
  const { low, high, step } = limits.value;
  return known({
    bore,
    fit: undefined,
    journal: undefined,
    least: low,
    greatest: low,
    wanted: { low: 0, high: high - low },
    status: "measured",
    step,
  });
}

/** One at least: of a line without bores nothing is asked, and no window is known. */
export type Demands = readonly [Demand, ...Demand[]];

export interface LineDemands {
  readonly demands: Demands;
  readonly window: LineWindow;
}

export const windowOf = query<Known<LineDemands>>("window", (shop, line) => {
  const demands = demandsOf(shop, line);
  if (!demands.known) return demands;
  const [first, ...others] = demands.value;
  if (first === undefined)
    return unknown(need(line, "bore", `the bores of ${line}`));
  const window = lineWindow(demands.value);
  return window.valid
    ? known({ demands: [first, ...others], window: window.value })
    : outside(window.because);
});

export interface Choice {
  /** A reference of the crib, or undefined for a size to buy. */
  readonly reamer: string | undefined;
  readonly toBuy: SizeToBuy | undefined;
  readonly ranked: RankedReamer;
}

export interface CribRanking {
  readonly demands: Demands;
  /** The crib's reamers that could be worked out, best first, those that serve before those that don't. */
  readonly crib: readonly Choice[];
}

export interface Ranking extends CribRanking {
  /** Sizes to buy that serve, best first. */
  readonly toBuy: readonly Choice[];
  readonly toGrind: SizeToGrind | undefined;
}

/** How a reamer, or any at all, cuts each bore of a line. */
function cutsOf(
  shop: Shop,
  line: string,
  demands: readonly Demand[],
  reamer: string | undefined,
): Known<readonly CutConditions[]> {
  return everyKnown(
    demands.map((demand) => cutConditions(shop, reamer, line, demand.bore)),
  );
}

/** The reamers of the crib for a line: all that is asked of most lines with each keystroke, since one of them serves. */
export const cribRankingOf = query<Known<CribRanking>>(
  "crib-ranking",
  (shop, line) => {
    const window = windowOf(shop, line);
    if (!window.known) return window;
    const { demands } = window.value;
    const refs = refsOfKind(shop, "reamer").filter(
      (ref) => reamerValue(shop, ref).known,
    );
    const cribRefs: string[] = [];
    const cribReamers = refs.flatMap((ref) => {
      const value = reamerValue(shop, ref);
      const cuts = cutsOf(shop, line, demands, ref);
      if (!value.known || !cuts.known) return [];
      cribRefs.push(ref);
      const { size, expands } = value.value;
      return [
        {
          size,
          cuts: cuts.value,
          ...(expands === undefined
            ? {}
            : { expands: { low: expands.low, high: expands.high } }),
        },
      ];
    });
    const ranked = rankReamers(demands, cribReamers);
    if (!ranked.valid) return outside(ranked.because);
    const crib = ranked.value.map((each): Choice => ({
      reamer: cribRefs[each.index],
      toBuy: undefined,
      ranked: each,
    }));
    return known({ demands, crib });
  },
);

/** The same with the sizes that could be bought or ground. */
export const rankingOf = query<Known<Ranking>>("ranking", (shop, line) => {
  const window = windowOf(shop, line);
  if (!window.known) return window;
  const ranking = cribRankingOf(shop, line);
  if (!ranking.known) return ranking;
  const { demands, crib } = ranking.value;
  const anyCuts = cutsOf(shop, line, demands, undefined);
  if (!anyCuts.known)
    return known({ demands, crib, toBuy: [], toGrind: undefined });
  const toGrind = sizeToGrind(demands, anyCuts.value);
  return known({
    demands,
    crib,
    toBuy: buyable(demands, anyCuts.value, window.value.window),
    toGrind: toGrind.valid ? toGrind.value : undefined,
  });
});

function buyable(
  demands: Demands,
  cuts: readonly CutConditions[],
  window: LineWindow,
): readonly Choice[] {
  if (!window.open) return [];
  // a size outside the window by more than a reamer's own limits can't serve
  const room = 50e-6;
  const sizes = sizesToBuy({
    low: window.window.low - room,
    high: window.window.high + room,
  });
  const ranked = rankReamers(
    demands,
    sizes.map((size) => ({
      size: {
        kind: "written" as const,
        low: size.limits.low,
        high: size.limits.high,
      },
      cuts,
    })),
  );
  if (!ranked.valid) return [];
  return ranked.value
    .filter((each) => each.serves)
    .map((each) => ({
      reamer: undefined,
      toBuy: sizes[each.index],
      ranked: each,
    }));
}
