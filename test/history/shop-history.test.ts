// The made-up history is what it says it is: the same from the same seed, and of records that a checker has nothing to say against but where
// they were damaged on purpose.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";
import { TEXT_RULES } from "../../server/rules/index.ts";
import { drawsFor } from "./random.ts";
import { recordOf, shopHistory, type HistoryRecord } from "./shop-history.ts";

const textCodes = new Set(TEXT_RULES.map(({ code }) => code));
const SEED = 20261;

test("a record hangs on the seed and its number alone", () => {
  const [first, again] = [1, 2].map(() => [
    ...shopHistory(SEED, { records: 70 }).records,
  ]);
  expect(first).toEqual(again);
  expect(recordOf(SEED, 66)).toEqual(first?.[66]);
  expect(recordOf(SEED + 1, 66)).not.toEqual(first?.[66]);
  expect(new Set(first?.map(({ path }) => path)).size).toBe(70);
});

test("a long history is made record by record", () => {
  const { records } = shopHistory(SEED, { records: 100_000 });
  const [first] = records;
  expect(first?.index).toBe(0);
  expect(recordOf(SEED, 99_999).shop).toBe(1666);
});

test("every state of every record has only the faults that were made on purpose", () => {
  const { records, cribs } = shopHistory(SEED, { records: 120 });
  const project = createProject({ root: "" });
  for (const { path, text } of cribs) {
    project.setFile(path, readLines(text));
    expect(project.check(path).findings).toEqual([]);
  }
  const flaws = new Map<string, number>();
  const meant = new Map<string, number>();
  for (const record of records) {
    flaws.set(
      record.flaw ?? "none",
      1 + (flaws.get(record.flaw ?? "none") ?? 0),
    );
    for (const [state, version] of record.versions.entries()) {
      const findings = checked(project, record, version.text);
      const text = findings.filter((code) => textCodes.has(code));
      const isDamaged = record.flaw === "damaged" && 2 <= state;
      expect(text.length === 0, `${record.path}: ${text.join(", ")}`).toBe(
        !isDamaged,
      );
      for (const code of findings) meant.set(code, 1 + (meant.get(code) ?? 0));
    }
  }
  // what the history is there to hold does occur
  expect(
    ["damaged", "unsigned", "undated", "stray", "only-roughed"].filter(
      (flaw) => !flaws.has(flaw),
    ),
  ).toEqual([]);
  expect(
    ["reading-stray", "gauge-overdue", "fit-loose"].filter(
      (code) => !meant.has(code),
    ),
  ).toEqual([]);
});

function checked(
  project: ReturnType<typeof createProject>,
  { path }: HistoryRecord,
  text: string,
): readonly string[] {
  project.setFile(path, readLines(text));
  const { findings } = project.check(path);
  project.dropFile(path);
  return findings.map(({ code }) => code);
}

test("the states of a record are in the order of time, and its hours with them", () => {
  for (const { versions } of shopHistory(SEED, { records: 30 }).records) {
    const dates = versions.map(({ date }) => date);
    expect([...dates].sort()).toEqual(dates);
    const hours = versions.map((version) => version.hours);
    expect([...hours].sort((a, b) => a - b)).toEqual(hours);
  }
});

test("what is drawn as even and as normal is", () => {
  const draws = drawsFor(SEED, "moments");
  const even = Array.from({ length: 40_000 }, draws.even);
  const normal = Array.from({ length: 40_000 }, () => draws.normal(0, 1));
  const moment = (list: readonly number[], power: number): number =>
    list.reduce((sum, value) => sum + value ** power, 0) / list.length;
  // five standard errors of each moment of the two distributions
  expect(Math.abs(moment(even, 1) - 1 / 2)).toBeLessThan(5 * 0.289 * 0.005);
  expect(Math.abs(moment(even, 2) - 1 / 3)).toBeLessThan(5 * 0.298 * 0.005);
  expect(Math.abs(moment(normal, 1))).toBeLessThan(5 * 0.005);
  expect(Math.abs(moment(normal, 2) - 1)).toBeLessThan(5 * 1.414 * 0.005);
  expect(Math.abs(moment(normal, 4) - 3)).toBeLessThan(5 * 9.8 * 0.005);
});
