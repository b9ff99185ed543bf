// The size of a journal, a hole or a bore as it is now: from its readings, or else from its limits. What a bore will be once it is cut is
// bore.ts's.
import { mean as meanOf } from "../../core/readings/statistics.ts";
import {
  guardFactor,
  judgeRange,
  type Rule,
  type Verdict,
} from "../../core/readings/verdict.ts";
import type { Budget } from "../../core/readings/budget.ts";
import {
  largestOutOfRound,
  taper as taperOf,
  type Taper,
} from "../../core/readings/form.ts";
import { showCount, showRange } from "../../core/quantity/show.ts";
import { allOf, given, valueIn } from "../entry.ts";
import {
  known,
  need,
  readingOf,
  SILENT,
  unknown,
  type Estimate,
  type Known,
} from "../known.ts";
import type { Need } from "../result.ts";
import { entryOf, query, queryOfFacts, refOf, type Shop } from "../shop.ts";
import type { LengthRange, SourcedRange } from "../values.ts";
import { finest } from "../ranges.ts";
import { materialOf, type MaterialValue } from "./material.ts";
import {
  budgetOf,
  heatWorking,
  readingsAt,
  stagesNow,
  scatterOf,
  spreadOf,
  type CorrectedReading,
  type PlaceReadings,
} from "./readings.ts";
import { correctionWorking } from "./setting.ts";
import { settings } from "./settings.ts";
import { kindOf } from "../reference.ts";

export interface Size extends Estimate {
  /** What it rests on: a bore may be foretold from the cut, or from the press of its bush. */
  readonly from: "readings" | "limits" | "cut" | "press";
  readonly places: readonly PlaceReadings[];
  /** Two-point, m; undefined where no place has two readings. */
  readonly outOfRound: number | undefined;
  readonly taper: Taper | undefined;
  /** The least certain budget of the readings used; undefined where a gauge does not say enough. */
  readonly budget: Budget | undefined;
  /** What the budget is in want of. */
  readonly budgetNeeds: readonly Need[];
}

/** What an entry is on or in, as its opening line says: of a journal or a hole its part, of a bore its bush or part, of a bush its hole. */
export const hostOf = query<string | undefined>("host", (shop, ref) => {
  const entry = entryOf(shop, ref);
  return refOf(shop, entry?.of[0]);
});

/** The material of a journal's or a hole's part, of a bore's bush or part, of a bush itself. */
export function materialOfFeature(
  shop: Shop,
  ref: string,
): Known<MaterialValue> {
  if (kindOf(ref) === "bush") return materialOf(shop, ref);
  const host = hostOf(shop, ref);
  return host === undefined ? SILENT : materialOf(shop, host);
}

/** The readings of a journal, hole or bore that count for its size as it is now. */
export const placesOf = query<Known<readonly PlaceReadings[]>>(
  "places",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined || entry.damaged) return SILENT;
    const facts = allOf(entry, "ReadFact");
    return readingsAt(shop, facts, "finished", stagesNow(facts), () =>
      materialOfFeature(shop, ref),
    );
  },
);

/** The repeats of a journal, hole or bore. */
export const repeatsOf = queryOfFacts<readonly CorrectedReading[]>(
  "repeats",
  ["RepeatFact"],
  [],
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined || entry.damaged) return [];
    const facts = allOf(entry, "RepeatFact");
    const found = readingsAt(shop, facts, "finished", stagesNow(facts), () =>
      materialOfFeature(shop, ref),
    );
    return found.known ? found.value.flatMap((place) => place.readings) : [];
  },
);

/** Measured where it has readings, else from its limits. */
export const sizeOf = query<Known<Size>>("size", (shop, ref) => {
  const entry = entryOf(shop, ref);
  if (entry === undefined || entry.damaged) return SILENT;
  const places = placesOf(shop, ref);
  if (!places.known) return places;
  if (0 < places.value.length)
    return known(sizeFromPlaces(shop, ref, places.value));
  const limits = given(entry, "LimitsFact");
  if (limits.state === "damaged") return SILENT;
  if (limits.state === "absent") return unknown(readingOf(ref));
  return known(
    sizeOfLimits(
      shop,
      limits.value,
      "size = the limits, until it is read",
      readingOf(ref),
    ),
  );
});

/** The size of an entry by such of its readings as count. */
export function sizeFromPlaces(
  shop: Shop,
  ref: string,
  places: readonly PlaceReadings[],
): Size {
  const readings = places.flatMap((place) => place.readings);
  const values = readings.flatMap((reading) => reading.values);
  const mean = meanOf(values);
  const stations = places.map((place) => ({
    diameters: place.readings.flatMap((reading) => reading.values),
    position: place.station,
  }));
  const round = largestOutOfRound(stations);
  // unnamed readings are no place along the length, and give no taper
  const named = stations.filter(
    (_, index) => places[index]?.place !== undefined,
  );
  const taper = taperOf(named);
  const { least, needs } = budgetsOf(shop, ref, readings);
  return {
    low: Math.min(...values),
    nominal: mean.valid ? mean.value : (values[0] ?? 0),
    high: Math.max(...values),
    status: "measured",
    step: finest(readings),
    from: "readings",
    places,
    outOfRound: round.valid ? round.value : undefined,
    taper: taper.valid ? taper.value : undefined,
    budget: least,
    budgetNeeds: needs,
    working: [
      {
        formula: "size = least, mean and largest of the readings at 20 °C",
        with: countsOf(ref, readings),
        source: "ISO 1",
      },
      ...correctionWorking(shop, places),
      ...heatWorking(shop, places),
    ],
  };
}

