// Puts rows of chunks, and what stays of parts of the former state, together into the files of new parts.
import { copySql } from "./copy-sql.ts";
import type { Disk } from "./disk.ts";
import { fileList, namesSql, quoted, type Engine } from "./engine.ts";
import type { TableName } from "./schema.ts";

export interface Merging {
  /** Records that are not to be taken over from parts. */
  setGone(names: Iterable<string>): Promise<void>;
  /** Rows of the other records in files of parts. */
  rowsIn(files: readonly string[]): Promise<number>;
  /** Writes one table from files of chunks, and the other records' rows of it from files of parts, as one file. */
  merge(
    table: TableName,
    chunks: readonly string[],
    parts: readonly string[],
    to: string,
  ): Promise<void>;
}

const STAYS = "record NOT IN (SELECT record FROM gone)";
/** Names that go to the engine in one statement. */
const TOGETHER = 1000;

/** @param holds told how many rows the engine has just put in order */
export async function createMerging(
  engine: Pick<Engine, "run" | "rows">,
  disk: Pick<Disk, "before">,
  holds: (rows: number) => void,
): Promise<Merging> {
  await engine.run("CREATE TABLE gone (record VARCHAR)");
  return {
    async setGone(names) {
      const list = [...names];
      for (let at = 0; at < list.length; at += TOGETHER)
        await engine.run(
          `INSERT INTO gone VALUES ${list
            .slice(at, at + TOGETHER)
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
    async merge(table, chunks, parts, to) {
      const names = namesSql(table);
      const read = (files: readonly string[]): string =>
        `SELECT ${names} FROM read_parquet(${fileList(files)}, hive_partitioning = false)`;
      const sources = [
        ...(chunks.length === 0 ? [] : [read(chunks)]),
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
  };
}
