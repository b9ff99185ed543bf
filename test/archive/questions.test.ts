// The ready questions: what they answer over records whose answer is known by hand, and that another engine, which reads the same Parquet
// files by their folders and shares no code with the first, gives the same rows to the same SQL. docs/archive.md says which engines were tried.
import { cp, mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import polars from "nodejs-polars";
import { beforeAll, describe, expect, test } from "vitest";
import { QUESTIONS } from "../../server/archive/questions.ts";
import { TABLE_NAMES } from "../../server/archive/schema.ts";
import { folderWith } from "../cli/in-process.ts";
import { shopHistory } from "../history/shop-history.ts";
import { truthsOf } from "../history/truths.ts";
import { CRIB, job, ran } from "./shop.ts";

type Row = Readonly<Record<string, unknown>>;

async function asked(
  name: string,
  cwd: string,
  archive = "archive",
): Promise<readonly Row[]> {
  const { code, out, err } = await ran(
    ["ask", name, "--archive", archive, "--format", "json"],
    cwd,
  );
  expect([code, err]).toEqual([0, ""]);
  const answer = JSON.parse(out) as {
    readonly schema: number;
    readonly question: string;
    readonly rows: readonly Row[];
  };
  expect([answer.schema, answer.question]).toEqual([1, name]);
  return answer.rows;
}

const INCH = 0.0254;

describe("over three jobs whose answers are known by hand", () => {
  let cwd = "";
  beforeAll(async () => {
    cwd = await folderWith({
      "crib.thou": CRIB,
      "a.thou": job("a", "2025-03-01", "0.8752"),
      "b.thou": job("b", "2025-03-20", "0.8754"),
      // measured after the day that its gauge was due, and looser than was signed for
      "c.thou": job("c", "2026-03-01", "0.8757"),
      "unsigned.thou":
        'job u\n  units inch\nconcession open\n  allows fit-loose on fit x\n  up to 0.002\n  why "to be asked"\n',
    });
    await ran(["export", "--out", "archive"], cwd);
  });

  test("closures", async () => {
    const rows = await asked("closures", cwd);
    expect(rows.map(({ record }) => record)).toEqual([
      "a.thou",
      "b.thou",
      "c.thou",
    ]);
    for (const row of rows) {
      expect(row).toMatchObject({
        press: "press drive",
        material: "material bronze-c932",
        lot: null,
      });
      // 0.8721 as bought, 0.8712 as pressed; 1.0014 in a hole of 1.0004
      expect(row.closed_m).toBeCloseTo(0.0009 * INCH, 12);
      expect(row.interference_m).toBeCloseTo(0.001 * INCH, 12);
      expect(Number(row.foretold_least_m)).toBeLessThan(0.001 * INCH);
      expect(row.step_m).toBeCloseTo(0.0001 * INCH, 12);
    }
    expect(rows[0]?.opened).toBe("2025-03-01");
  });

  test("reamer-wear", async () => {
    const rows = await asked("reamer-wear", cwd);
    expect(rows).toEqual([
      expect.objectContaining({
        record: "crib.thou",
        reamer: "reamer r-875",
        cut_year: 2025,
        cut_month: 3,
        bores: 2,
        jobs: 2,
      }),
      expect.objectContaining({ cut_year: 2026, cut_month: 3, bores: 1 }),
    ]);
    // bores of 0.8752 and 0.8754 by a reamer of 0.87501
    expect(rows[0]?.least_m).toBeCloseTo(0.8752 * INCH, 12);
    expect(rows[0]?.most_m).toBeCloseTo(0.8754 * INCH, 12);
    expect(rows[0]?.mean_over_m).toBeCloseTo(0.00029 * INCH, 12);
    expect(rows[1]?.mean_over_m).toBeCloseTo(0.00069 * INCH, 12);
    expect(rows[0]?.step_m).toBeCloseTo(0.0001 * INCH, 12);
  });

  test("gauges-overdue", async () => {
    expect(await asked("gauges-overdue", cwd)).toEqual([
      {
        record: "crib.thou",
        gauge: "gauge mic-1",
        kind: "micrometer",
        calibrated: "2025-01-10",
        due: "2026-01-10",
        newest_day: "2026-03-01",
        readings_late: 2,
        records_late: 1,
        last_late: "2026-03-01",
      },
    ]);
  });

  test("open-concessions", async () => {
    // the tightest journal is 0.87420, the loosest 0.87410: 0.8754 leaves 0.0013, within 0.0014; 0.8752 leaves 0.0011, and nothing to accept
    const rows = await asked("open-concessions", cwd);
    expect(rows.map(({ record, standing }) => [record, standing])).toEqual([
      ["b.thou", "holds"],
      ["unsigned.thou", "unsigned"],
    ]);
    expect(rows[0]).toMatchObject({
      concession: "concession loose",
      code: "fit-loose",
      on_entry: "fit drive",
      bound_unit: "m",
      signed_by: "Bench 2",
      signed_on: "2025-03-20",
      why: "spare is on order",
    });
    expect(rows[0]?.bound).toBeCloseTo(0.0014 * INCH, 12);
  });

  test("findings-by-month", async () => {
    const rows = await asked("findings-by-month", cwd);
    const loose = rows.filter(({ code }) => code === "fit-loose");
    expect(loose).toEqual([
      {
        opened_year: 2025,
        opened_month: 3,
        code: "fit-loose",
        found: 1,
        accepted: 1,
        records: 1,
      },
      {
        opened_year: 2026,
        opened_month: 3,
        code: "fit-loose",
        found: 1,
        accepted: 0,
        records: 1,
      },
    ]);
    expect(
      rows
        .filter(({ opened_year }) => opened_year === 0)
        .map(({ code }) => code),
    ).toContain("name-unknown");
  });
});

describe("on another engine", () => {
  const SEED = 60_032;
  let cwd = "";
  let other: ReturnType<typeof polars.SQLContext>;

  beforeAll(async () => {
    cwd = await folderWith({ "crib.thou": CRIB });
    await cp("samples", path.join(cwd, "samples"), { recursive: true });
    const history = shopHistory(SEED, { records: 60 });
    for (const { path: file, text } of [
      ...history.cribs,
      ...[...history.records].map((record) => ({
        path: record.path,
        text: record.versions.at(-1)?.text ?? "",
      })),
    ]) {
      await mkdir(path.dirname(path.join(cwd, file)), { recursive: true });
      await writeFile(path.join(cwd, file), text);
    }
    for (const [name, opened] of [
      ["a", "2025-03-01"],
      ["b", "2026-03-20"],
    ] as const)
      await writeFile(path.join(cwd, `${name}.thou`), job(name, opened));
    await ran(["export", "--out", "archive"], cwd);
    // a second export, so that there are parts of two states
    await writeFile(path.join(cwd, "c.thou"), job("c", "2026-05-01", "0.8754"));
    await ran(["export", "--out", "archive"], cwd);
    other = polars.SQLContext(
      Object.fromEntries(
        TABLE_NAMES.map((table) => [
          table,
          polars.scanParquet(
            path.join(cwd, "archive/tables", table, "*/*.parquet"),
          ),
        ]),
      ),
    );
  }, 120_000);

  test.each(QUESTIONS.map(({ name, sql }) => ({ name, sql })))(
    "$name gives the same rows in the same order",
    async ({ name, sql }) => {
      const wanted = await asked(name, cwd);
      const found = other.execute(sql, { eager: true }).toRecords();
      expect(wanted.length).toBeGreaterThan(0);
      expect(found).toHaveLength(wanted.length);
      wanted.forEach((row, index) => {
        const twin = found[index] as Row;
        expect(Object.keys(twin)).toEqual(Object.keys(row));
        for (const [key, value] of Object.entries(row)) {
          const theirs = twin[key];
          // a mean of the same numbers in another order may differ in its last bits
          if (typeof value === "number")
            expect(Number(theirs), `${index} ${key}`).toBeCloseTo(value, 14);
          else
            expect(
              theirs instanceof Date
                ? theirs.toISOString().slice(0, 10)
                : theirs,
              `${index} ${key}`,
            ).toEqual(value);
        }
      });
    },
  );

  test("and finds what is true of the made-up shop: the lot that closes more, the gauge that is overdue", async () => {
    const odd = truthsOf(SEED, 0).closures.find(({ isOdd }) => isOdd);
    const ratios = new Map<string, number[]>();
    for (const row of await asked("closures", cwd)) {
      if (!String(row.record).startsWith("shop-")) continue;
      const foretold =
        (Number(row.foretold_least_m) + Number(row.foretold_most_m)) / 2;
      const lot = String(row.lot);
      ratios.set(lot, [
        ...(ratios.get(lot) ?? []),
        Number(row.closed_m) / foretold,
      ]);
    }
    // of few bushes the chance of one counts for much
    const means = [...ratios]
      .filter(([, all]) => 4 < all.length)
      .map(([lot, all]) => ({
        lot,
        mean: all.reduce((sum, each) => sum + each, 0) / all.length,
      }))
      .sort((x, y) => y.mean - x.mean);
    expect(means.length).toBeGreaterThan(2);
    expect(odd).toBeDefined();
    expect(means[0]?.lot).toBe(odd?.lot);
    // the made-up crib's own second bore gauge
    expect(
      (await asked("gauges-overdue", cwd)).map(({ gauge, due }) => [
        gauge,
        due,
      ]),
    ).toContainEqual(["gauge bore-2", "2019-06-30"]);
  });
});
