// The embedded database that reads and writes Parquet: the only file that knows it. It is an optional package, loaded when it is asked for.
import type {
  DuckDBAppender,
  DuckDBConnection,
  DuckDBInstance,
} from "@duckdb/node-api";
import manifest from "../../package.json" with { type: "json" };
import { shown } from "../model/plain-text.ts";
import { ArchiveFault } from "./fault.ts";
import { tableNamed, type Row, type TableName } from "./schema.ts";

export interface Engine {
  /** Gives how many rows a statement that writes rows has written. */
  run(sql: string): Promise<number>;
  /** Rows as plain values: whole numbers and quantities as numbers, days as ISO 8601. */
  rows(sql: string): Promise<Answer>;
  /** A table of the schema to put rows into. */
  appender(table: TableName): Promise<Appender>;
  close(): void;
}

export type Cell = string | number | boolean | null;

export interface Answer {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface Appender {
  add(row: Row): void;
  flush(): void;
  close(): void;
}

type Duck = typeof import("@duckdb/node-api");

const PACKAGE = `@duckdb/node-api@${manifest.optionalDependencies["@duckdb/node-api"]}`;

/** Throws the sentence that says how to install the engine, where it is not there. */
export async function needEngine(): Promise<void> {
  await load();
}

async function load(): Promise<Duck> {
  try {
    return await import("@duckdb/node-api");
  } catch (error) {
    const isMissing = /cannot find (?:module|package)/i.test(String(error));
    throw new ArchiveFault(
      `the archive is read and written by DuckDB, ${isMissing ? "which is not installed here" : `which cannot be started here (${shown(String(error).split("\n")[0] ?? "")})`}: run "npm install ${PACKAGE}" where thou is installed, with --global if thou was installed so, and try again.`,
    );
  }
}

/** @param options a folder for what memory should not hold; undefined where it may hold all that is asked for */
export async function openEngine(
  options: { readonly scratch: string } | undefined,
): Promise<Engine> {
  const duck = await load();
  const instance: DuckDBInstance = await duck.DuckDBInstance.create(
    ":memory:",
    {
      // it must never fetch anything
      autoinstall_known_extensions: "false",
      autoload_known_extensions: "false",
      // an export must not grow with the archive in memory; a question may, and leaves nothing on the disk
      ...(options === undefined
        ? { threads: "2", temp_directory: "" }
        : {
            threads: "1",
            memory_limit: "128MB",
            temp_directory: options.scratch,
            // what is let go goes back to the system at once
            allocator_bulk_deallocation_flush_threshold: "1MB",
          }),
    },
  );
  const connection = await instance.connect();
  return {
    async run(sql) {
      return (await connection.run(sql)).rowsChanged;
    },
    rows: (sql) => rowsBy(duck, connection, sql),
    appender: async (table) =>
      appenderOf(duck, await connection.createAppender(table), table),
    close() {
      connection.closeSync();
      instance.closeSync();
    },
  };
}

async function rowsBy(
  duck: Duck,
  connection: DuckDBConnection,
  sql: string,
): Promise<Answer> {
  const read = await connection.runAndReadAll(sql);
  return {
    columns: read.columnNames(),
    rows: read.getRowsJS().map((row) => row.map((cell) => plain(duck, cell))),
  };
}

function plain(duck: Duck, cell: unknown): Cell {
  if (cell === null || cell === undefined) return null;
  if (typeof cell === "bigint") return Number(cell);
  if (cell instanceof Date) return cell.toISOString().slice(0, 10);
  if (
    typeof cell === "string" ||
    typeof cell === "number" ||
    typeof cell === "boolean"
  )
    return cell;
  return cell instanceof duck.DuckDBDecimalValue
    ? cell.toDouble()
    : JSON.stringify(cell);
}

const DAY = 86_400_000; // ms

function appenderOf(
  duck: Duck,
  appender: DuckDBAppender,
  table: TableName,
): Appender {
  const { columns } = tableNamed(table);
  return {
    add(row) {
      columns.forEach(({ type, name }, index) => {
        const value = row[index];
        if (value === null) appender.appendNull();
        else if (type === "VARCHAR" && typeof value === "string")
          appender.appendVarchar(value);
        else if (type === "DATE" && typeof value === "string")
          appender.appendDate(new duck.DuckDBDateValue(daysOf(value)));
        else if (type === "INTEGER" && typeof value === "number")
          appender.appendInteger(value);
        else if (type === "DOUBLE" && typeof value === "number")
          // the JSON has no -0 either
          appender.appendDouble(value + 0);
        else if (type === "BOOLEAN" && typeof value === "boolean")
          appender.appendBoolean(value);
        else
          throw new Error(
            `${table}.${name} takes ${type}, not ${typeof value}`,
          );
      });
      appender.endRow();
    },
    flush() {
      appender.flushSync();
    },
    close() {
      try {
        appender.clear();
        appender.closeSync();
      } catch {
        // it failed before, and that was said
      }
    },
  };
}

/** Days since 1970-01-01 of a day that exists. */
function daysOf(iso: string): number {
  return Date.parse(`${iso}T00:00:00Z`) / DAY;
}

/** A text as SQL writes it. */
export function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}

/** Files as an argument of `read_parquet`: a sign that would stand for several files stands for itself. */
export function fileList(files: readonly string[]): string {
  return `[${files.map((file) => quoted(file.replaceAll(/[*?[]/g, "[$&]"))).join(", ")}]`;
}

/** Columns of a table with their types, as SQL makes it. */
export function columnsSql(table: TableName): string {
  return tableNamed(table)
    .columns.map(({ name, type }) => `"${name}" ${type}`)
    .join(", ");
}

/** The columns of a table by name, in their order. */
export function namesSql(table: TableName): string {
  return tableNamed(table)
    .columns.map(({ name }) => `"${name}"`)
    .join(", ");
}
