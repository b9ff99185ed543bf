// Sizes of the same feature over the years: gathered from the states of records, put in order, parted where something new began, and a line
// laid through what is left. What it says in words is trend-words.ts's; which states there are, the caller's.
import {
  fitLine,
  slopeInterval,
  type LineFit,
} from "../core/learning/line-fit.ts";
import type { Band } from "../core/quantity/band.ts";
import type { System } from "../core/quantity/show.ts";
import {
  reachOf,
  withSpreadOf,
  type Reaching,
} from "../core/trend/reaching.ts";
import { groupedBy } from "../model/groups.ts";
import type { DatedSize } from "./trend-state.ts";
import { kindOf } from "../model/reference.ts";

/** How sure the intervals are. So of 100 features that do not change, 5 are said to, in one way or the other. */
export const COVERAGE = 0.95;
/** Fewer days than this with readings say nothing of a rate with its spread. */
export const LEAST_POINTS = 3;

/** Days since 1970-01-01. */
export type Day = number;

/** What sizes are held against: the calendar, or the hour meter of the machine. */
export type Along = "date" | "hours";

export interface TrendPoint extends DatedSize {
  readonly day: Day;
  /** Where it stands along: days, or hours. */
  readonly at: number;
  /** Of the gauge that the rate is taken from. */
  readonly counts: boolean;
}

export interface Rate {
  /** m a day or an hour, above zero where it grows. */
  readonly slope: number;
  readonly interval: Band;
  /** Which way it goes, where the interval leaves zero out. */
  readonly way: "wears" | "other way" | "not known";
}

/** Readings between which nothing new was made. */
export interface Run {
  readonly points: readonly TrendPoint[];
  /** Why it begins where it does; undefined of the first. */
  readonly because: string | undefined;
  /** The gauge whose readings the rate is of, "" for readings that name none; undefined where they are of several dates by none twice. */
  readonly gauge: string | undefined;
  readonly line: LineFit | undefined;
  readonly rate: Rate | undefined;
}

export interface Series {
  /** Of the part where it has a serial, else the file. */
  readonly of: { readonly serial: string } | { readonly file: string };
  /** "journal front", "fit front" */
  readonly entry: string;
  readonly part: string;
  readonly system: System;
  readonly runs: readonly Run[];
  /** m; the size past which it is worn, by the latest state. */
  readonly limit: number | undefined;
  readonly limitIs: "service limit" | "limit" | "wanted" | undefined;
  /** -1 for what falls as it wears, a journal; 1 for what grows. */
  readonly towards: -1 | 1;
  readonly along: Along;
  /** When the last run's line gets to the limit; undefined where there is no line or no limit. Days, or hours. */
  readonly reaching: Reaching | undefined;
}

/** The series of all features that have a size with a date, or with a date whose hours are written. */
export function seriesOf(
  points: readonly DatedSize[],
  along: Along = "date",
): readonly Series[] {
  return [...eachSeries(points, along)];
}

/** The same one by one: whoever writes each as it comes holds no more than one. */
export function* eachSeries(
  points: readonly DatedSize[],
  along: Along,
): Iterable<Series> {
  const groups = groupedBy(points, (point) =>
    along === "hours" && point.hours === undefined ? undefined : keyOf(point),
  );
  for (const group of groups.values()) {
    const inOrder = group
      .flatMap((point): readonly Placed[] => {
        const day = dayOf(point.date);
        const at = along === "date" ? day : point.hours;
        return at === undefined ? [] : [{ ...point, day, at }];
      })
      .sort((a, b) => a.day - b.day || a.at - b.at);
    const latest = inOrder.at(-1);
    if (latest !== undefined) yield oneSeries(inOrder, latest, along);
  }
}

function keyOf({ serial, file, entry }: DatedSize): string {
  return JSON.stringify(
    serial === undefined ? ["file", file, entry] : ["serial", serial, entry],
  );
}

function oneSeries(
  inOrder: readonly Placed[],
  latest: Placed,
  along: Along,
): Series {
  const towards = kindOf(latest.entry) === "journal" ? -1 : 1;
  const runs = runsOf(inOrder, towards);
  const line = runs.at(-1)?.line;
  const { limit, limitIs } = latest;
  const reaching =
    line === undefined || limit === undefined
      ? undefined
      : reachOf(line, limit, towards, COVERAGE);
  return {
    of:
      latest.serial === undefined
        ? { file: latest.file }
        : { serial: latest.serial },
    entry: latest.entry,
    part: latest.part,
    system: latest.system,
    runs,
    limit,
    limitIs,
    towards,
    along,
    reaching: reaching?.valid === true ? reaching.value : undefined,
  };
}

