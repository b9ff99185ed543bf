// An archive while an export has it: what it holds, what comes, what goes, and how one whole state takes the place of another. Whatever ends
// an export, and wherever, the archive is in the former state or in the new one, whole. It evaluates nothing.
//
// The order of what is done is the point: a state is made complete in a folder of its own that nothing names; then archive.json is replaced in
// one go, and names it; then `tables` leads to it; then the former state goes. Parts that stay are the same file under a second name.
import { mkdir, readdir, readlink } from "node:fs/promises";
import path from "node:path";
import { shown } from "../model/plain-text.ts";
import { openBuffer, type Buffer } from "./buffer.ts";
import { createDisk, type Disk } from "./disk.ts";
import { needEngine } from "./engine.ts";
import { ArchiveFault, codeOf, reasonOf } from "./fault.ts";
import { readKnown, type Held, type KnownRecord } from "./known.ts";
import {
  LINK,
  MANIFEST,
  partFile,
  readManifest,
  SCHEMA_FILE,
  STATES,
  strangersIn,
  WORK,
  type Manifest,
  type Part,
} from "./layout.ts";
import { takeLock } from "./lock.ts";
import { planYear, type NewPart, type Plan } from "./plan.ts";
import {
  SCHEMA,
  schemaText,
  TABLE_NAMES,
  type Rows,
  type TableName,
} from "./schema.ts";

export interface Archive {
  /** The folder that records are named from, absolute. */
  readonly namedFrom: string;
  /** Sentences about what was found damaged and is made anew. */
  readonly problems: readonly string[];
  known(record: string): KnownRecord | undefined;
  names(): Iterable<string>;
  /** Puts a record in, in place of what the archive has of it. */
  add(record: string, year: number, rows: Rows): Promise<void>;
  /** Takes a record out. */
  drop(record: string): void;
  /** Makes the state that all this comes to the archive's; nothing where nothing changed. */
  commit(): Promise<Committed>;
  /** Lets the archive go. What was not committed is as if it had never been. */
  close(): Promise<void>;
}

export interface Committed {
  /** Records in the archive now. */
  readonly records: number;
  readonly parts: number;
  readonly changed: boolean;
}

export interface ArchiveOptions {
  /** Absolute. */
  readonly folder: string;
  /** As the user knows it. */
  readonly name: string;
  /** Records of a new archive are named from here, absolute. */
  readonly cwd: string;
  /** Version of the tool. */
  readonly version: string;
  readonly disk?: Disk;
}

/** Takes an archive, or makes one in an empty folder. Throws an `ArchiveFault` where it can't. */
export async function openArchive(options: ArchiveOptions): Promise<Archive> {
  const { folder, name } = options;
  const disk = options.disk ?? createDisk();
  await needEngine();
  const lock = await inFolder(name, async () => {
    await mkdir(folder, { recursive: true });
    return takeLock(folder, name);
  });
  let buffer: Buffer | undefined;
  const close = async (): Promise<void> => {
    try {
      buffer?.close();
    } catch {
      // nothing in it is wanted any more
    }
    buffer = undefined;
    // what can't be tidied away now is tidied away by the next export
    await disk.remove(path.join(folder, WORK)).catch(() => undefined);
    await lock.release().catch(() => undefined);
  };
  try {
    return await inFolder(name, async () => {
      const manifest = await readManifest(folder, name);
      if (manifest === undefined) await refuseStrangers(folder, name);
      await settle(folder, manifest, disk);
      await disk.remove(path.join(folder, WORK));
      await disk.makeFolder(path.join(folder, WORK));
      const opened = await openBuffer(path.join(folder, WORK));
      buffer = opened;
      const held = await readKnown(folder, name, manifest, opened.engine);
      return archiveOf(options, disk, manifest, held, opened, close);
    });
  } catch (error) {
    await close();
    throw error;
  }
}

/** What goes wrong in the archive's folder, as a sentence. */
async function inFolder<T>(name: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof ArchiveFault) throw error;
    throw new ArchiveFault(
      `the archive in ${shown(name)} cannot be written: ${reasonOf(error)}. What it held before, it still holds.`,
    );
  }
}

