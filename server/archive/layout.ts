// Where things lie in an archive, and the one file that says what is in it: archive.json. It reads that file; it writes nothing.
//   archive.json         which state holds, and its parts: replaced in one go, so that it always names a whole state
//   states/NUMBER/       that state: TABLE/year=YEAR/PART.parquet for each table, and schema.json
//   tables               a link to that state, for readers that do not know archive.json
//   export.lock, work/   only while an export runs, or after one was killed
import { readFile, readdir, stat } from "node:fs/promises";
import path from "node:path";
import { shown } from "../model/plain-text.ts";
import { codeOf } from "../why-not.ts";
import { ArchiveFault, reasonOf } from "./fault.ts";
import { SCHEMA, TABLE_NAMES, type TableName } from "./schema.ts";

export const MANIFEST = "archive.json";
export const LOCK = "export.lock";
export const LINK = "tables";
export const STATES = "states";
export const WORK = "work";
export const SCHEMA_FILE = "schema.json";

/** One file of each table, of records of one year. It is never written again: what changes becomes another part. */
export interface Part {
  readonly name: string;
  readonly year: number;
  readonly records: number;
  readonly bytes: Readonly<Record<TableName, number>>;
}

export interface Manifest {
  readonly archive: "thou";
  readonly schema: number;
  /** Version of thou that wrote this state. */
  readonly thou: string;
  readonly state: string;
  /** The folder that records are named from, from the archive's own. */
  readonly namedFrom: string;
  readonly parts: readonly Part[];
}

export function partFile(
  folder: string,
  state: string,
  table: TableName,
  part: Pick<Part, "name" | "year">,
): string {
  return path.join(
    folder,
    STATES,
    state,
    table,
    `year=${part.year}`,
    `${part.name}.parquet`,
  );
}

/** What is in the archive; undefined where there is none. @param name the folder as the user knows it */
export async function readManifest(
  folder: string,
  name: string,
): Promise<Manifest | undefined> {
  let text: string;
  try {
    text = await readFile(path.join(folder, MANIFEST), "utf8");
  } catch (error) {
    if (codeOf(error) === "ENOENT") return undefined;
    throw new ArchiveFault(
      `${shown(path.join(name, MANIFEST))} cannot be read: ${reasonOf(error)}.`,
    );
  }
  const manifest = parsed(text);
  const schema = manifest?.schema;
  if (manifest?.archive !== "thou" || typeof schema !== "number")
    throw damaged(name);
  if (SCHEMA < schema)
    throw new ArchiveFault(
      `${shown(name)} was written by a newer thou (${shown(String(manifest.thou))}; its schema is ${schema}, this one knows up to ${SCHEMA}): install that version, or export to another folder.`,
    );
  if (!isManifest(manifest)) throw damaged(name);
  return manifest;
}

function damaged(name: string): ArchiveFault {
  return new ArchiveFault(
    `${shown(path.join(name, MANIFEST))} is no archive's list, or it is damaged: export to another folder, or remove this one and export anew.`,
  );
}

function parsed(text: string): Partial<Record<keyof Manifest, unknown>> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" ? value : null;
  } catch {
    return null;
  }
}

function isManifest(
  value: Partial<Record<keyof Manifest, unknown>>,
): value is Manifest & typeof value {
  return (
    typeof value.thou === "string" &&
    typeof value.namedFrom === "string" &&
    typeof value.state === "string" &&
    /^\d+$/.test(value.state) &&
    Array.isArray(value.parts) &&
    value.parts.every(isPart)
  );
}

function isPart(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return false;
  const part = value as Partial<Record<keyof Part, unknown>>; // each key is looked at below
  return (
    typeof part.name === "string" &&
    /^[\d-]+$/.test(part.name) &&
    Number.isInteger(part.year) &&
    Number.isInteger(part.records) &&
    typeof part.bytes === "object" &&
    part.bytes !== null
  );
}

/** Whether every file of a part is there, and as long as it was. */
export async function isPartWhole(
  folder: string,
  state: string,
  part: Part,
): Promise<boolean> {
  for (const table of TABLE_NAMES) {
    const size = await stat(partFile(folder, state, table, part)).then(
      (what) => what.size,
      () => undefined,
    );
    if (size === undefined || size !== part.bytes[table]) return false;
  }
  return true;
}

/** Files in a folder that no archive has: then it is someone's own folder. */
export async function strangersIn(folder: string): Promise<readonly string[]> {
  const ours = new Set<string>([MANIFEST, LOCK, LINK, STATES, WORK]);
  return (await readdir(folder)).filter(
    (name) =>
      !ours.has(name) &&
      ![MANIFEST, LOCK, LINK].some((each) => name.startsWith(`${each}.`)),
  );
}
