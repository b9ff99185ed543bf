// Gives a project the files that a check needs: the file itself, and those that it uses, however far. It reads; it judges nothing.
import { readFile, stat } from "node:fs/promises";
import { readLines, type FileLines } from "../../grammar/lines.ts";
import { nameFrom, whyNot, type FoundFile } from "./find-files.ts";
import type { CheckedProject } from "./io.ts";
import { readText } from "./read-text.ts";
import { shown } from "./terminal-text.ts";

/** Reads files into a project; one instance serves a whole run, so that a crib is read once. */
export interface Loader {
  /** Undefined where the file cannot be read: the sentence has then gone to `tell`. */
  load(file: FoundFile): Promise<FileLines | undefined>;
  /** Lets go of a file that no other uses. */
  release(file: FoundFile): void;
  /** Files that others used so far, and that are there. */
  used(): readonly string[];
}

/** Gives a project all that a file uses, however far. @param give gives it one file, `null` where it is not there */
export async function giveUses(
  project: Pick<CheckedProject, "missingUses">,
  path: string,
  give: (used: string) => Promise<void>,
): Promise<void> {
  for (
    let missing = project.missingUses(path);
    0 < missing.length;
    missing = project.missingUses(path)
  )
    for (const each of missing) await give(each);
}

export function createLoader(
  project: CheckedProject,
  cwd: string,
  tell: (sentence: string) => void,
): Loader {
  const used = new Map<string, FileLines | null>();

  async function read(
    path: string,
    name: string,
  ): Promise<FileLines | undefined> {
    try {
      const read = readText(await readFile(path), false);
      if (read.ok) return readLines(read.text);
      tell(`${shown(name)} cannot be read: ${read.because}.`);
    } catch (error) {
      tell(`${shown(name)} cannot be read: ${whyNot(error)}.`);
    }
    return undefined;
  }

  /** Anything but a plain file counts as not there: a `use` must not make the tool wait on a device. */
  async function readUsed(path: string): Promise<FileLines | null> {
    const isFile = await stat(path).then(
      (what) => what.isFile(),
      () => false,
    );
    return isFile ? ((await read(path, nameFrom(cwd, path))) ?? null) : null;
  }

  async function give(path: string): Promise<void> {
    const lines = await readUsed(path);
    used.set(path, lines);
    project.setFile(path, lines);
  }

  return {
    async load(file) {
      const lines = used.get(file.path) ?? (await read(file.path, file.name));
      if (lines === undefined) return undefined;
      project.setFile(file.path, lines);
      await giveUses(project, file.path, give);
      return lines;
    },
    release(file) {
      if (!used.has(file.path)) project.dropFile(file.path);
    },
    used: () =>
      [...used].filter(([, lines]) => lines !== null).map(([path]) => path),
  };
}
