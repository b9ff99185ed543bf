// A small shop for the tests of the archive: a crib, jobs that use it, and the archive asked as a person would.
import path from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { createProject } from "../../server/rules/check.ts";
import { thou, type Ran } from "../cli/in-process.ts";

export const CRIB = `shop yard
  units inch

gauge mic-1
  kind micrometer
  resolution 0.00001
  uncertainty 0.00004
  calibrated 2025-01-10
  due 2026-01-10

reamer r-875
  size 0.8750
  read 0.87502 0.87500 with mic-1 at 20 C
  oversize bronze-c932 +0.0001 to +0.0003
`;

/** A job of one bush, pressed and reamed. @param opened ISO 8601 */
export function job(name: string, opened: string, bore = "0.8752"): string {
  return `job ${name}
  title "Capstan ${name}"
  units inch
  use "crib.thou"
  opened ${opened} by "Bench 1"

part shaft
  material steel-1045
part case
  material iron-grey

journal drive on shaft
  limits 0.8738 to 0.8745
  read 0.87420 0.87410 with mic-1 at 20 C on ${opened}
  swing 0.0001 on vee 90 deg, 4 lobes on ${opened}
hole drive in case
  read 1.0003 1.0005 at 20 C
bush drive in hole drive
  material bronze-c932
  construction solid
  read od 1.0013 1.0015 at 20 C
  read id 0.8722 0.8720 at 20 C
  length 1.25
bore drive in bush drive
  limits 0.8750 to 0.8755
  read ${bore} ${bore} at 20 C on ${opened}
  read 0.8713 0.8711 at 20 C as pressed
press drive of bush drive in hole drive
  want 0.5 to 1.5 thou
fit drive of journal drive in bore drive
  want 0.0008 to 0.0012
line drive
  bore drive from 0 to 1.25
  ream with r-875
step ream
  cuts line drive
  done ${opened} by "Bench 1"
concession loose
  allows fit-loose on fit drive
  up to 0.0014
  why "spare is on order" by "Bench 2" on ${opened}
`;
}

/** The command line over the real model. */
export function ran(words: readonly string[], cwd: string): Promise<Ran> {
  return thou(words, {
    cwd,
    parts: { createProject: () => createProject({ root: "" }) },
  });
}

/** The rows of some SQL over files of an archive, read by their folders, as an engine that knows no archive.json would. */
export async function rowsOf(
  sql: string,
): Promise<readonly Record<string, unknown>[]> {
  const instance = await DuckDBInstance.create(":memory:");
  const connection = await instance.connect();
  try {
    return (await connection.runAndReadAll(sql)).getRowObjectsJS();
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

/** All files of a table, as a reader names them that goes by folders. */
export function filesOf(archive: string, table: string): string {
  return `read_parquet('${path.join(archive, "tables", table)}/*/*.parquet', hive_partitioning = true)`;
}
