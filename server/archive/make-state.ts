// A state of an archive made complete in a folder that nothing names yet: which parts it has, their files, and all of it on the disk. Parts that
// stay are the same files under a second name; records that were worked out anew come from the buffer.
import { stat } from "node:fs/promises";
import path from "node:path";
import type { Buffer } from "./buffer.ts";
import type { Disk } from "./disk.ts";
import type { Held } from "./known.ts";
import { partFile, SCHEMA_FILE, STATES, type Part } from "./layout.ts";
import { planYear, type Limits, type NewPart, type Plan } from "./plan.ts";
import { schemaText, TABLE_NAMES, type TableName } from "./schema.ts";

export interface Place {
  readonly folder: string;
  readonly state: string;
  readonly former: string;
}

/** Makes the state, and gives its parts. */
export async function makeState(
  place: Place,
  held: Held,
  gone: ReadonlySet<string>,
  full: Limits,
  buffer: Buffer,
  disk: Disk,
): Promise<readonly Part[]> {
  await buffer.merging.setGone(gone);
  return writeState(
    place,
    await planOf(place, held, gone, full, buffer),
    buffer,
    disk,
  );
}

/** What the parts of every year come to. An archive without records has one part without any, so that every table is there. */
async function planOf(
  { folder, former }: Place,
  held: Held,
  gone: ReadonlySet<string>,
  full: Limits,
  { chunks, merging }: Buffer,
): Promise<Plan> {
  const goneFrom = new Map<Part, number>();
  for (const record of gone) {
    const part = held.records.get(record)?.part;
    if (part !== undefined) goneFrom.set(part, (goneFrom.get(part) ?? 0) + 1);
  }
  const fresh = await chunks.all();
  const years = new Set([
    ...held.parts.map(({ year }) => year),
    ...fresh.keys(),
  ]);
  const kept: Part[] = [];
  const made: NewPart[] = [];
  for (const year of [...years].sort((a, b) => a - b)) {
    const parts = held.parts.filter(
      (part) => part.year === year && 0 < part.records,
    );
    const come = fresh.get(year) ?? [];
    if (come.length === 0 && !parts.some((part) => goneFrom.has(part))) {
      kept.push(...parts);
      continue;
    }
    const old = [];
    for (const part of parts)
      old.push({
        part,
        gone: goneFrom.get(part) ?? 0,
        rows: await merging.rowsIn(
          TABLE_NAMES.map((table) => partFile(folder, former, table, part)),
        ),
      });
    const plan = planYear(year, old, come, full);
    kept.push(...plan.kept);
    made.push(...plan.made);
  }
  return kept.length + made.length === 0
    ? {
        kept,
        made: [
          {
            year: 0,
            from: [],
            chunks: [await chunks.empty()],
            records: 0,
          },
        ],
      }
    : { kept, made };
}

async function writeState(
  { folder, state, former }: Place,
  plan: Plan,
  { chunks, merging }: Buffer,
  disk: Disk,
): Promise<readonly Part[]> {
  const folders = new Set<string>();
  const placeFor = async (file: string): Promise<string> => {
    const parent = path.dirname(file);
    if (!folders.has(parent)) await disk.makeFolder(parent);
    folders.add(parent);
    return file;
  };
  for (const part of plan.kept)
    for (const table of TABLE_NAMES)
      await disk.share(
        partFile(folder, former, table, part),
        await placeFor(partFile(folder, state, table, part)),
      );
  const made: Part[] = [];
  for (const [index, each] of plan.made.entries()) {
    const { year, records } = each;
    const name = `${state}-${index + 1}`;
    const bytes: Partial<Record<TableName, number>> = {};
    for (const table of TABLE_NAMES) {
      const to = await placeFor(partFile(folder, state, table, { name, year }));
      const parts = each.from.map((part) =>
        partFile(folder, former, table, part),
      );
      const [chunk, ...others] = each.chunks;
      // one that is a part by itself has the files of a part already
      if (chunk !== undefined && parts.length + others.length === 0)
        await disk.rename(chunks.fileOf(chunk, table), to);
      else {
        const files = each.chunks.map((one) => chunks.fileOf(one, table));
        await merging.merge(table, files, parts, to);
      }
      bytes[table] = (await stat(to)).size;
    }
    made.push({ name, year, records, bytes: bytes as Part["bytes"] }); // every table was brought
  }
  const home = path.join(folder, STATES, state);
  await disk.write(path.join(home, SCHEMA_FILE), schemaText());
  // together, so that the disk can take them together
  await Promise.all(
    made.flatMap((part) =>
      TABLE_NAMES.map((table) =>
        disk.sync(partFile(folder, state, table, part)),
      ),
    ),
  );
  await Promise.all(
    [
      ...folders,
      ...TABLE_NAMES.map((table) => path.join(home, table)),
      home,
    ].map((each) => disk.sync(each)),
  );
  await disk.sync(path.join(folder, STATES));
  return [...plan.kept, ...made];
}
