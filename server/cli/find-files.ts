// Which files a command is about: the paths that were asked for, and the `.thou` files in the folders among them. It reads no content.
import { readdir, realpath, stat } from "node:fs/promises";
import path from "node:path";
import { isLeftOut, isRecordName } from "../record-names.ts";
import { shown } from "./terminal-text.ts";

export interface FoundFile {
  /** Absolute, with forward slashes: what the project knows it by. */
  readonly path: string;
  /** From the working folder, with forward slashes: what the user sees. */
  readonly name: string;
}

export interface Found {
  /** In the byte order of their names, each file once, however often it was asked for or linked to. */
  readonly files: readonly FoundFile[];
  /** Sentences about what could not be looked at. */
  readonly problems: readonly string[];
}

/** The files asked for, and those in the folders asked for; no path at all is the working folder. */
export async function findFiles(
  asked: readonly string[],
  cwd: string,
): Promise<Found> {
  const search: Search = {
    cwd,
    seen: new Set(),
    files: [],
    links: [],
    problems: [],
  };
  for (const each of asked.length === 0 ? ["."] : asked)
    await look(path.resolve(cwd, each), search);
  // links last, so that a file goes by its own name where it was met under that
  for (
    let links = search.links.splice(0);
    0 < links.length;
    links = search.links.splice(0)
  )
    for (const link of inByteOrder(links, (each) => each))
      await follow(link, search);
  return {
    files: inByteOrder(search.files, (each) => each.name),
    problems: search.problems,
  };
}

export function inByteOrder<T>(
  list: readonly T[],
  nameOf: (item: T) => string,
): readonly T[] {
  return [...list].sort((a, b) =>
    Buffer.compare(Buffer.from(nameOf(a)), Buffer.from(nameOf(b))),
  );
}

/** A file's name as the user sees it: from the working folder where there is a way, with forward slashes. */
export function nameFrom(cwd: string, file: string): string {
  return forward(path.relative(cwd, file));
}

export function forward(file: string): string {
  return path.sep === "\\" ? file.replaceAll("\\", "/") : file;
}

/** The sentence for a path that the system would not open. */
export function whyNot(error: unknown): string {
  const code =
    error instanceof Error && "code" in error ? error.code : undefined;
  switch (code) {
    case "ENOENT":
      return "there is no such file or folder";
    case "EACCES":
    case "EPERM":
      return "its permissions do not allow it";
    case "ELOOP":
      return "its links lead in a circle";
    case "EISDIR":
      return "it is a folder";
    case "ENOTDIR":
      return "a part of its path is a file, not a folder";
    case "ENOSPC":
      return "the disk is full";
    case "EDQUOT":
      return "your share of the disk is used up";
    case "EFBIG":
      return "no file may be that large here";
    case "EROFS":
      return "the disk can only be read";
    case "ENAMETOOLONG":
      return "its name is too long";
    default:
      return error instanceof Error ? error.message : String(error);
  }
}

interface Search {
  readonly cwd: string;
  /** Real paths, so that links in a circle end. */
  readonly seen: Set<string>;
  readonly files: FoundFile[];
  readonly links: string[];
  readonly problems: string[];
}

async function look(at: string, search: Search): Promise<void> {
  const name = nameFrom(search.cwd, at) || ".";
  try {
    const real = await realpath(at);
    const what = await stat(real);
    if (search.seen.has(real)) return;
    search.seen.add(real);
    if (what.isDirectory()) await lookInside(at, search);
    else search.files.push({ path: forward(at), name });
  } catch (error) {
    search.problems.push(`${shown(name)} cannot be read: ${whyNot(error)}.`);
  }
}

/** Whether a search of a folder on the disk would find a file, wherever it is. */
export function isRecordIn(folder: string, file: string): boolean {
  const relative = path.relative(folder, file);
  const parts = relative.split(/[\\/]/u);
  return (
    isRecordName(file) &&
    parts[0] !== ".." &&
    !path.isAbsolute(relative) &&
    !parts.some(isLeftOut)
  );
}

async function lookInside(folder: string, search: Search): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    if (isLeftOut(entry.name)) continue;
    const at = path.join(folder, entry.name);
    if (entry.isSymbolicLink()) search.links.push(at);
    else if (entry.isDirectory() || isRecordName(entry.name))
      await look(at, search);
  }
}

async function follow(link: string, search: Search): Promise<void> {
  if (isRecordName(link) || (await leadsToFolder(link)))
    await look(link, search);
}

async function leadsToFolder(link: string): Promise<boolean> {
  try {
    return (await stat(link)).isDirectory();
  } catch {
    return false;
  }
}
