// `thou trend` at work: versions in a real repository, records of one part, what can't be said, and what stands in the way.
import { readdir, readFile, rename } from "node:fs/promises";
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
    // drawn anew over itself
    expect((await run(cwd, "a.thou", "--svg", "trend.svg")).code).toBe(0);
  });

  test("drawn so that it stands alone: named, told to who sees none of it, with what its side and its marks are", async () => {
    const cwd = await folderWith({ "a.thou": record(WEARS) });
    const { out } = await run(cwd, "a.thou", "--format", "svg");
    const name = "part layshaft, serial W-17: journal front";
    expect(out).toMatch(
      new RegExp(`^<svg [^>]*aria-label="${name}"[^>]*><title>${name}</title>`),
    );
    expect(out).toMatch(/<desc>[^<]*It wears 0\.2[^<]*<\/desc>/);
    expect(out).toContain(">Diameter at 20 °C</text>");
    expect(out).toContain(
      ">Point: as read. Line: the rate; band round it: where the line may lie (95\u00A0%).</text>",
    );
    // no program can draw a rim over its letters
    expect(out).not.toContain("paint-order");
  });

  test("drawn with why it begins anew, and a clearance as on the diameter", async () => {
    const cwd = await folderWith({
      "a.thou": `${record([...WEARS, ["2024-06-01", "0.87440"]])}bore front in layshaft
  read 0.8752 on 2024-06-01
fit front of journal front in bore front
  want 0.0008 to 0.0016
`,
    });
    const { out } = await run(cwd, "a.thou", "--format", "svg");
    expect(out).toContain(
      "It begins anew where a gap is drawn: the size went the other way",
    );
    expect(out).toContain(">Clearance on the diameter, at 20 °C</text>");
  });

  test("are drawn over no file that is something else", async () => {
    const text = record(WEARS);
    const cwd = await folderWith({ "a.thou": text, "plan.svg": "<svg/>\n" });
    for (const name of ["a.thou", "plan.svg"])
      expect(await run(cwd, "a.thou", "--svg", name)).toEqual({
        code: 2,
        out: "",
        err: expect.stringContaining(
          `${name} is there already, and was not drawn by thou trend.`,
        ) as string,
      });
    expect(await readFile(path.join(cwd, "a.thou"), "utf8")).toBe(text);
    expect(await readFile(path.join(cwd, "plan.svg"), "utf8")).toBe("<svg/>\n");
    expect((await run(cwd, "a.thou", "--svg", ".")).err).toBe(
      "thou: . cannot be written: it is a folder; name another file.\n",
    );
    // a device has no end to read to
    expect((await run(cwd, "a.thou", "--svg", "/dev/zero")).err).toMatch(
      /cannot be written: it is not a file; name another\s+file\.\n$/u,
    );
  });
});

