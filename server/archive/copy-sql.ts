// How rows of a table become a file of the archive.
import { quoted } from "./engine.ts";
import { tableNamed, type TableName } from "./schema.ts";

/** Rows that the engine gathers before it writes them. */
const ROW_GROUP = 20_480;

/** Rows of one table as a file, in the table's order. */
export function copySql(table: TableName, rows: string, to: string): string {
  const order = ["record", ...tableNamed(table).order]
    .map((name) => `"${name}"`)
    .join(", ");
  return `COPY (SELECT * FROM ${rows} ORDER BY ${order}) TO ${quoted(to)} (FORMAT PARQUET, COMPRESSION ZSTD, ROW_GROUP_SIZE ${ROW_GROUP})`;
}
