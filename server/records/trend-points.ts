// The dated sizes that one state of a record holds: of each journal, hole and bore by the day and the gauge, and the clearance of each fit.
import { metresToTenths } from "../core/quantity/exact.ts";
import type { System } from "../core/quantity/show.ts";
import {
  allOf,
  given,
  valueIn,
  type Entry,
  type Fact,
} from "../model/entry.ts";
import { clearance } from "../model/evaluate/fit.ts";
import { namedIn } from "../model/evaluate/index-of.ts";
import { budgetOf, readingsAt } from "../model/evaluate/readings.ts";
import { settings } from "../model/evaluate/settings.ts";
import { hostOf, materialOfFeature } from "../model/evaluate/size.ts";
import { wanted } from "../model/evaluate/wanted.ts";
import { wearLimit } from "../model/evaluate/wear.ts";
import type { OpenFile } from "../model/project.ts";
import { kindOf } from "../model/reference.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import type { Stage } from "../model/values.ts";

/** One state of a record. */
export interface RecordState {
  readonly open: OpenFile;
  /** As the user names the record. */
  readonly file: string;
  /** Twelve digits of its commit; undefined for the file as it lies. */
  readonly commit: string | undefined;
  /** The day of that commit: readings without a day of their own were there by then. */
  readonly committed: string | undefined;
}

/** A size, or a clearance, on a day. */
export interface StatePoint {
  readonly file: string;
  readonly commit: string | undefined;
  readonly entry: string;
  readonly part: string;
  readonly serial: string | undefined;
  readonly system: System;
  /** ISO 8601 */
  readonly date: string;
  readonly datedBy: "reading" | "commit";
  /** m at 20 °C: the mean of all that was read that day by one gauge. */
  readonly value: number;
  readonly count: number;
  /** Standard uncertainty of the gauge, m; undefined where it is not known. */
  readonly uncertainty: number | undefined;
  /** The last written digit, m. */
  readonly step: number | undefined;
  /** "" where none is named. */
  readonly gauge: string;
  readonly limit: number | undefined;
  readonly limitIs: "service limit" | "limit" | "wanted" | undefined;
  /** The limits that were written, to tell a part that was made anew. */
  readonly limits: string;
  /** What it is of where each record makes it anew, a pressed bush; "" for what stays. */
  readonly madeIn: string;
}

export interface StatePoints {
  readonly points: readonly StatePoint[];
  /** Readings without a day, and lines that can't be read. */
  readonly undated: number;
  readonly damaged: number;
}

const FEATURES = new Set(["journal", "hole", "bore"]);
const STAGES: readonly Stage[] = ["run", "finished"];

export function pointsIn(state: RecordState): StatePoints {
  const { open } = state;
  const points: StatePoint[] = [];
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
    } else if (entry.kind === "fit") points.push(...ofFit(state, entry.ref));
  }
  return { points, undated, damaged };
}

function ofFeature(state: RecordState, entry: Entry): StatePoints {
  const { shop } = state.open;
  if (entry.damaged) return { points: [], undated: 0, damaged: 1 };
  const facts = allOf(entry, "ReadFact");
  const whole = facts.filter(({ value }) => value !== undefined);
  const groups = new Map<string, Fact<"ReadFact">[]>();
  let undated = 0;
  for (const fact of whole) {
    const { value } = fact;
    const stage = value?.stage ?? "finished";
    if (value === undefined || !STAGES.includes(stage)) continue;
    const date = value.signature.date ?? state.committed;
    if (date === undefined) {
      undated++;
      continue;
    }
    const key = JSON.stringify([
      date,
      value.signature.date === undefined ? "commit" : "reading",
      value.gauge?.name ?? "",
    ]);
    groups.set(key, [...(groups.get(key) ?? []), fact]);
  }
  const about = aboutFeature(state, entry);
  const points = [...groups].flatMap(([key, group]): StatePoint[] => {
    const [date, datedBy, gauge] = JSON.parse(key) as [
      string,
      StatePoint["datedBy"],
      string,
    ]; // written just above
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
      (each) => budgetOf(each, undefined, undefined, undefined)?.combined,
    );
    return [
      {
        ...about,
        date,
        datedBy,
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
  "date" | "datedBy" | "gauge" | "value" | "count" | "uncertainty" | "step"
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
    commit: state.commit,
    entry: entry.ref,
    part: part ?? "",
    serial: serialOf(shop, part),
    system: settings(shop, "job").system,
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

/** The clearance as it is in this state, where both parts are read: dated by the later of the two. */
function ofFit(state: RecordState, ref: string): readonly StatePoint[] {
  const { shop } = state.open;
  const found = clearance(shop, ref);
  const [journal] = namedIn(shop, ref);
  if (
    !found.known ||
    found.value.status !== "measured" ||
    journal === undefined
  )
    return [];
  const { nominal, budget, step } = found.value;
  const readings = [found.value.journal, found.value.bore].map((size) =>
    size.places.flatMap((place) => place.readings),
  );
  const dates = readings.map((all) =>
    latestOf(all.map(({ date }) => date ?? state.committed)),
  );
  if (dates.some((date) => date === undefined)) return [];
  const date = latestOf(dates) ?? "";
  const part = partOf(shop, journal);
  const want = wanted(shop, ref);
  const most = want?.known === true ? want.value.high : undefined;
  return [
    {
      file: state.file,
      commit: state.commit,
      entry: ref,
      part: part ?? "",
      serial: serialOf(shop, part),
      system: settings(shop, "job").system,
      date,
      datedBy: readings.flat().some((each) => each.date === date)
        ? "reading"
        : "commit",
      gauge: "",
      value: nominal,
      count: readings.flat().length,
      uncertainty: budget?.combined,
      step,
      limit: most,
      limitIs: most === undefined ? undefined : "wanted",
      limits: "",
      madeIn: state.file,
    },
  ];
}

/** The part that a feature is on or in, through its bush and hole. */
function partOf(shop: Shop, ref: string): string | undefined {
  let at: string | undefined = ref;
  for (let step = 0; at !== undefined && step < 4; step++) {
    if (kindOf(at) === "part") return at;
    at = hostOf(shop, at);
  }
  return undefined;
}

function serialOf(shop: Shop, part: string | undefined): string | undefined {
  return part === undefined
    ? undefined
    : valueIn(entryOf(shop, part), "SerialFact");
}

function latestOf(dates: readonly (string | undefined)[]): string | undefined {
  return dates.reduce(
    (a, b) => (a === undefined || b === undefined ? undefined : a < b ? b : a),
    dates[0],
  );
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/**
 * The points of all states, the oldest first, each reading once. A reading with a day of its own is as the last state has it; one without
 * was there by the day of the first state that has it.
 */
export function pointsOnce(
  states: readonly (readonly StatePoint[])[],
): readonly StatePoint[] {
  const dated = new Map<string, StatePoint>();
  const undated = new Map<string, StatePoint>();
  for (const state of states)
    for (const point of state) {
      const { file, entry, gauge, date, datedBy, value } = point;
      if (datedBy === "reading")
        dated.set(JSON.stringify([file, entry, gauge, date]), point);
      else {
        const key = JSON.stringify([file, entry, gauge, value.toFixed(12)]);
        if (!undated.has(key)) undated.set(key, point);
      }
    }
  return [...dated.values(), ...undated.values()];
}

/** Equal where the limits are, to 0.1 nm. */
function limitsWords(low: number, high: number): string {
  return `${String(metresToTenths(low))} ${String(metresToTenths(high))}`;
}
