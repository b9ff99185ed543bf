// An archive while an export has it: what it holds, what comes, what goes, and how one whole state takes the place of another. Whatever ends
// an export, and wherever, the archive is in the former state or in the new one, whole. It evaluates nothing.
//
// The order of what is done is the point: a state is made complete in a folder of its own that nothing names; then archive.json is replaced in
// one go, and names it; then `tables` leads to it; then the former state goes. Parts that stay are the same file under a second name.
import { access } from "node:fs/promises";
import path from "node:path";
import { makeFolder } from "../make-folder.ts";
import { shown } from "../model/plain-text.ts";
import { codeOf } from "../why-not.ts";
import { openBuffer, type Buffer } from "./buffer.ts";
import { createDisk, type Disk } from "./disk.ts";
import { needEngine } from "./engine.ts";
import { ArchiveFault, reasonOf } from "./fault.ts";
import { readKnown, type Held, type KnownRecord } from "./known.ts";
import {
  MANIFEST,
  readManifest,
  strangersIn,
  WORK,
  type Manifest,
  type Part,
} from "./layout.ts";
import { takeLock } from "./lock.ts";
import { makeState } from "./make-state.ts";
import { FULL, type Limits } from "./plan.ts";
import { SCHEMA, type Rows } from "./schema.ts";
import {
  nextState,
  replaceManifest,
  settle,
  takeBack,
  tidy,
  untidied,
} from "./state.ts";

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
  /** What fills a part. */
  readonly full?: Limits;
  /** Told how many rows the engine holds, whenever that changes. */
  readonly holds?: (rows: number) => void;
}

/** Takes an archive, or makes one in an empty folder. Throws an `ArchiveFault` where it can't. */
export async function openArchive(options: ArchiveOptions): Promise<Archive> {
  const { folder, name } = options;
  const disk = options.disk ?? createDisk();
  await needEngine();
  const lock = await inFolder(options, async () => {
    await makeFolder(folder);
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
    return await inFolder(options, async () => {
      const manifest = await readManifest(folder, name);
      if (manifest === undefined) await refuseStrangers(folder, name);
      await settle(folder, manifest, disk);
      await disk.remove(path.join(folder, WORK));
      await disk.makeFolder(path.join(folder, WORK));
      const opened = await openBuffer({
        folder: path.join(folder, WORK),
        disk,
        full: options.full ?? FULL,
        holds: options.holds ?? (() => undefined),
      });
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
async function inFolder<T>(
  { folder, name }: Pick<ArchiveOptions, "folder" | "name">,
  work: () => Promise<T>,
): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof ArchiveFault) throw error;
    const isThere = await access(path.join(folder, MANIFEST)).then(
      () => true,
      // one that can't be looked at is there all the same
      (fault: unknown) => !["ENOENT", "ENOTDIR"].includes(codeOf(fault) ?? ""),
    );
    throw new ArchiveFault(
      `the archive in ${shown(name)} cannot be written: ${reasonOf(error)}. ${isThere ? "What it held before, it still holds" : "None is there yet"}; put that right and export again.`,
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
      inFolder(options, async () => {
        if (held.records.has(record)) gone.add(record);
        await buffer.chunks.add(year, rows);
      }),
    drop(record) {
      if (held.records.has(record)) gone.add(record);
    },
    commit: () =>
      inFolder(options, async () => {
        const isNew = manifest === undefined || 0 < held.problems.length;
        if (!isNew && gone.size === 0 && buffer.chunks.records() === 0)
          return committed(manifest.parts, false);
        const state = await nextState(folder, manifest);
        let next: Manifest;
        try {
          next = {
            archive: "thou",
            schema: SCHEMA,
            thou: options.version,
            state,
            namedFrom: forward(path.relative(folder, namedFrom)) || ".",
            parts: await makeState(
              { folder, state, former: manifest?.state ?? "" },
              held,
              gone,
              options.full ?? FULL,
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