/** "near: 3 readings, far: 2 readings": how often each place was read, over all its lines. */
function countsOf(ref: string, readings: readonly CorrectedReading[]): string {
  const counts = new Map<string, number>();
  for (const { place = ref, values } of readings)
    counts.set(place, (counts.get(place) ?? 0) + values.length);
  return [...counts]
    .map(([place, count]) => `${place}: ${showCount(count, "reading")}`)
    .join(", ");
}

/** The budget that is least certain of all readings used, or what is missing for one. */
function budgetsOf(
  shop: Shop,
  ref: string,
  readings: readonly CorrectedReading[],
): { readonly least: Budget | undefined; readonly needs: readonly Need[] } {
  const material = materialOfFeature(shop, ref);
  const scatter = scatterOf(repeatsOf(shop, ref));
  let least: Budget | undefined;
  const needs: Need[] = [];
  for (const reading of readings) {
    const found = budgetOf(
      reading,
      scatter,
      material.known ? material.value : undefined,
    );
    if (found === undefined) {
      needs.push(
        reading.gauge === undefined
          ? need(ref, "read", `the gauge that read ${ref}`)
          : need(
              reading.gauge.ref,
              "uncertainty",
              `the uncertainty of ${reading.gauge.ref}`,
            ),
      );
    } else if (least === undefined || least.combined < found.combined)
      least = found;
  }
  const once = needs.filter(
    (each, index) =>
      needs.findIndex((other) => other.text === each.text) === index,
  );
  return { least: 0 < once.length ? undefined : least, needs: once };
}

/** A size that is as large as it was asked to be, until it is read. @param formula of the working */
export function sizeOfLimits(
  shop: Shop,
  limits: LengthRange & Partial<SourcedRange>,
  formula: string,
  reading: Need,
): Size {
  const { low, high, step, className, source } = limits;
  const written = showRange(low, high, settings(shop).system, step);
  return {
    low,
    nominal: (low + high) / 2,
    high,
    status: "predicted",
    step,
    from: "limits",
    places: [],
    outOfRound: undefined,
    taper: undefined,
    budget: undefined,
    budgetNeeds: [reading],
    working: [
      {
        formula,
        with: className === undefined ? written : `${className}: ${written}`,
        source: source ?? "",
      },
    ],
  };
}

export interface Judged {
  readonly verdict: Verdict;
  /** k of the guard, and the guard in m; undefined for a simple verdict or where the uncertainty is not known. */
  readonly guard: number | undefined;
  readonly factor: number | undefined;
}

/** The job's verdict on a range: each value of a measured one counts, one unknown value of a predicted one. */
export function judgeEstimate(
  shop: Shop,
  range: {
    readonly low: number;
    readonly high: number;
    readonly status: "measured" | "predicted";
  },
  limits: {
    readonly low?: number | undefined;
    readonly high?: number | undefined;
  },
  budget: Budget | undefined,
): Judged {
  const guarded =
    settings(shop).verdict === "guarded" && range.status === "measured";
  const factor =
    budget === undefined
      ? undefined
      : guardFactor(0.95, budget.effectiveDegreesOfFreedom);
  const k = factor?.valid === true ? factor.value : undefined;
  const guard =
    k === undefined || budget === undefined ? undefined : k * budget.combined;
  const rule: Rule = guarded ? { kind: "guarded", guard } : { kind: "simple" };
  const verdict = judgeRange(
    range,
    limits,
    rule,
    range.status === "measured" ? "every" : "one",
  );
  return {
    verdict: verdict.valid ? verdict.value : "unsure",
    guard: guarded ? guard : undefined,
    factor: guarded ? k : undefined,
  };
}

/** A size against its own limits; undefined where it has no limits or is not known. */
export const sizeVerdict = query<Judged | undefined>(
  "size-verdict",
  (shop, ref) => {
    const size = sizeOf(shop, ref);
    const limits = valueIn(entryOf(shop, ref), "LimitsFact");
    if (!size.known || limits === undefined || size.value.from === "limits")
      return undefined;
    return judgeEstimate(shop, size.value, limits, size.value.budget);
  },
);

/** Spread of the values of a tool's own readings. */
export function toolSpread(places: readonly PlaceReadings[]): {
  readonly values: readonly number[];
  readonly spread: number;
} {
  const values = places.flatMap((place) =>
    place.readings.flatMap((reading) => reading.values),
  );
  return { values, spread: spreadOf(values) ?? 0 };
}