async function refuseStrangers(folder: string, name: string): Promise<void> {
  const strangers = await strangersIn(folder);
  if (0 < strangers.length)
    throw new ArchiveFault(
      `${shown(name)} holds other files (${shown(strangers.slice(0, 3).join(", "))}) and no archive: name an empty folder, or a new one.`,
    );
}

/** Finishes or takes back what an export that was killed had begun: only the state that archive.json names stays. */
async function settle(
  folder: string,
  manifest: Manifest | undefined,
  disk: Disk,
): Promise<void> {
  if (manifest !== undefined) await pointAt(folder, manifest.state, disk);
  for (const state of await statesIn(folder))
    if (state !== manifest?.state)
      await disk.remove(path.join(folder, STATES, state));
}

/** The same once a new state holds: then what goes wrong here costs nothing but room. */
async function tidy(
  folder: string,
  name: string,
  manifest: Manifest,
  disk: Disk,
): Promise<void> {
  try {
    await settle(folder, manifest, disk);
  } catch (error) {
    throw untidied(name, error);
  }
}

function untidied(name: string, error: unknown): ArchiveFault {
  return new ArchiveFault(
    `the archive in ${shown(name)} is written, but what it held before could not be cleared away: ${reasonOf(error)}. Make room or set the permissions right, and export again: that clears it away.`,
  );
}

async function statesIn(folder: string): Promise<readonly string[]> {
  return readdir(path.join(folder, STATES)).catch(() => []);
}

/** Makes `tables` lead to a state. Where the system has no such links there is none, and archive.json alone says where the state is. */
async function pointAt(
  folder: string,
  state: string,
  disk: Disk,
): Promise<void> {
  const at = path.join(folder, LINK);
  const target = `${STATES}/${state}`;
  if ((await readlink(at).catch(() => undefined)) === target) return;
  const next = `${at}.next`;
  try {
    await disk.remove(next);
    await disk.point(target, next);
    await disk.rename(next, at);
    await disk.sync(folder);
  } catch (error) {
    if (
      !["EPERM", "ENOSYS", "ENOTSUP", "EOPNOTSUPP", "EEXIST"].includes(
        codeOf(error) ?? "",
      )
    )
      throw error;
    // one that leads to what goes away now is worse than none
    await disk.remove(next);
    await disk.remove(at);
  }
}

function archiveOf(
  options: ArchiveOptions,
  disk: Disk,
  manifest: Manifest | undefined,
  held: Held,
  buffer: Buffer,
  close: () => Promise<void>,
): Archive {
  const { folder, name } = options;
  const namedFrom =
    manifest === undefined
      ? options.cwd
      : path.resolve(folder, manifest.namedFrom);
  const gone = new Set<string>();
  return {
    namedFrom,
    problems: held.problems,
    known: (record) => held.records.get(record),
    names: () => held.records.keys(),
    add: (record, year, rows) =>
      inFolder(name, () => {
        if (held.records.has(record)) gone.add(record);
        buffer.add(year, rows);
        return Promise.resolve();
      }),
    drop(record) {
      if (held.records.has(record)) gone.add(record);
    },
    commit: () =>
      inFolder(name, async () => {
        const isNew = manifest === undefined || 0 < held.problems.length;
        if (!isNew && gone.size === 0 && buffer.records() === 0)
          return committed(manifest.parts, false);
        const plan = planOf(held, gone, buffer);
        const state = await nextState(folder, manifest);
        let next: Manifest;
        try {
          next = {
            archive: "thou",
            schema: SCHEMA,
            thou: options.version,
            state,
            namedFrom: forward(path.relative(folder, namedFrom)) || ".",
            parts: await writeState(
              { folder, state, former: manifest?.state ?? "" },
              plan,
              gone,
              buffer,
              disk,
            ),
          };
          await replaceManifest(folder, next, disk);
        } catch (error) {
          if (await takeBack(folder, state, disk)) throw error;
          throw untidied(name, error);
        }
        await tidy(folder, name, next, disk);
        return committed(next.parts, true);
      }),
    close,
  };
}

