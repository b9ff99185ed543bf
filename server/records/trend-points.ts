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
import type { Span, Stage } from "../model/values.ts";
import { arrivalsOf, type Arrivals, type CommitDay } from "./undated.ts";

/** One state of a record. */
export interface RecordState {
  readonly open: OpenFile;
  /** As the user names the record. */
  readonly file: string;
  /** Its commit; undefined for the file as it lies. */
  readonly committed: CommitDay | undefined;
  /** Of all states of this record that were looked at before, and added to. */
  readonly arrivals: Arrivals;
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
  /** Fits whose readings without a day came at several times. */
  readonly mixed: readonly string[];
}

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
      const point = ofFit(state, entry.ref);
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
      (each) => budgetOf(each, undefined, undefined, undefined)?.combined,
    );
    return [
      {
        ...about,
        ...(commit === ""
          ? { datedBy: "reading" }
          : { datedBy: "commit", commit }),
        date,
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
    commit: state.committed?.commit,
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

/**
 * The clearance as it is in this state, where both parts are read: dated by the later of the two. Readings of one part without a day count
 * together for its size ("mixed" where they came at several times: then the clearance is of no day).
 */
function ofFit(
  state: RecordState,
  ref: string,
): StatePoint | "mixed" | undefined {
  const { shop } = state.open;
  const found = clearance(shop, ref);
  const [journal, bore] = namedIn(shop, ref);
  if (
    !found.known ||
    found.value.status !== "measured" ||
    journal === undefined ||
    bore === undefined
  )
    return undefined;
  const { nominal, budget, step } = found.value;
  const readings = [found.value.journal, found.value.bore].map((size) =>
    size.places.flatMap((place) => place.readings),
  );
  const came = [journal, bore].map((feature, index) =>
    (readings[index] ?? []).map(
      ({ date, span }) =>
        (date === undefined ? arrivalAt(state, feature, span) : undefined) ?? {
          date,
          commit: "",
        },
    ),
  );
  const commits = came.map((all) =>
    all.flatMap(({ commit }) => (commit === "" ? [] : [commit])),
  );
  if (commits.some((all) => 1 < new Set(all).size)) return "mixed";
  const date = latestOf(
    came.map((all) => latestOf(all.map((each) => each.date))),
  );
  if (date === undefined) return undefined;
  const newest = came.flat().filter((each) => each.date === date);
  const arrived = newest.every(({ commit }) => commit !== "")
    ? newest[0]?.commit
    : undefined;
  const part = partOf(shop, journal);
  const want = wanted(shop, ref);
  const most = want?.known === true ? want.value.high : undefined;
  return {
    file: state.file,
    commit: arrived ?? state.committed?.commit,
    entry: ref,
    part: part ?? "",
    serial: serialOf(shop, part),
    system: settings(shop, "job").system,
    date,
    datedBy: arrived === undefined ? "reading" : "commit",
    gauge: "",
    value: nominal,
    count: readings.flat().length,
    uncertainty: budget?.combined,
    step,
    limit: most,
    limitIs: most === undefined ? undefined : "wanted",
    limits: "",
    madeIn: state.file,
  };
}

/** When the undated reading that stands there in an entry came. */
function arrivalAt(
  state: RecordState,
  ref: string,
  span: Span,
): CommitDay | undefined {
  const entry = entryOf(state.open.shop, ref);
  if (entry === undefined) return undefined;
  const came = arrivalsOf(entry, state.arrivals, state.committed);
  return [...came].find(
    ([fact]) => fact.span.line === span.line && fact.span.start === span.start,
  )?.[1];
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
 * The points of all states, the oldest first, each reading once, as the last state has it: of one day and gauge, or of the commit that
 * brought it where it has no day of its own.
 */
export function pointsOnce(
  states: readonly (readonly StatePoint[])[],
): readonly StatePoint[] {
  const once = new Map<string, StatePoint>();
  for (const point of states.flat()) {
    const { file, entry, gauge, date, datedBy, commit } = point;
    const came = datedBy === "commit" ? commit : undefined;
    once.set(JSON.stringify([file, entry, gauge, date, came ?? ""]), point);
  }
  return [...once.values()];
}

/** Equal where the limits are, to 0.1 nm. */
function limitsWords(low: number, high: number): string {
  return `${String(metresToTenths(low))} ${String(metresToTenths(high))}`;
}