describe("against running hours", () => {
  // 0.1 thou per 1000 h to within a hundredth of a thou; run 1500 to 2500 h a year
  const HOURS = ["10000", "11500", "14000.5", "15600", "18000"] as const;
  const SIZES = ["0.87430", "0.87416", "0.87389", "0.87374", "0.87350"];
  const visits = WEARS.map(([date], index): readonly [string, string] => [
    date,
    SIZES[index] ?? "",
  ]);
  const withHours = (hours: readonly string[]): string =>
    record(visits).replace(
      "  units inch\n",
      `  units inch\n${hours.map((each, index) => `  hours ${each} h on ${visits[index]?.[0] ?? ""}\n`).join("")}`,
    );

  test("the rate is per 1000 h, and the limit at so many hours", async () => {
    const cwd = await folderWith({ "a.thou": withHours(HOURS) });
    const { out, code, err } = await run(cwd, ".", "--against", "hours");
    expect(err).toBe("");
    expect(code).toBe(0);
    expect(out).toMatch(/2019-06-01 {2}10000 h +0\.87430 in/);
    expect(out).toMatch(
      /It wears 0\.10\d* thou per 1000 h \(0\.\d+ to 0\.\d+, 95 %\), of 5 hour-meter readings/,
    );
    // 0.5 thou from 0.8735 in at 0.1 thou per 1000 h: 5000 h on from 18000 h
    expect(out.replaceAll(/\s+/gu, " ")).toMatch(
      /at the service limit, 0\.87300 in, about 2[23]\d\d0 h \(2\d+ h to 2\d+ h, 95 %\)/,
    );
    const json = JSON.parse(
      (await run(cwd, ".", "--against", "hours", "--format", "json")).out,
    ) as {
      against: string;
      series: readonly {
        runs: readonly {
          rate: Record<"perThousandHours" | "low" | "high", number>;
          points: readonly { hours: number }[];
        }[];
        reached: { likeliest: number };
      }[];
    };
    expect(json.against).toBe("hours");
    const [series] = json.series;
    expect(series?.runs[0]?.points.map(({ hours }) => hours)).toEqual(
      HOURS.map(Number),
    );
    // least squares by hand, hours over 10000 and hundredths of a thou
    const x = HOURS.map(Number);
    const y = SIZES.map(Number);
    const [mx, my] = [x, y].map((all) => all.reduce((a, b) => a + b) / 5) as [
      number,
      number,
    ];
    const slope =
      x.reduce((sum, each, at) => sum + (each - mx) * ((y[at] ?? 0) - my), 0) /
      x.reduce((sum, each) => sum + (each - mx) ** 2, 0);
    const rate = series?.runs[0]?.rate;
    expect(
      (rate?.perThousandHours ?? NaN) / (slope * 1000 * 0.0254),
    ).toBeCloseTo(1, 9);
    expect(
      (series?.reached.likeliest ?? NaN) / (mx + (0.873 - my) / slope),
    ).toBeCloseTo(1, 6);
  });

  test("drawn over hours", async () => {
    const cwd = await folderWith({ "a.thou": withHours(HOURS) });
    const { out } = await run(
      cwd,
      ".",
      "--against",
      "hours",
      "--format",
      "svg",
    );
    expect(out).toContain("12000 h</text>");
    expect(out).toContain("per 1000 h");
    expect(out).not.toMatch(/NaN|undefined/);
  });

  test("days without hours are left out and counted; where none has them, what to write is said", async () => {
    const few = await folderWith({ "a.thou": withHours(HOURS.slice(0, 2)) });
    const said = (await run(few, ".", "--against", "hours")).out.replaceAll(
      /\s+/gu,
      " ",
    );
    expect(said).toContain("3 sizes of days on which no hours are written");
    expect(said).toContain(
      "2 hour-meter readings: a rate with its interval takes 3.",
    );
    const none = await folderWith({ "a.thou": record(visits) });
    expect(
      (await run(none, ".", "--against", "hours")).out.replaceAll(/\s+/gu, " "),
    ).toContain("`hours 12400 h on DATE` in the job, on 3 days at least");
  });

  test("two hours of one day that differ are not chosen from; a meter that goes back begins anew", async () => {
    const cwd = await folderWith({
      "a.thou": withHours([...HOURS.slice(0, 3), "200", "2600"]).replace(
        "  hours 10000 h",
        "  hours 10010 h on 2019-06-01\n  hours 10000 h",
      ),
    });
    const out = (await run(cwd, ".", "--against", "hours")).out;
    expect(out.replaceAll(/\s+/gu, " ")).toContain(
      "1 size of days on which no hours are written, or two that differ",
    );
    expect(out).toContain("Begins anew: the hour meter went back");
  });
});

describe("a reading whose day is mended in a later version", () => {
  const days = (text: string): readonly string[] =>
    [...text.matchAll(/^ {2}(\d{4}-\d\d-\d\d)\*? /gmu)].map(
      ([, day = ""]) => day,
    );

  test("counts on the mended day alone", async () => {
    const wrong = WEARS.map(([date, size], index): readonly [string, string] =>
      index === 1 ? ["2002-06-01", size] : [date, size],
    );
    const cwd = await repositoryWith({ "a.thou": record(wrong) });
    await write(cwd, "a.thou", record(WEARS));
    commitAll(cwd, "day mended");
    expect(days((await run(cwd, "a.thou")).out)).toEqual(
      WEARS.map(([date]) => date),
    );
  });

  test("and one that had none, on the day that it is given", async () => {
    const cwd = await repositoryWith({
      "a.thou": record(WEARS.slice(0, 3)).concat("  read 0.87369 as run\n"),
    });
    await write(cwd, "a.thou", record(WEARS));
    commitAll(cwd, "dated");
    expect(days((await run(cwd, "a.thou")).out)).toEqual(
      WEARS.map(([date]) => date),
    );
  });

  test("one that is put in the place of another, or reads the same as an older one, is its own", async () => {
    const cwd = await repositoryWith({ "a.thou": record(WEARS.slice(0, 1)) });
    await write(cwd, "a.thou", record(WEARS.slice(1, 2)));
    commitAll(cwd, "read anew");
    await write(
      cwd,
      "a.thou",
      record([...WEARS.slice(1, 2), ["2021-06-01", "0.87411"]]),
    );
    commitAll(cwd, "the same again");
    await write(cwd, "a.thou", record([["2021-06-01", "0.87411"]]));
    commitAll(cwd, "the older one put away");
    expect(days((await run(cwd, "a.thou")).out)).toEqual([
      "2019-06-01",
      "2020-06-01",
      "2021-06-01",
    ]);
  });
});

