// Records that wait become chunks, as many together as fill a part; chunks and what stays of parts become the files of new parts.
import path from "node:path";
import { afterEach, expect, test } from "vitest";
import { openBuffer, type Buffer } from "../../server/archive/buffer.ts";
import { createDisk } from "../../server/archive/disk.ts";
import { fileList } from "../../server/archive/engine.ts";
import {
  TABLE_NAMES,
  tableNamed,
  type Rows,
} from "../../server/archive/schema.ts";
import { folderWith } from "../cli/in-process.ts";

/** A record of nothing but its name, and so many entries without one. */
function record(name: string, entries = 0): Rows {
  const row = (table: "jobs" | "entries") =>
    tableNamed(table).columns.map((column) =>
      column.name === "record" ? name : null,
    );
  return {
    ...(Object.fromEntries(
      TABLE_NAMES.map((table) => [table, []]),
    ) as unknown as Rows), // every table
    jobs: [row("jobs")],
    entries: Array.from({ length: entries }, () => row("entries")),
  };
}

const opened: Buffer[] = [];
afterEach(() => {
  for (const each of opened.splice(0)) each.close();
});

async function buffer(full = { records: 2, rows: 100 }) {
  const folder = await folderWith({});
  const held: number[] = [];
  const made = await openBuffer({
    folder,
    disk: createDisk(),
    full,
    holds: (rows) => held.push(rows),
  });
  opened.push(made);
  const names = async (file: string) => {
    const { rows } = await made.engine.rows(
      `SELECT record FROM read_parquet(${fileList([file])})`,
    );
    return rows.map(([name]) => name);
  };
  return { ...made, folder, held, names };
}

test("as many records of a year as fill a part are a chunk, what is left of each year another", async () => {
  const { chunks, names, held } = await buffer();
  for (const name of ["c", "a", "b"]) await chunks.add(2025, record(name));
  await chunks.add(2026, record("d"));
  expect(chunks.records()).toBe(4);
  const all = await chunks.all();
  expect(
    [...all].map(([year, some]) => [year, some.map((one) => one.records)]),
  ).toEqual([
    [2025, [2, 1]],
    [2026, [1]],
  ]);
  const [first] = all.get(2025) ?? [];
  if (first === undefined) throw new Error("no chunk");
  // in the order of the table, not in that in which they came
  expect(await names(chunks.fileOf(first, "jobs"))).toEqual(["a", "c"]);
  expect(Math.max(...held)).toBe(2);
  expect(held.at(-1)).toBe(0);
});

test("rows of all tables fill it as well; one without records has every table", async () => {
  const { chunks, names } = await buffer({ records: 50, rows: 10 });
  await chunks.add(2025, record("a", 20));
  await chunks.add(2025, record("b"));
  expect((await chunks.all()).get(2025)).toMatchObject([
    { records: 1, rows: 21 },
    { records: 1, rows: 1 },
  ]);
  const empty = await chunks.empty();
  for (const table of TABLE_NAMES)
    expect(await names(chunks.fileOf(empty, table))).toEqual([]);
});

test("a new part has the rows of its chunks, and those of former parts whose records are not gone", async () => {
  const { chunks, merging, names, folder } = await buffer();
  for (const name of ["a", "d", "b", "c's"])
    await chunks.add(2025, record(name));
  const [former, fresh] = (await chunks.all()).get(2025) ?? [];
  if (former === undefined || fresh === undefined) throw new Error("no chunks");
  const file = chunks.fileOf(former, "jobs");
  expect(await merging.rowsIn([file])).toBe(2);
  await merging.setGone(["d", "c's"]);
  expect(await merging.rowsIn([file])).toBe(1);
  const to = path.join(folder, "part.parquet");
  await merging.merge("jobs", [chunks.fileOf(fresh, "jobs")], [file], to);
  // what is gone from parts may be there anew
  expect(await names(to)).toEqual(["a", "b", "c's"]);
  await merging.merge("jobs", [], [file], to);
  expect(await names(to)).toEqual(["a"]);
});
