// Series of sizes as JSON: the contract of docs/language.md. A change here needs a new `schema`.
import {
  COVERAGE,
  dateOfDay,
  type Run,
  type Series,
} from "../records/trend.ts";
import { jsonText } from "./json-text.ts";

export const TREND_SCHEMA = 1;

const YEAR = 365.25;

/** Lengths in m, rates in m a year; every key is always there. */
export function trendJson(
  series: readonly Series[],
  notes: readonly string[],
): string {
  return `${jsonText({
    schema: TREND_SCHEMA,
    coverage: COVERAGE,
    series: series.map((each) => ({
      serial: "serial" in each.of ? each.of.serial : null,
      file: "file" in each.of ? each.of.file : null,
      part: each.part === "" ? null : each.part,
      entry: each.entry,
      wears: each.towards === 1 ? "up" : "down",
      limit: each.limit ?? null,
      limitIs: each.limitIs ?? null,
      unit: "m",
      runs: each.runs.map(runJson),
      reached: {
        likeliest: dayJson(each.reaching?.likeliest),
        earliest: dayJson(each.reaching?.earliest),
        latest: dayJson(each.reaching?.latest),
      },
    })),
    notes,
  })}\n`;
}

function runJson({ because, gauge, points, rate }: Run): unknown {
  return {
    because: because ?? null,
    gauge: gauge === undefined || gauge === "" ? null : gauge,
    rate:
      rate === undefined
        ? null
        : {
            perYear: rate.perDay * YEAR,
            low: rate.interval.low * YEAR,
            high: rate.interval.high * YEAR,
            way: rate.way,
            unit: "m/a",
          },
    points: points.map((point) => ({
      date: point.date,
      datedBy: point.datedBy,
      value: point.value,
      uncertainty: point.uncertainty ?? null,
      count: point.count,
      gauge: point.gauge === "" ? null : point.gauge,
      counts: point.counts,
      file: point.file,
      commit: point.commit ?? null,
    })),
  };
}

function dayJson(day: number | undefined): string | null {
  return day === undefined ? null : (dateOfDay(day) ?? null);
}
