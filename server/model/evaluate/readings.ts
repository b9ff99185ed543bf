// From reading lines to diameters at 20 °C, place by place: which readings count, their corrections, and the budget of their
// uncertainty. What follows for the size is size.ts's.
import { budget, type Budget } from "../../core/readings/budget.ts";
import {
  sizeComponents,
  type SizeFacts,
} from "../../core/readings/components.ts";
import {
  pooledRepeatability,
  standardDeviation,
  type Repeatability,
} from "../../core/readings/statistics.ts";
import { strayAmong, type StrayTest } from "../../core/readings/stray.ts";
import {
  sizeAtReference,
  steelScale,
} from "../../core/readings/temperature.ts";
import { showTemperature } from "../../core/quantity/show.ts";
import type { Fact } from "../entry.ts";
import { everyKnown, known, outside, SILENT, type Known } from "../known.ts";
import { finest } from "../ranges.ts";
import type { Working } from "../result.ts";
import { refOf, type Shop } from "../shop.ts";
import type { Reading, Span, Stage } from "../values.ts";
import { gaugeValue, type GaugeValue } from "./gauge.ts";
import { propertyOf, showExpansion, type MaterialValue } from "./material.ts";
import { addsOf, settersOf, settingUncertainty } from "./setting.ts";
import { settings } from "./settings.ts";

/** A reading line that counts, corrected to 20 °C. */
export interface CorrectedReading {
  readonly place: string | undefined;
  /** m at 20 °C. */
  readonly values: readonly number[];
  readonly valueSpans: readonly Span[];
  readonly station: number | undefined;
  readonly gauge: GaugeValue | undefined;
  /** The gauges that it was set with, the nearest first. */
  readonly setters: readonly GaugeValue[];
  readonly gaugeWritten: boolean;
  readonly date: string | undefined;
  /** Step of the last written digit, m. */
  readonly step: number | undefined;
  /** °C */
  readonly temperature: number;
  /** The step of its last written digit, K; undefined where the line has none. */
  readonly temperatureStep: number | undefined;
  readonly temperatureAssumed: boolean;
  /** Of the gauge, °C: the part's, unless the line says another. */
  readonly gaugeTemperature: number;
  /** The step of its last written digit, K; undefined where it is taken as the part's. */
  readonly gaugeTemperatureStep: number | undefined;
  /** Of the part, 1/K; 0 where the part was at 20 °C, for then it is not asked for. */
  readonly expansion: number;
  /** The length that 20 °C takes off the reading, m. */
  readonly heat: number;
  readonly span: Span;
}

/** The readings of one place that count. */
export interface PlaceReadings {
  readonly place: string | undefined;
  readonly station: number | undefined;
  readonly readings: readonly CorrectedReading[];
}

/**
 * The stages that tell what a part is now, the first that has readings: what it was after it ran, before what it was when it was made;
 * unless it was finished anew since, and both are dated.
 */
export function stagesNow(
  facts: readonly Fact<
    "ReadFact" | "RepeatFact" | "SwingFact" | "BoreSwingFact"
  >[],
): readonly Stage[] {
  const newest = (stage: Stage): string | undefined =>
    facts
      .filter(({ value }) => (value?.stage ?? "finished") === stage)
      .map(({ value }) => value?.signature.date ?? "")
      .sort()
      .at(-1);
  const made = newest("finished");
  const run = newest("run");
  const isMadeAnew =
    made !== undefined && run !== undefined && run !== "" && run < made;
  return isMadeAnew ? ["finished", "run"] : ["run", "finished"];
}

