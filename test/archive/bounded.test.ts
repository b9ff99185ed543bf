// An export holds no more rows at once than fill a part, however many records it has, and writes no larger parts: rows are counted as the engine
// takes them or puts them in order, and in the tables as they lie there.
import { rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { expect, test } from "vitest";
import { createDisk } from "../../server/archive/disk.ts";
import type { Limits } from "../../server/archive/plan.ts";
import { TABLE_NAMES } from "../../server/archive/schema.ts";
import { folderWith } from "../cli/in-process.ts";
import { exportShop } from "./export-shop.ts";
import { CRIB, filesOf, job, rowsOf } from "./shop.ts";

const DAY = "2026-03-01";
const ANY = Number.POSITIVE_INFINITY;

/** Jobs of one day that are alike but for their names, all as long. */
function jobs(count: number, bore?: string): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Array.from({ length: count }, (_, index) => {
      const name = `j${String(index).padStart(3, "0")}`;
      return [`${name}.thou`, job(name, DAY, bore)];
    }),
  );
}

async function write(
  cwd: string,
  files: Readonly<Record<string, string>>,
): Promise<void> {
  for (const [name, text] of Object.entries(files))
    await writeFile(path.join(cwd, name), text);
}

/** The most rows that an export held at once. */
async function mostHeld(
  cwd: string,
  full: Limits,
  out = "archive",
): Promise<number> {
  let most = 0;
  await exportShop(cwd, path.join(cwd, out), createDisk(), {
    full,
    holds(rows) {
      most = Math.max(most, rows);
    },
  });
  return most;
}

/** Records and rows of each part of the year of the jobs. */
async function partsIn(cwd: string): Promise<readonly Limits[]> {
  const files = TABLE_NAMES.map(
    (table) =>
      `SELECT record, filename FROM ${filesOf(path.join(cwd, "archive"), table).replace("hive_", "filename = true, hive_")} WHERE year = 2026`,
  );
  const parts = await rowsOf(
    `SELECT COUNT(DISTINCT record)::INTEGER AS records, COUNT(*)::INTEGER AS n
     FROM (${files.join(" UNION ALL ")}) GROUP BY parse_filename(filename)`,
  );
  return parts.map(({ records, n }) => ({
    records: Number(records),
    rows: Number(n),
  }));
}

test("four times the records: no more rows held, neither the first time, nor once all or one of them have changed", async () => {
  const full = { records: 6, rows: ANY };
  const few = await folderWith({ "crib.thou": CRIB, ...jobs(6) });
  const one = await mostHeld(few, { records: 1, rows: ANY }, "one");
  const most = await mostHeld(few, full);
  expect(most).toBe(6 * one);
  const many = await folderWith({ "crib.thou": CRIB, ...jobs(24) });
  for (const changed of [jobs(0), jobs(24, "0.8753"), jobs(1, "0.8754")]) {
    await write(many, changed);
    expect(await mostHeld(many, full)).toBe(most);
    expect((await partsIn(many)).map(({ records }) => records)).toEqual([
      6, 6, 6, 6,
    ]);
  }
  // what is left of two parts goes into one
  for (const name of Object.keys(jobs(9))) await rm(path.join(many, name));
  expect(await mostHeld(many, full)).toBeLessThanOrEqual(most);
  expect(
    (await partsIn(many)).reduce((sum, part) => sum + part.records, 0),
  ).toBe(15);
}, 60_000);

test("long records: fewer of them fill a part", async () => {
  const cwd = await folderWith({ "crib.thou": CRIB, ...jobs(12) });
  await mostHeld(cwd, { records: 12, rows: ANY });
  const [whole] = await partsIn(cwd);
  expect(whole?.records).toBe(12);
  const each = (whole?.rows ?? 0) / 12;
  await write(cwd, jobs(12, "0.8753"));
  await mostHeld(cwd, { records: 12, rows: 3 * each });
  const parts = await partsIn(cwd);
  expect(parts.map(({ records }) => records)).toEqual([3, 3, 3, 3]);
  // one record that is more than that by itself is a part by itself
  await write(cwd, jobs(12));
  await mostHeld(cwd, { records: 12, rows: 1 });
  expect(await partsIn(cwd)).toHaveLength(12);
}, 60_000);

test("the rows are the same, however few fill a part", async () => {
  const names = Array.from({ length: 2500 }, (_, index) => `part p${index}`);
  const parts = `${names.join("\n")}\n`;
  const cwd = await folderWith({
    "crib.thou": CRIB,
    ...jobs(7),
    // more rows than are put aside together
    "long.thou": `job long\n${parts}`,
    "odd.thou": `job odd\n  title "\u2028 \u0000 \\u{1F529}"\n  opened ${DAY}\n`,
  });
  await mostHeld(cwd, { records: 3, rows: ANY }, "small");
  await mostHeld(cwd, { records: 1000, rows: ANY }, "large");
  for (const table of TABLE_NAMES) {
    const [small, large] = ["small", "large"].map(
      (out) => `(SELECT * FROM ${filesOf(path.join(cwd, out), table)})`,
    );
    const [count] = await rowsOf(`SELECT COUNT(*)::INTEGER AS n FROM ${large}`);
    expect(count?.n, table).toBeGreaterThan(table === "uses" ? -1 : 0);
    for (const [one, other] of [
      [small, large],
      [large, small],
    ])
      expect(
        await rowsOf(`FROM ${one} EXCEPT ALL FROM ${other}`),
        table,
      ).toEqual([]);
  }
  const entries = await rowsOf(
    `SELECT entry FROM ${filesOf(path.join(cwd, "small"), "entries")} WHERE record = 'long.thou' ORDER BY number`,
  );
  expect(entries.map(({ entry }) => entry)).toEqual(["job long", ...names]);
}, 60_000);
