// A made-up shop judged: what `learn` and `trend` say of it beside what is true of it. Tests hold the counts against the stated rates.
import { readLines } from "../../grammar/lines.ts";
import { createFiles } from "../../server/model/project.ts";
import {
  evidenceIn,
  lessonsOf,
  type Lessons,
} from "../../server/records/lessons.ts";
import { pointsOnce } from "../../server/records/points-once.ts";
import { pointsIn } from "../../server/records/trend-points.ts";
import {
  seriesOf,
  type Along,
  type Series,
} from "../../server/records/trend.ts";
import { shopHistory, type HistoryRecord } from "./shop-history.ts";
import { RECORDS_A_SHOP, type TrueJournal, type Truths } from "./truths.ts";

export interface JudgedJournal {
  readonly truth: TrueJournal;
  readonly series: Series;
}

export interface JudgedShop {
  readonly truths: Truths;
  readonly records: readonly HistoryRecord[];
  readonly lessons: Lessons;
  /** One of each journal that has a series. */
  readonly journals: Readonly<Record<Along, readonly JudgedJournal[]>>;
}

/** @param change what a test puts in place of a record's text */
export function judgedShop(
  seed: number,
  change: (record: HistoryRecord, text: string) => string = (_, text) => text,
): JudgedShop {
  const history = shopHistory(seed, { records: RECORDS_A_SHOP });
  const files = createFiles({ root: "" });
  for (const { path, text } of history.cribs)
    files.setFile(path, readLines(text));
  const records = [...history.records];
  const read = records.map((record) => {
    const { path, versions } = record;
    const text = change(record, versions.at(-1)?.text ?? "");
    files.setFile(path, readLines(text));
    const open = files.open(path);
    if (open === undefined) throw new Error(`${path} is not there`);
    const evidence = evidenceIn(open);
    const { points } = pointsIn({
      open,
      file: path,
      committed: undefined,
      arrivals: new Map(),
    });
    files.dropFile(path);
    return { evidence, points };
  });
  const [truths] = history.truths;
  if (truths === undefined) throw new Error("no shop");
  const once = pointsOnce(read.map(({ points }) => points));
  const judged = (along: Along): readonly JudgedJournal[] => {
    const series = seriesOf(once, along);
    return truths.journals.flatMap((truth) => {
      const found = series.find(
        ({ of, entry }) =>
          "serial" in of &&
          of.serial === `${truth.serial}-LS` &&
          entry === `journal ${truth.journal}`,
      );
      return found === undefined ? [] : [{ truth, series: found }];
    });
  };
  return {
    truths,
    records,
    lessons: lessonsOf(read.map(({ evidence }) => evidence)),
    journals: { date: judged("date"), hours: judged("hours") },
  };
}