/** Readings of a stage as they count for size: at each place the latest date, else all undated ones. */
export function readingsAt(
  shop: Shop,
  facts: readonly Fact<
    "ReadFact" | "RepeatFact" | "BushReadFact" | "StackReadFact"
  >[],
  unwritten: Stage,
  stages: readonly Stage[],
  material: () => Known<MaterialValue>,
): Known<readonly PlaceReadings[]> {
  if (facts.some((fact) => fact.value === undefined)) return SILENT;
  for (const stage of stages) {
    const lines = facts.flatMap((fact) =>
      fact.value !== undefined && (fact.value.stage ?? unwritten) === stage
        ? [{ reading: fact.value, span: fact.span }]
        : [],
    );
    if (lines.length === 0) continue;
    const corrected = everyKnown(
      latestOf(lines).map(({ reading, span }) =>
        correct(shop, reading, span, material),
      ),
    );
    return corrected.known ? known(byPlace(corrected.value)) : corrected;
  }
  return known([]);
}

/** At each place the lines of its latest date, else all undated ones. */
export function latestOf<
  T extends { readonly reading: Pick<Reading, "place" | "signature"> },
>(lines: readonly T[]): readonly T[] {
  const last = new Map<string | undefined, string>();
  for (const { reading } of lines) {
    const { date } = reading.signature;
    const before = last.get(reading.place);
    if (date !== undefined && (before === undefined || before < date))
      last.set(reading.place, date);
  }
  return lines.filter(
    ({ reading }) => reading.signature.date === last.get(reading.place),
  );
}

function byPlace(
  readings: readonly CorrectedReading[],
): readonly PlaceReadings[] {
  const places = new Map<string | undefined, CorrectedReading[]>();
  for (const reading of readings)
    places.set(reading.place, [...(places.get(reading.place) ?? []), reading]);
  return [...places].map(([place, all]) => ({
    place,
    station: all.find((each) => each.station !== undefined)?.station,
    readings: all,
  }));
}

/** One reading line brought to 20 °C, whether it counts for the size or not. */
export function correct(
  shop: Shop,
  reading: Reading,
  span: Span,
  material: () => Known<MaterialValue>,
): Known<CorrectedReading> {
  const gaugeRef = refOf(shop, reading.gauge);
  const gauge = gaugeRef === undefined ? undefined : gaugeValue(shop, gaugeRef);
  // a gauge that can't be read, or that is in a file that is missing, may add a correction
  if (
    gauge?.damaged === true ||
    (reading.gauge !== undefined && gauge === undefined)
  )
    return SILENT;
  const job = settings(shop);
  const temperature = reading.temperature?.value ?? job.temperature;
  // where nothing else is written they lay side by side until they were alike
  const gaugeTemperature = reading.gaugeTemperature?.value ?? temperature;
  const setters = gauge === undefined ? known([]) : settersOf(shop, gauge.ref);
  if (!setters.known) return setters;
  const adds = addsOf(gauge, setters.value);
  let expansion = 0;
  if (temperature !== 20) {
    const of = material();
    const property = of.known ? propertyOf(of.value, "expansion") : of;
    if (!property.known) return property;
    expansion = property.value.value;
  }
  const values: number[] = [];
  for (const { value } of reading.values) {
    const at20 = sizeAtReference({
      reading: value,
      correction: adds,
      part: { temperature, expansion },
      // what the scale grew takes its share of what the part did
      gauge: { temperature: gaugeTemperature, expansion: steelScale.expansion },
    });
    if (!at20.valid) return outside(at20.because);
    values.push(at20.value);
  }
  return known({
    place: reading.place,
    values,
    valueSpans: reading.valueSpans,
    station: reading.station,
    gauge,
    setters: setters.value,
    gaugeWritten: reading.gauge !== undefined,
    date: reading.signature.date,
    step: finest(reading.values),
    temperature,
    temperatureStep: reading.temperature?.step,
    temperatureAssumed:
      reading.temperature === undefined && job.temperatureAssumed,
    gaugeTemperature,
    gaugeTemperatureStep: reading.gaugeTemperature?.step,
    expansion,
    heat: (reading.values[0]?.value ?? 0) + adds - (values[0] ?? 0),
    span,
  });
}

