// Gives a project the files that a check needs: the file itself, and those that it uses, however far. It reads; it judges nothing.
import { readFile } from "node:fs/promises";
import { readLines, type FileLines } from "../../grammar/lines.ts";
import { HistoryFault } from "../history/git.ts";
import { giveUses } from "../model/give-uses.ts";
import { isPlainFile, readPlainFile } from "../plain-file.ts";
import { whyNot } from "../why-not.ts";
import { nameFrom, type FoundFile } from "./find-files.ts";
import { createFreshNames } from "./fresh-names.ts";
import type { CheckedProject } from "./io.ts";
import { recordsBeside } from "./near-file.ts";
import { readText } from "./read-text.ts";
import { shown } from "./terminal-text.ts";

/** Reads files into a project; one instance serves a whole run, so that a crib is read once. */
export interface Loader {
  /** Undefined where the file cannot be read: the sentence has then gone to `tell`. */
  load(file: FoundFile): Promise<FileLines | undefined>;
  /** Lets go of a file that no other uses; and of those that others used, where they have become many. */
  release(file: FoundFile): void;
  /** Files that others used and that are there, those left out that an answer named before. */
  newlyUsed(): readonly string[];
}

/** Used files that are held for the next record: past so many, only those of the last record are. */
export const MOST_HELD = 64;

/** The bytes of a file in a state that is not the disk's; undefined where it is not there. @param isUsed a `use` leads to it */
export type ReadBytes = (
  path: string,
  isUsed?: boolean,
) => Promise<Uint8Array | undefined>;

export const readFromDisk: ReadBytes = (path) => readFile(path);

/** Undefined for what is no plain file, or can't be read: whoever checks it says why. */
export const plainFromDisk: ReadBytes = (path) =>
  readPlainFile(path).catch(() => undefined);

/** The names of the records in the folder of a file that is not there. */
export type Beside = (path: string) => Promise<readonly string[]>;

/** What lay beside it in a state of git is not looked for. */
export const noneBeside: Beside = () => Promise.resolve([]);

/** @param from the state that files are read in; the disk where none is given */
export function createLoader(
  project: CheckedProject,
  cwd: string,
  tell: (sentence: string) => void,
  from?: ReadBytes,
  beside: Beside = from === undefined ? recordsBeside : noneBeside,
): Loader {
  const held = new Map<string, FileLines | null>();
  const used = createFreshNames();

  /** Undefined where there is none that can be read; of a file that others use that is theirs to say. */
  async function read(
    path: string,
    name: string,
    isUsed: boolean,
  ): Promise<FileLines | undefined> {
    try {
      const bytes = await (from ?? readFromDisk)(path, isUsed);
      if (bytes === undefined && isUsed) return undefined;
      const text =
        bytes === undefined
          ? { ok: false, because: "there is no such file" }
          : readText(bytes, false);
      if ("text" in text) return readLines(text.text);
      tell(`${shown(name)} cannot be read: ${text.because}.`);
    } catch (error) {
      if (error instanceof HistoryFault) throw error;
      tell(`${shown(name)} cannot be read: ${whyNot(error)}.`);
    }
    return undefined;
  }

  async function readUsed(path: string): Promise<FileLines | null> {
    if (from === undefined && !(await isPlainFile(path))) return null;
    return (await read(path, nameFrom(cwd, path), true)) ?? null;
  }

  async function give(path: string): Promise<void> {
    const lines = await readUsed(path);
    held.set(path, lines);
    if (lines !== null) used.add(path);
    project.setFile(path, lines, lines === null ? await beside(path) : []);
  }

  /** Lets go of every used file but those of one record: the next is most often of the same crib. */
  function letGoBut(path: string): void {
    const rests = project.restsOn(path).map((file) => file.path);
    const stays = new Set([path, ...rests]);
    for (const each of [...held.keys()]) {
      if (stays.has(each)) continue;
      held.delete(each);
      project.dropFile(each);
    }
  }

  return {
    async load(file) {
      const lines =
        held.get(file.path) ?? (await read(file.path, file.name, false));
      if (lines === undefined) return undefined;
      project.setFile(file.path, lines);
      await giveUses(project, file.path, give);
      return lines;
    },
    release(file) {
      if (MOST_HELD < held.size) letGoBut(file.path);
      if (held.has(file.path)) project.close(file.path);
      else project.dropFile(file.path);
    },
    newlyUsed() {
      return used.take();
    },
  };
}
