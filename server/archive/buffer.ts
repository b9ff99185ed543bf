// Where rows wait until a part is written: a database on the disk, so that memory stays flat however many records an export has. It writes
// the Parquet files; which ones, and what becomes of them, is archive.ts's.
import { stat } from "node:fs/promises";
import path from "node:path";
import {
  columnsSql,
  fileList,
  namesSql,
  openEngine,
  quoted,
  type Appender,
  type Engine,
} from "./engine.ts";
import { FULL, type Chunk } from "./plan.ts";
import {
  TABLE_NAMES,
  tableNamed,
  type Rows,
  type TableName,
} from "./schema.ts";

export interface Buffer {
  readonly engine: Engine;
  add(year: number, rows: Rows): void;
  /** How many records were added. */
  records(): number;
  /** The same by year, in the order that they came, as many together as a part takes. */
  chunks(): ReadonlyMap<number, readonly Chunk[]>;
  /** Records that are not to be taken over from parts. */
  setGone(names: Iterable<string>): Promise<void>;
  /** Writes one table of a part, and gives how many bytes that is. */
  copy(table: TableName, part: Copied): Promise<number>;
  close(): void;
}

export interface Copied {
  readonly year: number;
  readonly chunks: readonly number[];
  readonly from: readonly string[];
  readonly to: string;
}

const FLUSH = 50_000; // rows

/** @param folder for the database and what a sort can't hold in memory */
export async function openBuffer(folder: string): Promise<Buffer> {
  const engine = await openEngine({
    file: path.join(folder, "rows.duckdb"),
    scratch: path.join(folder, "scratch"),
  });
  await engine.run("CREATE TABLE gone (record VARCHAR)");
  const appenders = new Map<TableName, Appender>();
  for (const table of TABLE_NAMES) {
    await engine.run(
      `CREATE TABLE "${table}" (at_year INTEGER, at_chunk INTEGER, ${columnsSql(table)})`,
    );
    appenders.set(table, await engine.appender(table));
  }
  const chunks = new Map<number, { number: number; records: number }[]>();
  let records = 0;
  let waiting = 0;
  const flush = (): void => {
    for (const appender of appenders.values()) appender.flush();
    waiting = 0;
  };
  return {
    engine,
    add(year, rows) {
      const list = chunks.get(year) ?? [];
      chunks.set(year, list);
      let chunk = list.at(-1);
      if (chunk === undefined || FULL <= chunk.records) {
        chunk = { number: list.length, records: 0 };
        list.push(chunk);
      }
      chunk.records++;
      records++;
      for (const [table, appender] of appenders)
        for (const row of rows[table]) {
          appender.add([year, chunk.number], row);
          waiting++;
        }
      if (FLUSH <= waiting) flush();
    },
    records: () => records,
    chunks: () => chunks,
    async setGone(names) {
      flush();
      const list = [...names];
      for (let at = 0; at < list.length; at += 1000)
        await engine.run(
          `INSERT INTO gone VALUES ${list
            .slice(at, at + 1000)
            .map((name) => `(${quoted(name)})`)
            .join(", ")}`,
        );
    },
    async copy(table, { year, chunks: numbers, from, to }) {
      const names = namesSql(table);
      const fresh = `SELECT ${names} FROM "${table}" WHERE at_year = ${year} AND at_chunk IN (${[-1, ...numbers].join(", ")})`;
      const stays =
        from.length === 0
          ? ""
          : ` UNION ALL SELECT ${names} FROM read_parquet(${fileList(from)}, hive_partitioning = false) WHERE record NOT IN (SELECT record FROM gone)`;
      const order = ["record", ...tableNamed(table).order]
        .map((name) => `"${name}"`)
        .join(", ");
      await engine.run(
        `COPY (SELECT * FROM (${fresh}${stays}) ORDER BY ${order}) TO ${quoted(to)} (FORMAT PARQUET, COMPRESSION ZSTD)`,
      );
      return (await stat(to)).size;
    },
    close() {
      // what waits is not wanted any more: it need not fit on the disk
      for (const appender of appenders.values()) appender.close();
      engine.close();
    },
  };
}
