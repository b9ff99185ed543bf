// The dated sizes that one state of a record holds: of each journal, hole and bore by the day and the gauge, and the clearance of each fit.
import { metresToTenths } from "../core/quantity/exact.ts";
import { allOf, given, type Entry, type Fact } from "../model/entry.ts";
import { budgetOf, readingsAt } from "../model/evaluate/readings.ts";
import { settings } from "../model/evaluate/settings.ts";
import { hostOf, materialOfFeature } from "../model/evaluate/size.ts";
import { wearLimit } from "../model/evaluate/wear.ts";
import type { Stage } from "../model/values.ts";
import { clearanceIn } from "./trend-clearances.ts";
import {
  hoursOn,
  partOf,
  serialOf,
  type RecordState,
  type StatePoint,
  type StatePoints,
} from "./trend-state.ts";
import { arrivalsOf } from "./undated.ts";

const FEATURES = new Set(["journal", "hole", "bore"]);
const STAGES: readonly Stage[] = ["run", "finished"];

export function pointsIn(state: RecordState): StatePoints {
  const { open } = state;
  const points: StatePoint[] = [];
  const mixed: string[] = [];
  let undated = 0;
  let damaged = 0;
  for (const [index, entry] of open.file.entries.entries()) {
    const place = open.shop.places.get(entry.ref);
    if (place?.file !== 0 || place.index !== index || entry.kind === undefined)
      continue;
    if (FEATURES.has(entry.kind)) {
      const found = ofFeature(state, entry);
      points.push(...found.points);
      undated += found.undated;
      damaged += found.damaged;
    } else if (entry.kind === "fit") {
      const point = clearanceIn(state, entry.ref);
      if (point === "mixed") mixed.push(entry.ref);
      else if (point !== undefined) points.push(point);
    }
  }
  return { points, undated, damaged, mixed };
}

function ofFeature(
  state: RecordState,
  entry: Entry,
): Omit<StatePoints, "mixed"> {
  const { shop } = state.open;
  if (entry.damaged) return { points: [], undated: 0, damaged: 1 };
  const facts = allOf(entry, "ReadFact");
  const whole = facts.filter(({ value }) => value !== undefined);
  const came = arrivalsOf(entry, state.arrivals, state.committed);
  const groups = new Map<string, Fact<"ReadFact">[]>();
  let undated = 0;
  for (const fact of whole) {
    const { value } = fact;
    const stage = value?.stage ?? "finished";
    if (value === undefined || !STAGES.includes(stage)) continue;
    const arrived = came.get(fact);
    const date = value.signature.date ?? arrived?.date;
    if (date === undefined) {
      undated++;
      continue;
    }
    const key = JSON.stringify([
      date,
      arrived?.commit ?? "",
      value.gauge?.name ?? "",
    ]);
    groups.set(key, [...(groups.get(key) ?? []), fact]);
  }
  const about = aboutFeature(state, entry);
  const points = [...groups].flatMap(([key, group]): StatePoint[] => {
    const [date, commit, gauge] = JSON.parse(key) as [string, string, string]; // written just above
    const places = readingsAt(shop, group, "finished", STAGES, () =>
      materialOfFeature(shop, entry.ref),
    );
    if (!places.known) return [];
    const readings = places.value.flatMap((each) => each.readings);
    const means = places.value.map((place) =>
      meanOf(place.readings.flatMap(({ values }) => values)),
    );
    const steps = readings.flatMap(({ step }) => step ?? []);
    const budgets = readings.map(
      (each) => budgetOf(each, undefined, undefined)?.combined,
    );
    return [
      {
        ...about,
        ...(commit === ""
          ? { datedBy: "reading" }
          : { datedBy: "commit", commit }),
        date,
        hours: hoursOn(shop, date),
        lines: group.map(({ value }) => writtenOf(value)),
        gauge,
        value: meanOf(means),
        count: readings.flatMap(({ values }) => values).length,
        uncertainty: budgets.every((each) => each !== undefined)
          ? Math.max(...budgets)
          : undefined,
        step: steps.length === 0 ? undefined : Math.max(...steps),
      },
    ];
  });
  return { points, undated, damaged: facts.length - whole.length };
}

type About = Omit<
  StatePoint,
  | "date"
  | "datedBy"
  | "hours"
  | "lines"
  | "gauge"
  | "value"
  | "count"
  | "uncertainty"
  | "step"
>;

function aboutFeature(state: RecordState, entry: Entry): About {
  const { shop } = state.open;
  const part = partOf(shop, entry.ref);
  const limits = given(entry, "LimitsFact");
  const service = wearLimit(entry);
  const own =
    limits.state !== "given"
      ? undefined
      : entry.kind === "journal"
        ? limits.value.low
        : limits.value.high;
  return {
    file: state.file,
    stateDay: state.committed?.date,
    commit: state.committed?.commit,
    entry: entry.ref,
    part: part ?? "",
    serial: serialOf(shop, part),
    system: settings(shop).system,
    limit: service ?? own,
    limitIs:
      service !== undefined
        ? "service limit"
        : own !== undefined
          ? "limit"
          : undefined,
    limits:
      limits.state === "given"
        ? limitsWords(limits.value.low, limits.value.high)
        : "",
    madeIn:
      hostOf(shop, entry.ref)?.startsWith("bush ") === true ? state.file : "",
  };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function writtenOf(value: Fact<"ReadFact">["value"]): string {
  return JSON.stringify([
    value?.place ?? "",
    value?.stage ?? "finished",
    value?.values.map((each) => each.value),
  ]);
}

/** Equal where the limits are, to 0.1 nm. */
function limitsWords(low: number, high: number): string {
  return `${String(metresToTenths(low))} ${String(metresToTenths(high))}`;
}