describe("a reading that takes the place of one that read the same", () => {
  const committed = async (
    second: readonly [string, string],
  ): Promise<string> => {
    const cwd = await repositoryWith({ "a.thou": record([]) });
    for (const [day, visit] of [
      ["2019-06-03", WEARS[0]],
      ["2020-06-04", second],
    ] as const) {
      await write(cwd, "a.thou", record(visit === undefined ? [] : [visit]));
      git(cwd, "add", "--all");
      git(cwd, "commit", "--quiet", `--date=${day}T12:00:00Z`, "--message=v");
    }
    return (await run(cwd, "a.thou")).out;
  };

  test("is its own where it was taken after the first was committed", async () => {
    const out = await committed(["2020-06-01", "0.87430"]);
    expect(out).toMatch(/2019-06-01 {2}0\.87430/u);
    expect(out).toMatch(/2020-06-01 {2}0\.87430/u);
  });

  test("is the same with its day mended where the first commit could have had it", async () => {
    const out = await committed(["2019-06-02", "0.87430"]);
    expect(out).not.toContain("2019-06-01");
    expect(out).toMatch(/2019-06-02 {2}0\.87430/u);
  });
});

describe("versions of a record in git", () => {
  test("a reading without a day has that of its commit; a renamed record is followed", async () => {
    const undated = (size: string): string =>
      record([]).concat(`  read ${size} as run\n`);
    const cwd = await repositoryWith({ "old.thou": undated("0.8743") });
    // under its new name there is no version with the first reading
    await rename(path.join(cwd, "old.thou"), path.join(cwd, "new.thou"));
    await write(cwd, "new.thou", undated("0.8741"));
    commitAll(cwd, "renamed, and worn");
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
  const drawn = path.join(cwd, "b.svg");
  const gone = await run(cwd, "b.thou", "--entry", "fit front", "--svg", drawn);
  expect(gone).toEqual({
    code: 2,
    out: "",
    err: "thou: b.thou cannot be read: there is no such file or folder.\n",
  });
  expect(await readdir(cwd)).toEqual(["a.thou"]);
  const json = await run(cwd, "b.thou", "--format", "json");
  expect(json.code).toBe(2);
  expect(JSON.parse(json.out)).toMatchObject({ series: [] });
});

test("that there is nothing to draw fits a narrow terminal", async () => {
  const cwd = await folderWith({ "a.thou": "job a\n" });
  const { out } = await thou(["trend", "a.thou", "--no-history"], {
    cwd,
    columns: 60,
  });
  expect(out).toContain("No size with a day of its own");
  expect(out.split("\n").filter((line) => 60 < line.length)).toEqual([]);
});

describe("one entry that is asked for", () => {
  test.each([
    [
      "journal frnot",
      "No record here has journal frnot; did you mean journal front?",
    ],
    ["front", "No record here has front; did you mean journal front?"],
    [
      "quay",
      'No record here has quay: name an entry as "journal front", "bore rear" or "fit front".',
    ],
    ["bore rear", "There is no size with a day of bore rear."],
  ])("%s: %s", async (entry, said) => {
    const cwd = await folderWith({
      "a.thou": `${record([["2019-06-01", "0.8743"]])}part case\nbore rear in case\n`,
    });
    const { out, code } = await thou(["trend", ".", "--entry", entry], {
      cwd,
      columns: 400,
      ...real,
    });
    expect([code, out.includes(said)]).toEqual([0, true]);
  });
});
