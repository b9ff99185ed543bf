// What an archive holds already: each record with the hashes that tell whether it has changed, and the parts that can be relied on.
import { showCount } from "../core/quantity/show.ts";
import { shown } from "../model/plain-text.ts";
import { fileList, type Engine } from "./engine.ts";
import { isPartWhole, partFile, type Manifest, type Part } from "./layout.ts";
import type { UsedFile } from "./rows.ts";
import { SCHEMA } from "./schema.ts";

export interface KnownRecord {
  readonly part: Part;
  /** SHA-256 of the file's bytes. */
  readonly content: string;
  /** Version of the tool that worked it out. */
  readonly version: string;
  readonly uses: readonly UsedFile[];
}

export interface Held {
  readonly records: ReadonlyMap<string, KnownRecord>;
  readonly parts: readonly Part[];
  /** Sentences about parts that are damaged, or of an older schema: their records are as if the archive had never had them. */
  readonly problems: readonly string[];
}

/** @param name the folder as the user knows it */
export async function readKnown(
  folder: string,
  name: string,
  manifest: Manifest | undefined,
  engine: Engine,
): Promise<Held> {
  if (manifest !== undefined && manifest.schema < SCHEMA)
    return { records: new Map(), parts: [], problems: [older(name, manifest)] };
  const records = new Map<string, KnownRecord>();
  const parts: Part[] = [];
  const problems: string[] = [];
  for (const part of manifest?.parts ?? []) {
    const found = await recordsIn(folder, manifest?.state ?? "", part, engine);
    if (found === undefined) {
      problems.push(
        `a part of the archive in ${shown(name)} is missing or damaged (${showCount(part.records, "record")} of ${part.year}): those that are under the paths of this export are written anew, others need an export of their own.`,
      );
      continue;
    }
    parts.push(part);
    for (const [record, known] of found) records.set(record, known);
  }
  return { records, parts, problems };
}

/** Parts of an older schema lack what this one has, and stand beside no others. */
function older(name: string, { schema, thou, parts }: Manifest): string {
  const records = parts.reduce((sum, part) => sum + part.records, 0);
  return `the archive in ${shown(name)} is of an older thou (${shown(thou)}; its schema is ${schema}, this one writes ${SCHEMA}): of its ${showCount(records, "record")}, those that are under the paths of this export are written anew, others need an export of their own.`;
}

/** Undefined where the part can't be relied on. */
async function recordsIn(
  folder: string,
  state: string,
  part: Part,
  engine: Engine,
): Promise<ReadonlyMap<string, KnownRecord> | undefined> {
  if (!(await isPartWhole(folder, state, part))) return undefined;
  const from = (table: "jobs" | "uses"): string =>
    `read_parquet(${fileList([partFile(folder, state, table, part)])})`;
  try {
    const jobs = await engine.rows(
      `SELECT record, content, thou FROM ${from("jobs")}`,
    );
    const used = await engine.rows(
      `SELECT record, used, content, beside FROM ${from("uses")}`,
    );
    const uses = new Map<string, UsedFile[]>();
    // what many records use is held once
    const files = new Map<string, UsedFile>();
    for (const [record, name, content, beside] of used.rows) {
      const key = JSON.stringify([name, content, beside]);
      const file = files.get(key) ?? {
        name: String(name),
        content: content === null ? null : String(content),
        beside: beside === null ? null : String(beside),
      };
      files.set(key, file);
      const list = uses.get(String(record)) ?? [];
      list.push(file);
      uses.set(String(record), list);
    }
    return new Map(
      jobs.rows.map(([record, content, version]) => [
        String(record),
        {
          part,
          content: String(content),
          version: String(version),
          uses: uses.get(String(record)) ?? [],
        },
      ]),
    );
  } catch {
    return undefined;
  }
}