/** Whether part and gauge were at 20 °C, so that nothing is brought there. */
export function isAt20({
  temperature,
  gaugeTemperature,
}: Pick<CorrectedReading, "temperature" | "gaugeTemperature">): boolean {
  return temperature === 20 && gaugeTemperature === 20;
}

/** A line of working for each temperature away from 20 °C that readings were taken at. */
export function heatWorking(
  shop: Shop,
  places: readonly PlaceReadings[],
): readonly Working[] {
  const { system } = settings(shop);
  const said = new Set(
    places
      .flatMap((place) => place.readings)
      .filter((reading) => !isAt20(reading))
      .map(
        ({ temperature, expansion, gaugeTemperature, gaugeTemperatureStep }) =>
          `T ${showTemperature(temperature, system)}${temperature === 20 ? "" : `, part ${showExpansion(expansion, system)}`}; Tg ${showTemperature(gaugeTemperature, system)}${gaugeTemperatureStep === undefined ? ", as the part" : ""}, scale ${showExpansion(steelScale.expansion, system)} (steel)`,
      ),
  );
  return [...said].map((each) => ({
    formula:
      "size at 20 °C = reading · (1 + αg · (Tg − 20 °C)) / (1 + α · (T − 20 °C)), g for the gauge",
    with: each,
    source: "ISO 1; JCGM 100:2008, H.1",
  }));
}

/** Pooled scatter of the repeats written for a feature; undefined where none are written. */
export function scatterOf(
  repeats: readonly CorrectedReading[],
): Repeatability | undefined {
  const pooled = pooledRepeatability(repeats.map(({ values }) => values));
  return pooled.valid ? pooled.value : undefined;
}

/** The repeat of a line that is a stray; undefined where none is. Its step is the coarser of what was written and what the gauge shows. */
export function strayOf({
  values,
  step,
  gauge,
}: CorrectedReading): StrayTest | undefined {
  return strayAmong(values, Math.max(step ?? 0, gauge?.resolution ?? 0));
}

/** Sample standard deviation of all values together; undefined of fewer than two. */
export function spreadOf(values: readonly number[]): number | undefined {
  const spread = standardDeviation(values);
  return spread.valid ? spread.value : undefined;
}

/**
 * The budget of one reading's uncertainty; undefined where neither its gauge's calibration nor its largest error is written, since
 * resolution alone says nothing of a gauge's error.
 */
export function budgetOf(
  reading: CorrectedReading,
  scatter: Repeatability | undefined,
  material: MaterialValue | undefined,
): Budget | undefined {
  const { gauge, temperatureStep } = reading;
  const setting = settingUncertainty(reading.setters);
  if (
    gauge === undefined ||
    (gauge.uncertainty === undefined &&
      gauge.mpe === undefined &&
      setting === undefined)
  )
    return undefined;
  const length = reading.values[0] ?? 0;
  const expansion = material?.expansion;
  const facts: SizeFacts = {
    length,
    resolution: gauge.resolution,
    calibration: gauge.uncertainty,
    mpe: gauge.mpe,
    repeatability: scatter,
    setting,
    part:
      expansion === undefined || temperatureStep === undefined
        ? undefined
        : {
            temperature: reading.temperature,
            // the temperature lies within half a step of what is written: a rectangle
            temperatureUncertainty: temperatureStep / 2 / Math.sqrt(3),
            expansion: expansion.value,
            expansionUncertainty: expansion.within / Math.sqrt(3),
          },
    gauge:
      reading.gaugeTemperature === 20 &&
      reading.gaugeTemperatureStep === undefined
        ? undefined
        : {
            temperature: reading.gaugeTemperature,
            // where it is the part's, that one's own row says how well it is known
            temperatureUncertainty:
              (reading.gaugeTemperatureStep ?? 0) / 2 / Math.sqrt(3),
            expansion: steelScale.expansion,
            expansionUncertainty: steelScale.within / Math.sqrt(3),
          },
  };
  const components = sizeComponents(facts);
  if (!components.valid) return undefined;
  const combined = budget(components.value);
  return combined.valid ? combined.value : undefined;
}
