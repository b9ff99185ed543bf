// Whether a gauge is fine enough for what it reads: its uncertainty and its resolution against the tolerance of each size, and against the
// wanted clearance of each fit that the size makes. The two rules are kept apart.
import {
  discrimination,
  gaugeRatio,
  type Discrimination,
  type GaugeRatio,
} from "../../core/readings/gauge.ts";
import { allOf, given, type Entry } from "../entry.ts";
import { known, need, outside, SILENT, unknown, type Known } from "../known.ts";
import { entryOf, query, refOf, refsOfKind, type Shop } from "../shop.ts";
import { wanted } from "./wanted.ts";
import { gaugeValue } from "./gauge.ts";
import { fitsOfBore, fitsOfJournal } from "./index-of.ts";
import { kindOf } from "../reference.ts";
import { ownUncertainty } from "./setting.ts";

/** What a gauge has to be fine enough for. */
export interface Tolerance {
  /** The feature with limits, or the fit that wants a clearance. */
  readonly of: string;
  /** The feature that is read. */
  readonly feature: string;
  /** m */
  readonly width: number;
}

/** The tolerances that a feature's readings serve: of its own limits, and of the clearance that each of its fits wants. */
export const tolerancesOf = query<readonly Tolerance[]>(
  "tolerances",
  (shop, feature) => {
    const entry = entryOf(shop, feature);
    if (entry === undefined) return [];
    const limits = given(entry, "LimitsFact");
    const fits =
      kindOf(feature) === "journal"
        ? fitsOfJournal(shop, feature)
        : kindOf(feature) === "bore"
          ? fitsOfBore(shop, feature)
          : [];
    return [
      ...(limits.state === "given"
        ? [
            {
              of: feature,
              feature,
              width: limits.value.high - limits.value.low,
            },
          ]
        : []),
      ...fits.flatMap((fit) => {
        const want = wanted(shop, fit);
        return want?.known === true
          ? [{ of: fit, feature, width: want.value.high - want.value.low }]
          : [];
      }),
    ].filter(({ width }) => 0 < width);
  },
);

/** The gauges that a feature was read with. */
export function gaugesOf(shop: Shop, entry: Entry): readonly string[] {
  const refs = [...allOf(entry, "ReadFact"), ...allOf(entry, "RepeatFact")]
    .map(({ value }) => refOf(shop, value?.gauge))
    .filter((ref) => ref !== undefined);
  return [...new Set(refs)];
}

/** The features that a gauge reads, in the order of the file. */
const featuresRead = query<readonly string[]>("features-read", (shop, gauge) =>
  (["journal", "hole", "bore"] as const)
    .flatMap((kind) => refsOfKind(shop, kind))
    .filter((ref) => gaugesOfFeature(shop, ref).includes(gauge)),
);

const gaugesOfFeature = query<readonly string[]>("gauges-of", (shop, ref) => {
  const entry = entryOf(shop, ref);
  return entry === undefined ? [] : gaugesOf(shop, entry);
});

/** What a gauge has to be fine enough for, over all that it reads; a fit once. */
export const tolerancesRead = query<readonly Tolerance[]>(
  "tolerances-read",
  (shop, gauge) => {
    const once = new Map<string, Tolerance>();
    for (const feature of featuresRead(shop, gauge)) {
      for (const tolerance of tolerancesOf(shop, feature))
        if (!once.has(tolerance.of)) once.set(tolerance.of, tolerance);
    }
    return [...once.values()];
  },
);

/** How many tolerances of a gauge are shown where there is room for a few. */
export const FEW_TOLERANCES = 12;

/** The narrowest of them first, for which it is the least fine: no more than a few. */
export const narrowestRead = query<readonly Tolerance[]>(
  "narrowest-read",
  (shop, gauge) =>
    [...tolerancesRead(shop, gauge)]
      .sort((one, other) => one.width - other.width)
      .slice(0, FEW_TOLERANCES),
);

/** U of a gauge (k = 2): by its certificate or its largest error, whose distribution is taken as even: the larger. */
export function expandedOf(shop: Shop, gauge: string): Known<number> {
  const value = gaugeValue(shop, gauge);
  if (value === undefined || value.damaged) return SILENT;
  const own = ownUncertainty(value);
  return own === undefined
    ? unknown(need(gauge, "uncertainty", `the uncertainty of ${gauge}`))
    : known(2 * own);
}

/** T/(2U) of a gauge for a tolerance (m). */
export function ratioOf(
  shop: Shop,
  gauge: string,
  width: number,
): Known<GaugeRatio> {
  const expanded = expandedOf(shop, gauge);
  if (!expanded.known) return expanded;
  const ratio = gaugeRatio(width, expanded.value);
  return ratio.valid ? known(ratio.value) : outside(ratio.because);
}

/** Resolution of a gauge against a tolerance (m); undefined where it writes none. */
export function discriminationOf(
  shop: Shop,
  gauge: string,
  width: number,
): Discrimination | undefined {
  const value = gaugeValue(shop, gauge);
  if (value?.resolution === undefined || value.damaged) return undefined;
  const found = discrimination(value.resolution, width);
  return found.valid ? found.value : undefined;
}
