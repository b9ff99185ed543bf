// Which files a command is about: the paths that were asked for, and the `.thou` files in the folders among them. It reads no content.
import { opendir, realpath, stat } from "node:fs/promises";
import path from "node:path";
import { isLeftOut, isRecordName } from "../record-names.ts";
import { codeOf, whyNot } from "../why-not.ts";
import { STANDARD_INPUT } from "./io.ts";
import { createNames, type NameList, type Names } from "./name-list.ts";
import { endWithNear } from "./near-file.ts";
import { shown } from "./terminal-text.ts";

export interface FoundFile {
  /** Absolute, with forward slashes: what the project knows it by. */
  readonly path: string;
  /** From the working folder, with forward slashes: what the user sees. */
  readonly name: string;
}

/** Of many files only the names are held: each is made as it is asked for. A list of files is such a one too. */
export interface FoundFiles extends Iterable<FoundFile> {
  readonly length: number;
  slice(from: number, to: number): readonly FoundFile[];
}

export interface Found {
  /** In the byte order of their names, each file once, however often it was asked for or linked to. */
  readonly files: FoundFiles;
  /** Sentences about what could not be looked at. */
  readonly problems: readonly string[];
}

/**
 * The files asked for, and those in the folders asked for; no path at all is the working folder. Who writes into what is found follows no
 * links that lie in a folder: they may lead anywhere.
 */
export async function findFiles(
  asked: readonly string[],
  cwd: string,
  { followsLinks = true }: { readonly followsLinks?: boolean } = {},
): Promise<Found> {
  const search: Search = {
    cwd,
    names: createNames(),
    folders: new Set(),
    others: new Set(),
    links: [],
    problems: [],
  };
  for (const each of asked.length === 0 ? ["."] : asked)
    // a script's variable that holds nothing is not this folder
    if (each === "")
      search.problems.push("an empty name was given: name a file or a folder.");
    else if (each === STANDARD_INPUT)
      search.problems.push(
        "- would be standard input, which is not read here: name a file or a folder (./- for one of that name).",
      );
    else await look(path.resolve(cwd, each), search);
  // links last, so that a file goes by its own name where it was met under that
  for (
    let links = search.links.splice(0);
    followsLinks && 0 < links.length;
    links = search.links.splice(0)
  )
    for (const link of inByteOrder(links, (each) => each))
      await follow(link, search);
  return {
    files: filesNamed(search.names.sorted(), cwd),
    problems: search.problems,
  };
}

function filesNamed(names: NameList, cwd: string): FoundFiles {
  const fileAt = (index: number): FoundFile => {
    const name = names.at(index);
    return { name, path: forward(path.resolve(cwd, name)) };
  };
  return {
    length: names.length,
    slice: (from, to) =>
      Array.from(
        { length: Math.max(0, Math.min(to, names.length) - from) },
        (_, index) => fileAt(from + index),
      ),
    *[Symbol.iterator]() {
      for (let index = 0; index < names.length; index++) yield fileAt(index);
    },
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

interface Search {
  readonly cwd: string;
  readonly names: Names;
  /** Real paths of the folders that were gone through, so that links in a circle end. Each record in them is known by that. */
  readonly folders: Set<string>;
  /** Real paths of the files that were come to by another way. */
  readonly others: Set<string>;
  readonly links: string[];
  readonly problems: string[];
}

/** A path that was asked for, or that a link leads to. */
async function look(at: string, search: Search): Promise<void> {
  await trying(at, search, async () => {
    const real = await realpath(at);
    if ((await stat(real)).isDirectory()) await lookInside(at, real, search);
    else if (!isKnown(real, search)) {
      search.others.add(real);
      search.names.add(nameFrom(search.cwd, at));
    }
  });
}

async function trying(
  at: string,
  { cwd, problems }: Search,
  look: () => Promise<void>,
): Promise<void> {
  try {
    await look();
  } catch (error) {
    const name = nameFrom(cwd, at) || ".";
    const end =
      codeOf(error) === "ENOENT"
        ? await endWithNear(at, (file) => nameFrom(cwd, file))
        : ".";
    problems.push(`${shown(name)} cannot be read: ${whyNot(error)}${end}`);
  }
}

function isKnown(real: string, { others, folders }: Search): boolean {
  return (
    others.has(real) ||
    (isRecord(path.basename(real)) && folders.has(path.dirname(real)))
  );
}

function isRecord(name: string): boolean {
  return isRecordName(name) && !isLeftOut(name);
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

/**
 * Whatever is in a folder that is no link is where its name says it is, and is not asked for that, one by one.
 * @param real the folder's real path
 */
async function lookInside(
  folder: string,
  real: string,
  search: Search,
): Promise<void> {
  if (search.folders.has(real)) return;
  const inside = await opendir(folder);
  search.folders.add(real);
  const below: string[] = [];
  for await (const entry of inside) {
    const { name } = entry;
    if (isLeftOut(name)) continue;
    if (entry.isSymbolicLink()) search.links.push(path.join(folder, name));
    else if (entry.isDirectory()) below.push(name);
    else if (isRecord(name) && !search.others.has(path.join(real, name)))
      search.names.add(nameFrom(search.cwd, path.join(folder, name)));
  }
  for (const name of inByteOrder(below, (each) => each)) {
    const at = path.join(folder, name);
    await trying(at, search, () =>
      lookInside(at, path.join(real, name), search),
    );
  }
}

async function follow(link: string, search: Search): Promise<void> {
  if (isRecordName(link) || (await isFolder(link))) await look(link, search);
}

/** Whether a path, or what its links lead to, is a folder. */
export async function isFolder(at: string): Promise<boolean> {
  return stat(at).then(
    (what) => what.isDirectory(),
    () => false,
  );
}

/** Whether a path leads to anything. */
export async function isThere(at: string): Promise<boolean> {
  return stat(at).then(
    () => true,
    () => false,
  );
}
