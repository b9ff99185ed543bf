// Series of sizes as JSON: the contract of docs/language.md. A change here needs a new `schema`.
import { RATE_OVER } from "../records/trend-words.ts";
import {
  COVERAGE,
  dateOfDay,
  type Along,
  type Run,
  type Series,
} from "../records/trend.ts";
import { jsonText } from "./json-text.ts";

const TREND_SCHEMA = 1;

/** Lengths in m, rates in m a year or per 1000 h; every key is always there. In pieces, a series each. */
export function* trendJson(
  series: Iterable<Series>,
  notes: readonly string[],
  along: Along,
): Iterable<string> {
  const head = { schema: TREND_SCHEMA, coverage: COVERAGE, against: along };
  let before = `${jsonText(head).slice(0, -1)},"series":[`;
  for (const each of series) {
    yield `${before}${jsonText(seriesJson(each, along))}`;
    before = ",";
  }
  yield `${before === "," ? "" : before}],${jsonText({ notes }).slice(1)}\n`;
}

function seriesJson(each: Series, along: Along): unknown {
  return {
    serial: "serial" in each.of ? each.of.serial : null,
    file: "file" in each.of ? each.of.file : null,
    part: each.part === "" ? null : each.part,
    entry: each.entry,
    wears: each.towards === 1 ? "up" : "down",
    limit: each.limit ?? null,
    limitIs: each.limitIs ?? null,
    unit: "m",
    runs: each.runs.map((run) => runJson(run, along)),
    reached: {
      likeliest: placeJson(each.reaching?.likeliest, along),
      earliest: placeJson(each.reaching?.earliest, along),
      latest: placeJson(each.reaching?.latest, along),
    },
  };
}

function runJson({ because, gauge, points, rate }: Run, along: Along): unknown {
  const { span, unit } = RATE_OVER[along];
  return {
    because: because ?? null,
    gauge: gauge === undefined || gauge === "" ? null : gauge,
    rate:
      rate === undefined
        ? null
        : {
            perYear: along === "date" ? rate.slope * span : null,
            perThousandHours: along === "hours" ? rate.slope * span : null,
            low: rate.interval.low * span,
            high: rate.interval.high * span,
            way: rate.way,
            unit,
          },
    points: points.map((point) => ({
      date: point.date,
      datedBy: point.datedBy,
      hours: point.hours ?? null,
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

/** A day as ISO 8601 has it, or hours as a number. */
function placeJson(
  at: number | undefined,
  along: Along,
): string | number | null {
  if (at === undefined) return null;
  return along === "hours" ? at : (dateOfDay(at) ?? null);
}
