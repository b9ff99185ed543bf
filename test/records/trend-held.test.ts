// What is held of many records while their trends are gathered and written: of each size what a trend takes, of one entry where one is asked for,
// and one series at a time. So memory goes with the sizes that were asked for and not with what was read.
import { Readable } from "node:stream";
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { trendJson } from "../../server/cli/trend-json.ts";
import { trendText } from "../../server/cli/trend-text.ts";
import { createProject } from "../../server/rules/check.ts";
import { createGathering } from "../../server/records/trend-gather.ts";
import type { DatedSize } from "../../server/records/trend-state.ts";
import { eachSeries, seriesOf } from "../../server/records/trend.ts";

const DAYS = ["2023-06-01", "2024-06-01", "2025-06-01"];

/** The sizes of so many records of parts of their own, as they are gathered. */
function gathered(records: number, only?: string): readonly DatedSize[] {
  const project = createProject({ root: "" });
  const gathering = createGathering(only);
  for (let index = 0; index < records; index++) {
    const path = `/visit-${String(index)}.thou`;
    const read = DAYS.map(
      (day) => `  read 0.87${String(43 - index)} as run by AK on ${day}\n`,
    ).join("");
    project.setFile(
      path,
      readLines(
        `job visit\n  units inch\npart shaft\n  serial W-${String(index)}\n` +
          `journal front on shaft\n${read}journal rear on shaft\n${read}`,
      ),
    );
    const open = project.open(path);
    if (open !== undefined) gathering.record(path).now(open);
    project.dropFile(path);
  }
  return gathering.points();
}

test("of each size what a trend takes, and nothing of how its state was told from others", () => {
  const sizes = gathered(3);
  expect(sizes).toHaveLength(3 * 2 * DAYS.length);
  for (const size of sizes)
    // what is told apart before: its lines as they are written, the day of its state
    expect(Object.keys(size).sort()).toEqual(
      [
        "commit count date datedBy entry file gauge hours limit",
        "limitIs limits madeIn part serial step system uncertainty value",
      ]
        .join(" ")
        .split(" "),
    );
});

test("of one entry where one is asked for, the same as of all", () => {
  const all = gathered(3);
  expect(gathered(3, "journal front")).toEqual(
    all.filter(({ entry }) => entry === "journal front"),
  );
  expect(gathered(3, "journal nowhere")).toEqual([]);
});

test("a series is made as it is written: no more are made than were taken", () => {
  const io = {
    stdout: {
      write: () => undefined,
      drained: () => Promise.resolve(),
      isTerminal: false,
      columns: 80,
      isClosed: false,
    },
  };
  const sizes = gathered(3);
  for (const write of [
    (series: Parameters<typeof trendJson>[0]) =>
      trendJson(series, ["a note"], "date"),
    (series: Parameters<typeof trendText>[0]) =>
      trendText(series, ["a note"], "date", {
        ...io,
        stderr: io.stdout,
        stdin: Readable.from([]),
        cwd: "/",
        env: {},
      }),
  ]) {
    let made = 0;
    const pieces: string[] = [];
    const counting = function* () {
      for (const each of eachSeries(sizes, "date")) {
        made++;
        yield each;
      }
    };
    for (const piece of write(counting())) {
      pieces.push(piece);
      expect(made).toBeLessThanOrEqual(pieces.length);
    }
    expect(made).toBe(6);
    expect(pieces.join("")).toBe([...write(seriesOf(sizes))].join(""));
  }
  // nor is one worked out before it is taken: what of its size is no day is met only then
  const later = sizes.map((size) =>
    size.serial === "W-2"
      ? Object.defineProperty({ ...size }, "date", {
          get: () => {
            throw new Error("taken");
          },
        })
      : size,
  );
  const series = eachSeries(later, "date")[Symbol.iterator]();
  for (let index = 0; index < 4; index++)
    expect(series.next().done).toBe(false);
  expect(() => series.next()).toThrow("taken");
});

test("without a series, and with hours that no one wrote, the JSON is whole", () => {
  for (const [series, along] of [
    [[], "date"],
    [eachSeries(gathered(1), "hours"), "hours"],
  ] as const)
    expect(JSON.parse([...trendJson(series, ["a"], along)].join(""))).toEqual({
      schema: 1,
      coverage: 0.95,
      against: along,
      series: [],
      notes: ["a"],
    });
});
