// Lessons as JSON: the contract of docs/language.md. A change here needs a new `schema`.
import type { OverTime } from "../core/learning/drift.ts";
import { LEFT_OUT } from "../records/evidence.ts";
import type { Origin } from "../records/lesson-groups.ts";
import type { Lessons } from "../records/lessons.ts";
import { jsonText } from "./json-text.ts";

const LESSONS_SCHEMA = 1;

/** Lengths in m, shares plain; every key is always there. */
export function lessonsJson(lessons: Lessons): string {
  const { records, reamers, bushes, gauges, leftOut } = lessons;
  return `${jsonText({
    schema: LESSONS_SCHEMA,
    records,
    reamers: reamers.map((each) => ({
      reamer: each.reamer,
      material: each.material,
      crib: each.crib,
      ...learnedOf(each.learned),
      seen: each.cuts,
      conceded: each.conceded,
      drift: driftOf(each.learned),
      ...originOf(each),
      unit: "m",
    })),
    bushes: bushes.map((each) => ({
      material: each.material,
      construction: each.construction,
      od: each.od,
      id: each.id,
      lot: each.lot ?? null,
      crib: each.crib === "" ? null : each.crib,
      mean: each.sample.mean,
      low: each.interval?.low ?? null,
      high: each.interval?.high ?? null,
      spread: each.sample.spread ?? null,
      count: each.sample.count,
      ...originOf(each),
      unit: "1",
    })),
    gauges: gauges.map((each) => ({
      gauge: each.gauge,
      against: each.against,
      crib: each.crib,
      ...learnedOf(each.learned),
      seen: each.times,
      drift: driftOf(each.learned),
      off: each.isOff,
      tied: each.isTied,
      ...originOf(each),
      unit: "m",
    })),
    leftOut: leftOut.map(({ about, subject, file, entry, why }) => ({
      about,
      subject,
      file,
      entry,
      why,
      text: LEFT_OUT[why],
    })),
  })}\n`;
}

function learnedOf({ sample, interval }: OverTime): object {
  return {
    mean: sample.mean,
    low: interval?.low ?? null,
    high: interval?.high ?? null,
    spread: sample.spread ?? null,
    count: sample.count,
  };
}

/** Per cut of a reamer, per year of gauges. */
function driftOf({ drift, used }: OverTime): object | null {
  return drift === undefined
    ? null
    : {
        rate: drift.slope,
        low: drift.interval.low,
        high: drift.interval.high,
        used,
      };
}

function originOf({ records, first, last }: Origin): object {
  return { records, first, last };
}
