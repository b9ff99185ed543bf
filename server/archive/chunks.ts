// Where records wait until a part is written. Those of a year wait on the disk; once they fill a part, or the export ends, they become a chunk:
// its Parquet files, which are a part's or go into one.
import path from "node:path";
import { copySql } from "./copy-sql.ts";
import type { Disk } from "./disk.ts";
import { columnsSql, type Engine } from "./engine.ts";
import { isFull, type Chunk, type Limits } from "./plan.ts";
import { TABLE_NAMES, type Rows, type TableName } from "./schema.ts";
import { openSpool, type Spool } from "./spool.ts";

export interface Chunks {
  add(year: number, rows: Rows): Promise<void>;
  /** How many records were added. */
  records(): number;
  /** The same by year, as many together as a part takes. Nothing is added after it. */
  all(): Promise<ReadonlyMap<number, readonly Chunk[]>>;
  /** One without records. */
  empty(): Promise<Chunk>;
  readonly fileOf: (chunk: Chunk, table: TableName) => string;
}

export interface ChunkOptions {
  /** For what waits, and for the chunks. */
  readonly folder: string;
  readonly disk: Disk;
  /** What fills a part. */
  readonly full: Limits;
  /** Told how many rows the engine holds, whenever that changes. */
  readonly holds: (rows: number) => void;
}

/** Records of one year that have not filled a part yet. */
interface Waiting {
  readonly number: number;
  readonly file: string;
  readonly spool: Spool;
  records: number;
  rows: number;
}

export function createChunks(engine: Engine, options: ChunkOptions): Chunks {
  const { folder, disk, full } = options;
  const waiting = new Map<number, Waiting>();
  const closed = new Map<number, Chunk[]>();
  let records = 0;
  let made = 0;

  function start(): Waiting {
    const number = made++;
    const file = path.join(folder, `${number}.rows`);
    return { number, file, spool: openSpool(file, disk), records: 0, rows: 0 };
  }

  async function close(one: Waiting): Promise<Chunk> {
    await disk.makeFolder(path.join(folder, String(one.number)));
    for (const table of TABLE_NAMES)
      await write(engine, table, one, fileIn(folder, one, table), options);
    // its room is wanted for the parts
    await disk.remove(one.file);
    return { number: one.number, records: one.records, rows: one.rows };
  }

  async function closeYear(year: number, one: Waiting): Promise<void> {
    waiting.delete(year);
    closed.set(year, [...(closed.get(year) ?? []), await close(one)]);
  }

  return {
    async add(year, rows) {
      const one = waiting.get(year) ?? start();
      waiting.set(year, one);
      one.rows += await one.spool.add(rows);
      one.records++;
      records++;
      if (isFull(one, full)) await closeYear(year, one);
    },
    records: () => records,
    async all() {
      for (const [year, one] of [...waiting]) await closeYear(year, one);
      return closed;
    },
    empty: () => close(start()),
    fileOf: (chunk, table) => fileIn(folder, chunk, table),
  };
}

function fileIn(
  folder: string,
  { number }: Pick<Chunk, "number">,
  table: TableName,
): string {
  return path.join(folder, String(number), `${table}.parquet`);
}

/** One table of what waits, in its order, as a file: the engine holds it, and nothing else, until it is written. */
async function write(
  engine: Engine,
  table: TableName,
  { spool }: Waiting,
  to: string,
  { disk, holds }: ChunkOptions,
): Promise<void> {
  await engine.run(`CREATE TABLE "${table}" (${columnsSql(table)})`);
  const appender = await engine.appender(table);
  try {
    let rows = 0;
    for (const piece of await spool.read(table)) {
      for (const row of piece) appender.add(row);
      rows += piece.length;
      holds(rows);
    }
    appender.flush();
  } finally {
    appender.close();
  }
  disk.before("copy", to);
  await engine.run(copySql(table, `"${table}"`, to));
  await engine.run(`DROP TABLE "${table}"`);
  holds(0);
}