type Placed = Omit<TrendPoint, "counts">;

/** Parts the points where something new was made. What one gauge reads over another is no repair: only the one that reads most tells. */
function runsOf(points: readonly Placed[], towards: -1 | 1): readonly Run[] {
  const gauge = gaugeOf(points);
  const runs: { because: string | undefined; points: Placed[] }[] = [];
  for (const point of points) {
    const run = runs.at(-1);
    const because =
      run === undefined ? undefined : whyNew(run.points, point, gauge, towards);
    if (run === undefined || because !== undefined)
      runs.push({ because, points: [point] });
    else run.points.push(point);
  }
  return runs.map(({ because, points: all }) => runOf(all, because, towards));
}

/** How many times the uncertainty of both readings, or steps of them, a size must have gone the other way to be taken for a repair. */
const REPAIRED = { deviations: 4, steps: 6 };

function whyNew(
  run: readonly Placed[],
  after: Placed,
  gauge: string | undefined,
  towards: -1 | 1,
): string | undefined {
  const last = run.at(-1);
  if (last === undefined) return undefined;
  if (last.madeIn !== after.madeIn) return "a new bush";
  if (last.limits !== after.limits) return "other limits are written";
  if (after.at < last.at)
    return "the hour meter went back: another one, or one set anew";
  const before = run.findLast((each) => each.gauge === gauge);
  if (before === undefined || after.gauge !== gauge) return undefined;
  const back = -towards * (after.value - before.value);
  const noise = Math.max(
    REPAIRED.deviations *
      Math.hypot(before.uncertainty ?? 0, after.uncertainty ?? 0),
    REPAIRED.steps * Math.max(before.step ?? 0, after.step ?? 0),
  );
  return 0 < noise && noise < back
    ? "the size went the other way, by more than readings differ"
    : undefined;
}

function runOf(
  all: readonly Placed[],
  because: string | undefined,
  towards: -1 | 1,
): Run {
  const gauge = gaugeOf(all);
  const points = all.map((point) => ({
    ...point,
    counts: point.gauge === gauge,
  }));
  const counted = points.filter(({ counts }) => counts);
  const days = [...groupedBy(counted, ({ at }) => at)];
  const found =
    days.length < LEAST_POINTS
      ? undefined
      : fitLine(days.map(([x, ofDay]) => ({ x, y: meanValue(ofDay) })));
  if (found?.valid !== true)
    return { points, because, gauge, line: undefined, rate: undefined };
  // a value that is rounded to a step is off by step/√12, and a mean of several by no less than that of one of theirs
  const coarsest = Math.max(
    ...counted.map(({ step, count }) => (step ?? 0) / Math.sqrt(12 * count)),
  );
  const line = withSpreadOf(found.value, coarsest);
  const interval = slopeInterval(line, COVERAGE);
  if (!interval.valid)
    return { points, because, gauge, line: undefined, rate: undefined };
  const { low, high } = interval.value;
  const wears = towards === 1 ? 0 < low : high < 0;
  const other = towards === 1 ? high < 0 : 0 < low;
  return {
    points,
    because,
    gauge,
    line,
    rate: {
      slope: line.slope,
      interval: interval.value,
      way: wears ? "wears" : other ? "other way" : "not known",
    },
  };
}

/** A day, or what the hour meter showed, counts once: what was read on it, or copied from one record to another, is no proof of its own. */
function meanValue(points: readonly Placed[]): number {
  return points.reduce((sum, { value }) => sum + value, 0) / points.length;
}

/** Gauges differ, so a rate is of one: the one that read on most days, of several the one that read last. */
function gaugeOf(points: readonly Placed[]): string | undefined {
  const days = new Map<string, Set<number>>();
  for (const { gauge, at } of points)
    days.set(gauge, (days.get(gauge) ?? new Set()).add(at));
  const most = Math.max(0, ...[...days.values()].map((each) => each.size));
  return points.findLast(({ gauge }) => days.get(gauge)?.size === most)?.gauge;
}

/** Days since 1970-01-01 of an ISO 8601 day. */
export function dayOf(date: string): Day {
  return Date.parse(`${date}T00:00:00Z`) / 86_400_000;
}

/** The ISO 8601 day; undefined where no calendar reaches. */
export function dateOfDay(day: Day): string | undefined {
  const date = new Date(Math.round(day) * 86_400_000);
  return Number.isNaN(date.getTime()) || 9999 < date.getUTCFullYear()
    ? undefined
    : date.toISOString().slice(0, 10);
}
