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

  async function loadUses(path: string): Promise<void> {
    for (;;) {
      const missing = project
        .missingUses(path)
        .filter((each) => !used.has(each));
      if (missing.length === 0) return;
      for (const each of missing) {
        const lines = await readUsed(each);
        used.set(each, lines);
        project.setFile(each, lines);
      }
    }
  }

  return {
    async load(file) {
      const lines = used.get(file.path) ?? (await read(file.path, file.name));
      if (lines === undefined) return undefined;
      project.setFile(file.path, lines);
      await loadUses(file.path);
      return lines;
    },
    release(file) {
      if (!used.has(file.path)) project.dropFile(file.path);
    },
    used: () =>
      [...used].filter(([, lines]) => lines !== null).map(([path]) => path),
  };
}
