// `thou trend` at work: versions in a real repository, records of one part, what can't be said, and what stands in the way.
import { readFile, rename } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith, thou } from "./in-process.ts";
import {
  commitAll,
  git,
  real,
  repositoryWith,
  write,
} from "./scratch-repository.ts";

/** A journal read on days, one value each; the record of visit so and so. */
function record(
  readings: readonly (readonly [date: string, size: string])[],
  more = "  service-limit 0.8730 to 0.8745\n",
): string {
  return `job visit
  units inch
part layshaft
  serial W-17
journal front on layshaft
  limits 0.8740 to 0.8745
${more}${readings.map(([date, size]) => `  read ${size} as run by AK on ${date}\n`).join("")}`;
}

const run = (cwd: string, ...words: readonly string[]) =>
  thou(["trend", ...words], { cwd, ...real });

// 0.2 thou a year, each reading a tenth of a thou off at most
const WEARS: readonly (readonly [string, string])[] = [
  ["2019-06-01", "0.87430"],
  ["2020-06-01", "0.87411"],
  ["2021-06-01", "0.87390"],
  ["2022-06-01", "0.87369"],
  ["2023-06-01", "0.87351"],
];

describe("records of one part", () => {
  test("are one series: how fast it wears, and when it is at its limit", async () => {
    const cwd = await folderWith(
      Object.fromEntries(
        WEARS.map((each, index) => [
          `visit-${String(index)}.thou`,
          record([each]),
        ]),
      ),
    );
    const { out, err, code } = await run(cwd, ".");
    expect(err).toBe("");
    expect(code).toBe(0);
    expect(out).toContain("part layshaft, serial W-17: journal front");
    expect(out).toMatch(/2019-06-01 {2}0\.87430 in +visit-0\.thou/);
    expect(out).toMatch(
      /It wears 0\.20\d? thou a year \(0\.19\d* to 0\.2\d*, 95 %\), of 5 days/,
    );
    // from 0.8735 in at 0.2 thou a year: 2.5 years on
    expect(out).toMatch(
      /It is at the service limit, 0\.87300 in, about 202(?:5-1|6-0)\d \(2025-\d\d to 2026-\d\d, 95 %\)/,
    );
  });

  test("as JSON, with the numbers of the contract", async () => {
    const cwd = await folderWith({ "a.thou": record(WEARS) });
    const { out } = await run(cwd, "a.thou", "--format", "json");
    const found = JSON.parse(out) as {
      schema: number;
      coverage: number;
      series: readonly {
        serial: string;
        entry: string;
        wears: string;
        limit: number;
        runs: readonly {
          rate: { perYear: number; low: number; high: number; way: string };
          points: readonly { date: string; value: number; datedBy: string }[];
        }[];
        reached: { earliest: string; latest: string };
      }[];
    };
    expect(found).toMatchObject({
      schema: 1,
      coverage: 0.95,
      series: [{ serial: "W-17", entry: "journal front", wears: "down" }],
    });
    const [series] = found.series;
    const [one] = series?.runs ?? [];
    expect(series?.limit).toBeCloseTo(0.873 * 0.0254, 12);
    expect(one?.points.map(({ date }) => date)).toEqual(
      WEARS.map(([date]) => date),
    );
    expect(one?.points[0]?.value).toBeCloseTo(0.8743 * 0.0254, 12);
    // least squares by hand: x = 0, 1, 2, 3, 4 years (but for a leap day), y in hundredths of a thou: 430, 411, 390, 369, 351
    const slope = (-2 * 430 - 411 + 369 + 2 * 351) / 10;
    expect((one?.rate.perYear ?? NaN) / (slope * 1e-5 * 0.0254)).toBeCloseTo(
      1,
      2,
    );
    expect(one?.rate.low).toBeLessThan(one?.rate.perYear ?? NaN);
    expect(one?.rate.way).toBe("wears");
  });

  test("a repair, and other limits, begin anew", async () => {
    const cwd = await folderWith({
      "a.thou": record(WEARS.slice(0, 3)),
      "b.thou": record([
        ["2022-06-01", "0.87440"],
        ["2023-06-01", "0.87420"],
      ]),
      "c.thou": record([["2024-06-01", "0.86440"]]).replace(
        "limits 0.8740 to 0.8745",
        "limits 0.8640 to 0.8645",
      ),
    });
    const { out } = await run(cwd, ".");
    expect(out).toContain(
      "Begins anew: the size went the other way, by more than readings differ.",
    );
    expect(out).toContain("Begins anew: other limits are written.");
  });

  test("a few readings, or none that change, say that they can't say", async () => {
    const cwd = await folderWith({
      "two.thou": record(WEARS.slice(0, 2)),
      "steady.thou": record([
        ["2019-06-01", "0.87430"],
        ["2020-06-01", "0.87428"],
        ["2021-06-01", "0.87431"],
      ]).replace("W-17", "W-18"),
    });
    const { out } = await run(cwd, ".");
    expect(out).toContain(
      "2 days with readings: a rate with its interval takes 3.",
    );
    expect(out).toContain("Cannot say yet whether it changes");
    expect(out).toMatch(
      /When it is at the service limit, 0\.87300 in, cannot be said yet/,
    );
  });

  test("a reading that another record copies makes nothing surer", async () => {
    const text = record(WEARS);
    const one = await folderWith({ "a.thou": text });
    const three = await folderWith({
      "a.thou": text,
      "b.thou": text,
      "c.thou": text,
    });
    const said = /It wears .*\n.*/u;
    const rate = said.exec((await run(one, ".")).out)?.[0];
    expect(rate).toBeDefined();
    expect(said.exec((await run(three, ".")).out)?.[0]).toBe(rate);
  });

  test("drawn, with all that is said in the picture", async () => {
    const cwd = await folderWith({ "a.thou": record(WEARS) });
    const { code } = await run(cwd, "a.thou", "--svg", "trend.svg");
    expect(code).toBe(0);
    const svg = await readFile(path.join(cwd, "trend.svg"), "utf8");
    expect(svg).toMatch(/^<svg [^>]*role="img"/);
    expect(svg).toContain("It wears 0.2");
    expect(svg).toContain("service limit 0.87300 in");
    expect(svg.match(/<circle /g)).toHaveLength(WEARS.length);
    expect(svg).not.toMatch(/NaN|undefined/);
  });
});