function forward(file: string): string {
  return file.replaceAll(path.sep, "/");
}

function committed(parts: readonly Part[], changed: boolean): Committed {
  return {
    records: parts.reduce((sum, part) => sum + part.records, 0),
    parts: parts.length,
    changed,
  };
}

/** What the parts of every year come to. An archive without records has one part without any, so that every table is there. */
function planOf(held: Held, gone: ReadonlySet<string>, buffer: Buffer): Plan {
  const goneFrom = new Map<Part, number>();
  for (const record of gone) {
    const part = held.records.get(record)?.part;
    if (part !== undefined) goneFrom.set(part, (goneFrom.get(part) ?? 0) + 1);
  }
  const chunks = buffer.chunks();
  const years = new Set([
    ...held.parts.map(({ year }) => year),
    ...chunks.keys(),
  ]);
  const plans = [...years]
    .sort((a, b) => a - b)
    .map((year) =>
      planYear(
        year,
        held.parts
          .filter((part) => part.year === year && 0 < part.records)
          .map((part) => ({ part, gone: goneFrom.get(part) ?? 0 })),
        chunks.get(year) ?? [],
      ),
    );
  const kept = plans.flatMap((plan) => plan.kept);
  const made = plans.flatMap((plan) => plan.made);
  return kept.length + made.length === 0
    ? { kept, made: [{ year: 0, from: [], chunks: [], records: 0 }] }
    : { kept, made };
}

async function nextState(
  folder: string,
  manifest: Manifest | undefined,
): Promise<string> {
  const numbers = [...(await statesIn(folder)), manifest?.state ?? "0"].map(
    Number,
  );
  const last = Math.max(0, ...numbers.filter(Number.isInteger));
  return String(last + 1).padStart(6, "0");
}

interface Place {
  readonly folder: string;
  readonly state: string;
  readonly former: string;
}

async function writeState(
  { folder, state, former }: Place,
  plan: Plan,
  gone: ReadonlySet<string>,
  buffer: Buffer,
  disk: Disk,
): Promise<readonly Part[]> {
  await buffer.setGone(gone);
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
    const name = `${state}-${index + 1}`;
    made.push({
      name,
      year: each.year,
      records: each.records,
      bytes: await writePart(
        each,
        async (table) => ({
          to: await placeFor(
            partFile(folder, state, table, { name, year: each.year }),
          ),
          from: each.from.map((part) => partFile(folder, former, table, part)),
        }),
        buffer,
        disk,
      ),
    });
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

async function writePart(
  { year, chunks }: NewPart,
  placesOf: (
    table: TableName,
  ) => Promise<{ readonly to: string; readonly from: readonly string[] }>,
  buffer: Buffer,
  disk: Disk,
): Promise<Part["bytes"]> {
  const bytes: Partial<Record<TableName, number>> = {};
  for (const table of TABLE_NAMES) {
    const { to, from } = await placesOf(table);
    disk.before("copy", to);
    bytes[table] = await buffer.copy(table, { year, chunks, from, to });
  }
  return bytes as Part["bytes"]; // every table was written
}

async function replaceManifest(
  folder: string,
  manifest: Manifest,
  disk: Disk,
): Promise<void> {
  const at = path.join(folder, MANIFEST);
  const next = `${at}.next`;
  await disk.write(next, `${JSON.stringify(manifest, undefined, 1)}\n`);
  await disk.rename(next, at);
  await disk.sync(folder);
}

/** Takes away a state that did not become whole. False where archive.json names it already: then it holds, and nothing is taken away. */
async function takeBack(
  folder: string,
  state: string,
  disk: Disk,
): Promise<boolean> {
  const now = await readManifest(folder, folder).catch(() => undefined);
  if (now?.state === state) return false;
  // what can't be taken away now is by the next export
  for (const left of [path.join(STATES, state), `${MANIFEST}.next`])
    await disk.remove(path.join(folder, left)).catch(() => undefined);
  return true;
}
