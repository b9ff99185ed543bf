// What a gauge takes over from the gauges that it was set with: their corrections, their uncertainty, and the error that two sizes then
// have in common. Does not own a gauge's own facts (gauge.ts), nor how budgets combine (core/readings/budget.ts).
import {
  clearanceBudget,
  commonCorrelation,
  type Budget,
  type ClearanceBudget,
} from "../../core/readings/budget.ts";
import { gaugeErrorComponent } from "../../core/readings/components.ts";
import {
  showLength,
  significant,
  type System,
} from "../../core/quantity/show.ts";
import { finer } from "../ranges.ts";
import { given } from "../entry.ts";
import { known, outside, SILENT, type Known } from "../known.ts";
import type { Working } from "../result.ts";
import { entryOf, query, refOf, type Shop } from "../shop.ts";
import { gaugeValue, type GaugeValue } from "./gauge.ts";
import type { PlaceReadings } from "./readings.ts";
import { settings } from "./settings.ts";

/**
 * The gauges that a gauge was set with, the nearest first: a bore gauge set in a micrometer shows the micrometer's reading, so that what
 * the micrometer is off by it is off by too. None where it was set on a ring, whose size is written. A chain that comes back to a gauge of
 * its own is refused: no gauge in it was ever set.
 */
export const settersOf = query<Known<readonly GaugeValue[]>>(
  "setters",
  (shop, ref) => {
    const chain: GaugeValue[] = [];
    const seen = new Set([ref]);
    let from = ref;
    for (;;) {
      const entry = entryOf(shop, from);
      if (entry === undefined) return SILENT;
      const set = given(entry, "SetFact");
      if (set.state === "damaged") return SILENT;
      if (set.state === "absent" || !("with" in set.value)) return known(chain);
      const at = refOf(shop, set.value.with);
      const gauge = at === undefined ? undefined : gaugeValue(shop, at);
      if (at === undefined || gauge === undefined || gauge.damaged)
        return SILENT;
      if (seen.has(at))
        return outside(
          `${ref} is set with ${[...chain.map((each) => each.ref), at].join(", set with ")}: gauges that are set with each other were never set`,
        );
      seen.add(at);
      chain.push(gauge);
      from = at;
    }
  },
);

/** Standard uncertainty of a gauge by its certificate or its largest error, the larger, m; undefined where neither is written. */
export function ownUncertainty({
  uncertainty,
  mpe,
}: GaugeValue): number | undefined {
  const error = gaugeErrorComponent({ calibration: uncertainty, mpe });
  return error?.valid === true ? error.value.standardUncertainty : undefined;
}

/** Standard uncertainty that setting brings in, m: each gauge of the chain has its own error; undefined where none says its own. */
export function settingUncertainty(
  setters: readonly GaugeValue[],
): number | undefined {
  const own = setters.map(ownUncertainty).filter((each) => each !== undefined);
  return own.length === 0 ? undefined : Math.hypot(...own);
}

/** A line of working for each gauge whose readings are corrected, by itself or by what it was set with. */
export function correctionWorking(
  shop: Shop,
  places: readonly PlaceReadings[],
): readonly Working[] {
  const { system } = settings(shop);
  const once = new Map<string, Working>();
  for (const { readings } of places) {
    for (const { gauge, setters } of readings) {
      if (gauge === undefined || once.has(gauge.ref)) continue;
      const adds = addsOf(gauge, setters);
      if ([gauge, ...setters].every((each) => each.adds === 0)) continue;
      const step = [gauge, ...setters].reduce<number | undefined>(
        (finest, each) => finer(finest, each.addsStep),
        undefined,
      );
      once.set(gauge.ref, {
        formula:
          setters.length === 0
            ? "size = reading + what the gauge adds"
            : "size = reading + what the gauge adds + what the gauges that it was set with add",
        with: `${correctionWords(gauge, setters, system).join("; ")}${setters.length === 0 ? "" : `; ${showLength(adds, system, step)} in all`}`,
        source: "",
      });
    }
  }
  return [...once.values()];
}

/** What a gauge adds and what the gauges that it was set with add, in words; nothing of those that add nothing. */
export function correctionWords(
  gauge: GaugeValue,
  setters: readonly GaugeValue[],
  system: System,
): readonly string[] {
  const show = ({ adds, addsStep }: GaugeValue): string =>
    showLength(adds, system, addsStep);
  return [
    ...(gauge.adds === 0 ? [] : [`${gauge.ref} adds ${show(gauge)}`]),
    ...setters.flatMap((setter, index) =>
      setter.adds === 0
        ? []
        : [
            `${(setters[index - 1] ?? gauge).ref} was set with ${setter.ref}, which adds ${show(setter)}`,
          ],
    ),
  ];
}

/** The correction of a gauge's readings, m: its own, and that of every gauge in the chain that set it. */
export function addsOf(
  gauge: GaugeValue | undefined,
  setters: readonly GaugeValue[],
): number {
  return [...(gauge === undefined ? [] : [gauge]), ...setters].reduce(
    (sum, each) => sum + each.adds,
    0,
  );
}

export interface Difference {
  readonly budget: ClearanceBudget;
  /** Says what cancels; undefined where nothing does. */
  readonly working: Working | undefined;
}

/**
 * The budget of a bore less a journal (or a hole less a bush), where both have one. A gauge that stands in both chains of setting is off
 * by the same in both, and that cancels.
 */
export function differenceOf(
  bore: Side,
  journal: Side,
): Difference | undefined {
  if (bore.budget === undefined || journal.budget === undefined)
    return undefined;
  const common = commonGauges(bore.places, journal.places);
  const shared = Math.hypot(...common.map((each) => ownUncertainty(each) ?? 0));
  const correlation = commonCorrelation(bore.budget, journal.budget, {
    bore: shared,
    journal: shared,
  });
  const r = correlation.valid ? correlation.value : 0;
  const found = clearanceBudget(bore.budget, journal.budget, r);
  if (!found.valid) return undefined;
  return {
    budget: found.value,
    working:
      r === 0
        ? undefined
        : {
            formula: "u² = uB² + uJ² − 2r·uB·uJ",
            with: `r = ${significant(r, 2)}: the error of ${common.map((each) => each.ref).join(" and ")} is in both sizes, and cancels`,
            source: "JCGM 100, F.1.2.3",
          },
  };
}

interface Side {
  readonly budget: Budget | undefined;
  readonly places: readonly PlaceReadings[];
}

// only where each size was read with one gauge throughout: of several, which one gave the extreme is not the same for all that is judged
function commonGauges(
  bore: readonly PlaceReadings[],
  journal: readonly PlaceReadings[],
): readonly GaugeValue[] {
  const one = chainOf(bore);
  const other = chainOf(journal);
  // the same gauge that reads both by itself was not set in between: its errors inside and outside need not be one
  if (one[0]?.ref === other[0]?.ref) return [];
  return one.filter((each) => other.some((mate) => mate.ref === each.ref));
}

function chainOf(places: readonly PlaceReadings[]): readonly GaugeValue[] {
  const readings = places.flatMap((place) => place.readings);
  const first = readings[0];
  if (
    first?.gauge === undefined ||
    readings.some((each) => each.gauge?.ref !== first.gauge?.ref)
  )
    return [];
  return [first.gauge, ...first.setters];
}