describe("versions of a record in git", () => {
  test("a reading without a day has that of its commit; a renamed record is followed", async () => {
    const undated = (size: string): string =>
      record([]).concat(`  read ${size} as run\n`);
    const cwd = await repositoryWith({ "old.thou": undated("0.8743") });
    await rename(path.join(cwd, "old.thou"), path.join(cwd, "new.thou"));
    commitAll(cwd, "renamed");
    await write(cwd, "new.thou", undated("0.8741"));
    commitAll(cwd, "worn");
    const { out, code, err } = await run(cwd, "new.thou");
    expect(err).toBe("");
    expect(code).toBe(0);
    const today = git(cwd, "log", "-1", "--format=%as");
    expect(out.match(new RegExp(`${today}\\*`, "g"))).toHaveLength(2);
    expect(out).toContain("0.8743 in");
    expect(out).toContain("0.8741 in");
    expect(out).toContain("* The reading has no day of its own");
    expect(out).toMatch(/new\.thou at [\da-f]{12}/);
  });

  test("readings without a day that are added year after year have each the day of its own commit", async () => {
    const cwd = await repositoryWith({ "crib.thou": "shop yard\n" });
    const lines = WEARS.map(([, size]) => `  read ${size} as run\n`);
    for (const [index, [date]] of WEARS.entries()) {
      await write(
        cwd,
        "a.thou",
        record([]).concat(...lines.slice(0, index + 1)),
      );
      git(cwd, "add", "--all");
      git(cwd, "commit", "--quiet", `--date=${date}T12:00:00Z`, "-m", date);
    }
    const asDated = await folderWith({ "a.thou": record(WEARS) });
    const { out } = await run(cwd, "a.thou");
    const dated = (await run(asDated, "a.thou")).out;
    const rate = /It wears .*/u.exec(dated)?.[0] ?? "no rate";
    expect(out).toContain(rate);
    for (const [date, size] of WEARS)
      expect(out).toContain(`${date}*  ${size}`);
    expect(out).not.toContain("left out");
    // and one that is in no commit is still asked for
    await write(cwd, "a.thou", record([]).concat(...lines, "  read 0.8733\n"));
    expect((await run(cwd, "a.thou")).out).toContain(
      "1 reading without a day, and in no commit that was read, left out",
    );
  });

  test("a clearance of readings without a day that came at several times is left out, and said", async () => {
    const job = (journal: string): string => `job pump
  units inch
part shaft
part case
journal drive on shaft
  limits 0.8738 to 0.8745
${journal}bore drive in case
  read 0.8755
fit drive of journal drive in bore drive
  want 0.0008 to 0.0016
`;
    const cwd = await repositoryWith({ "a.thou": job("  read 0.8743\n") });
    expect((await run(cwd, "a.thou")).out).toMatch(/fit drive\n.*0\.0012 in/u);
    await write(cwd, "a.thou", job("  read 0.8743\n  read 0.8741\n"));
    commitAll(cwd, "again");
    expect((await run(cwd, "a.thou")).out.replaceAll(/\s+/gu, " ")).toContain(
      "a.thou: fit drive has no clearance of a day: readings without a day came with several commits",
    );
  });

  test("lines that can't be read in older versions are said", async () => {
    const cwd = await repositoryWith({
      "a.thou": record(WEARS.slice(0, 1)).concat("  read 0.87..4 as run\n"),
    });
    await write(cwd, "a.thou", record(WEARS));
    commitAll(cwd, "whole");
    expect((await run(cwd, "a.thou")).out).toContain(
      "1 version of a.thou in git with lines of readings that can't be read",
    );
  });

  test("a version that can't be read is skipped and said", async () => {
    const cwd = await repositoryWith({ "a.thou": record(WEARS.slice(0, 1)) });
    await write(cwd, "a.thou", Buffer.from([0x6a, 0xff]));
    commitAll(cwd, "no text");
    await write(cwd, "a.thou", record(WEARS));
    commitAll(cwd, "whole");
    const { out, code } = await run(cwd, "a.thou");
    expect(code).toBe(0);
    expect(out).toMatch(/a\.thou at [\da-f]{12} is left out: .*not UTF-8/s);
    expect(out).toContain("It wears");
  });

  test("no repository, nothing committed, a clone of the newest commit", async () => {
    const plain = await folderWith({ "a.thou": record(WEARS) });
    expect((await run(plain, "a.thou")).out).toContain(
      "a.thou is read as it lies: this folder is not under version control.",
    );
    const cwd = await repositoryWith({ "a.thou": record(WEARS) });
    await write(cwd, "b.thou", record(WEARS));
    expect((await run(cwd, "b.thou")).out).toContain("it was never committed");
    const clones = await folderWith({});
    await write(cwd, "a.thou", record(WEARS.slice(0, 4)));
    commitAll(cwd, "again");
    git(clones, "clone", "--quiet", "--depth=1", `file://${cwd}`, "shallow");
    const { out } = await run(clones, "shallow/a.thou");
    expect(out.replaceAll(/\s+/gu, " ")).toContain(
      'holds only the newest commits: fetch the rest first ("git fetch --unshallow")',
    );
  });
});

test("what was left out is said, and a file that is not there", async () => {
  const cwd = await folderWith({
    "a.thou": record(WEARS).concat(
      "  read 0.8741\n  read 0.87..4 on 2024-01-01\n",
    ),
  });
  const { out } = await run(cwd, "a.thou", "--no-history");
  expect(out).toMatch(/1 reading without a day/);
  expect(out).toMatch(/1 line with a reading can't be read/);
  const gone = await run(cwd, "b.thou");
  expect(gone.code).toBe(2);
  expect(gone.err).toContain("b.thou");
});
