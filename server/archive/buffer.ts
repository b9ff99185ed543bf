// Where records wait until a part is written. Those of a year wait on the disk; once they fill a part, or the export ends, they become a chunk:
// its Parquet files, which are a part's or go into one. So the engine holds one table of one part and no more, however many records there are.
import path from "node:path";
import type { Disk } from "./disk.ts";
import {
  columnsSql,
  fileList,
  namesSql,
  openEngine,
  quoted,
  type Engine,
} from "./engine.ts";
import { isFull, type Chunk, type Limits } from "./plan.ts";
import {
  TABLE_NAMES,
  tableNamed,
  type Rows,
  type TableName,
} from "./schema.ts";
import { openSpool, type Spool } from "./spool.ts";

export interface Buffer {
  readonly engine: Engine;
  add(year: number, rows: Rows): Promise<void>;
  /** How many records were added. */
  records(): number;
  /** The same by year, as many together as a part takes. Nothing is added after it. */
  chunks(): Promise<ReadonlyMap<number, readonly Chunk[]>>;
  /** A chunk without records. */
  emptyChunk(): Promise<Chunk>;
  fileOf(chunk: Chunk, table: TableName): string;
  /** Records that are not to be taken over from parts. */
  setGone(names: Iterable<string>): Promise<void>;
  /** Rows of the other records in files of parts. */
  rowsIn(files: readonly string[]): Promise<number>;
  /** Writes one table of chunks, and the other records' rows of it from files of parts, as one file. */
  merge(
    table: TableName,
    chunks: readonly Chunk[],
    parts: readonly string[],
    to: string,
  ): Promise<void>;
  close(): void;
}

export interface BufferOptions {
  /** For what waits, the chunks, and what a sort can't hold in memory. */
  readonly folder: string;
  readonly disk: Disk;
  /** What fills a part. */
  readonly full: Limits;
  /** Told how many rows the engine holds or has just put in order, whenever that changes. */
  readonly holds: (rows: number) => void;
}

interface Open {
  readonly number: number;
  readonly spool: Spool;
  records: number;
  rows: number;
}

export async function openBuffer(options: BufferOptions): Promise<Buffer> {
  const { folder, disk, full, holds } = options;
  const engine = await openEngine({ scratch: path.join(folder, "scratch") });
  await engine.run("CREATE TABLE gone (record VARCHAR)");
  const open = new Map<number, Open>();
  const closed = new Map<number, Chunk[]>();
  let records = 0;
  let made = 0;

  const spoolFile = (number: number): string =>
    path.join(folder, `${number}.rows`);
  const fileOf = ({ number }: Pick<Chunk, "number">, table: TableName) =>
    path.join(folder, String(number), `${table}.parquet`);
  const start = (): Open => {
    const number = made++;
    const spool = openSpool(spoolFile(number), disk);
    return { number, spool, records: 0, rows: 0 };
  };

  async function write(table: TableName, waiting: Open): Promise<void> {
    await engine.run(`CREATE TABLE "${table}" (${columnsSql(table)})`);
    const appender = await engine.appender(table);
    try {
      let rows = 0;
      for (const piece of await waiting.spool.read(table)) {
        for (const row of piece) appender.add(row);
        rows += piece.length;
        holds(rows);
      }
      appender.flush();
    } finally {
      appender.close();
    }
    const to = fileOf(waiting, table);
    disk.before("copy", to);
    await engine.run(copySql(table, `"${table}"`, to));
    await engine.run(`DROP TABLE "${table}"`);
    holds(0);
  }

  async function close(waiting: Open): Promise<Chunk> {
    await disk.makeFolder(path.join(folder, String(waiting.number)));
    for (const table of TABLE_NAMES) await write(table, waiting);
    // its room is wanted for the parts
    await disk.remove(spoolFile(waiting.number));
    const { number, records: count, rows } = waiting;
    return { number, records: count, rows };
  }

  async function closeYear(year: number, waiting: Open): Promise<void> {
    open.delete(year);
    closed.set(year, [...(closed.get(year) ?? []), await close(waiting)]);
  }

  return {
    engine,
    fileOf,
    async add(year, rows) {
      const waiting = open.get(year) ?? start();
      open.set(year, waiting);
      waiting.rows += await waiting.spool.add(rows);
      waiting.records++;
      records++;
      if (isFull(waiting, full)) await closeYear(year, waiting);
    },
    records: () => records,
    async chunks() {
      for (const [year, waiting] of [...open]) await closeYear(year, waiting);
      return closed;
    },
    emptyChunk: () => close(start()),
    async setGone(names) {
      const list = [...names];
      for (let at = 0; at < list.length; at += 1000)
        await engine.run(
          `INSERT INTO gone VALUES ${list
            .slice(at, at + 1000)
            .map((name) => `(${quoted(name)})`)
            .join(", ")}`,
        );
    },
    async rowsIn(files) {
      const all = files.map(
        (file) => `SELECT record FROM read_parquet(${fileList([file])})`,
      );
      const { rows } = await engine.rows(
        `SELECT COUNT(*) FROM (${all.join(" UNION ALL ")}) WHERE ${STAYS}`,
      );
      return Number(rows[0]?.[0]);
    },
    async merge(table, fresh, parts, to) {
      const names = namesSql(table);
      const read = (files: readonly string[]): string =>
        `SELECT ${names} FROM read_parquet(${fileList(files)}, hive_partitioning = false)`;
      const sources = [
        ...(fresh.length === 0
          ? []
          : [read(fresh.map((chunk) => fileOf(chunk, table)))]),
        ...(parts.length === 0 ? [] : [`${read(parts)} WHERE ${STAYS}`]),
      ];
      disk.before("copy", to);
      holds(
        await engine.run(
          copySql(table, `(${sources.join(" UNION ALL ")})`, to),
        ),
      );
      holds(0);
    },
    close() {
      engine.close();
    },
  };
}

/** Rows that the engine gathers before it writes them. */
const ROW_GROUP = 20_480;
const STAYS = "record NOT IN (SELECT record FROM gone)";

/** Rows of one table as a file, in the table's order. */
function copySql(table: TableName, rows: string, to: string): string {
  const order = ["record", ...tableNamed(table).order]
    .map((name) => `"${name}"`)
    .join(", ");
  return `COPY (SELECT * FROM ${rows} ORDER BY ${order}) TO ${quoted(to)} (FORMAT PARQUET, COMPRESSION ZSTD, ROW_GROUP_SIZE ${ROW_GROUP})`;
}
