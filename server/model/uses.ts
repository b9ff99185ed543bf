// What a file uses, and what those files use: which files a record rests on, in which order, and how each `use` of its own fares. A stranger's
// files may use one another in any number and in any circle, so a record rests on so many files and lines and no more. It reads no file.
import { lineCount } from "../../grammar/lines.ts";
import { allOf, type Entry } from "./entry.ts";
import { inAddress } from "./address.ts";
import type { FileEntries } from "./file-entries.ts";
import type { Span } from "./values.ts";

/** Files that a record rests on, itself and those that are not there among them. A shop has a few cribs. */
export const MOST_FILES = 200;
/** Lines of all of them together. */
export const MOST_LINES_TOGETHER = 100_000;

/** A `use` of a file, with what it leads to. */
export interface Use {
  /** The number, in its file, of the entry that says it. */
  readonly entry: number;
  readonly span: Span;
  readonly written: string;
  /** It is the only one of its line. */
  readonly isAlone: boolean;
  /** Undefined where the path leads out of the workspace folder. */
  readonly path: string | undefined;
  /** `beyond`: what it leads to is more than a record rests on. */
  readonly state: "there" | "missing" | "outside" | "loop" | "beyond";
}

/** A `use` as its line says it. */
export interface ReadUse extends Omit<Use, "entry" | "state"> {
  readonly opening: Entry;
}

/** The uses of one file, and the paths that they lead to, each once. */
export interface UsesIn {
  readonly all: readonly ReadUse[];
  readonly paths: ReadonlySet<string>;
}

/** The files that there are. */
export interface GivenFiles {
  entriesOf(path: string): FileEntries | undefined;
  usesIn(file: FileEntries): UsesIn;
  /** Whether it was asked for, there or not. */
  isGiven(path: string): boolean;
}

export interface Reach {
  /** The file and all that it uses, each once, nearest first. */
  readonly files: readonly FileEntries[];
  /** The same and those that are not there, or no longer fit in. */
  readonly looked: readonly string[];
  /** Files among them that nobody was asked for yet. */
  readonly missing: readonly string[];
  /** The file of its own `use` that leads to more than is read; undefined where all is. */
  readonly beyond: string | undefined;
}

/** Follows what a file uses, up to the limits. Those that close a circle add nothing. */
export function reachOf(path: string, given: GivenFiles): Reach {
  const files: FileEntries[] = [];
  const missing: string[] = [];
  const looked: string[] = [];
  let lines = 0;
  // each with the file of the record's own `use` by which it was come to first
  const from = new Map([[path, path]]);
  for (const [next, own] of from) {
    if (looked.length === MOST_FILES)
      return { files, looked, missing, beyond: own };
    looked.push(next);
    if (!given.isGiven(next)) missing.push(next);
    const file = given.entriesOf(next);
    if (file === undefined) continue;
    lines += lineCount(file.lines);
    if (0 < files.length && MOST_LINES_TOGETHER < lines)
      return { files, looked, missing, beyond: own };
    files.push(file);
    for (const used of given.usesIn(file).paths)
      if (!from.has(used)) from.set(used, next === path ? used : own);
  }
  return { files, looked, missing, beyond: undefined };
}

/** How each `use` of the first file fares, and whether all that these files use is there. */
export function faresOf(
  { files, beyond }: Reach,
  given: GivenFiles,
): { readonly uses: readonly Use[]; readonly isWhole: boolean } {
  const back = circlesIn(files, given);
  const read = new Set(files.map((file) => file.path));
  const stateOf = ({ path }: ReadUse, by: string): Use["state"] => {
    if (path === undefined) return "outside";
    if (path === by || back.get(by)?.has(path) === true) return "loop";
    if (read.has(path)) return path === beyond ? "beyond" : "there";
    const isGone = given.isGiven(path) && given.entriesOf(path) === undefined;
    return beyond === undefined || isGone ? "missing" : "beyond";
  };
  let isWhole = beyond === undefined;
  let uses: readonly Use[] = [];
  for (const [index, file] of files.entries()) {
    if (!file.isWhole) isWhole = false;
    const { all } = given.usesIn(file);
    const states = all.map((use) => stateOf(use, file.path));
    // a file that uses itself lacks nothing
    if (
      all.some(({ path }, at) => states[at] !== "there" && path !== file.path)
    )
      isWhole = false;
    if (index === 0)
      uses = all.map(({ opening, ...use }, at) => ({
        ...use,
        entry: file.entries.indexOf(opening),
        state: states[at] ?? "there",
      }));
  }
  return { uses, isWhole };
}

/**
 * Of each file, those that it uses and that lead back to it: those of its own circle. Circles are found in one pass over all uses, after
 * Tarjan (strongly connected components; from memory), without recursion, since chains may be long.
 */
function circlesIn(
  files: readonly FileEntries[],
  given: GivenFiles,
): ReadonlyMap<string, ReadonlySet<string>> {
  // spares a look: a circle takes two files that use others, or one that uses itself, which is told without
  if (files.filter((file) => 0 < given.usesIn(file).paths.size).length < 2)
    return new Map();
  const nextTo = new Map(
    files.map((file) => [file.path, [...given.usesIn(file).paths]]),
  );
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const circle = new Map<string, ReadonlySet<string>>();
  const open: string[] = [];
  const lower = (path: string, to: number | undefined): void => {
    if (to !== undefined)
      lowest.set(path, Math.min(to, lowest.get(path) ?? to));
  };
  for (const start of nextTo.keys()) {
    const trail: { readonly path: string; at: number }[] = [];
    const enter = (path: string): void => {
      order.set(path, order.size);
      lowest.set(path, order.size - 1);
      open.push(path);
      trail.push({ path, at: 0 });
    };
    if (!order.has(start)) enter(start);
    for (let top = trail.at(-1); top !== undefined; top = trail.at(-1)) {
      const { path } = top;
      const next = nextTo.get(path)?.[top.at++];
      if (next !== undefined) {
        if (!order.has(next)) enter(next);
        // one whose circle is closed leads nowhere that is open
        else if (!circle.has(next)) lower(path, order.get(next));
        continue;
      }
      trail.pop();
      const before = trail.at(-1);
      if (before !== undefined) lower(before.path, lowest.get(path));
      if (lowest.get(path) === order.get(path)) {
        const own = new Set(open.splice(open.lastIndexOf(path)));
        for (const each of own) circle.set(each, own);
      }
    }
  }
  return circle;
}

/** @param openings of the file of that path */
export function readUses(
  path: string,
  openings: readonly Entry[],
  root: string,
): UsesIn {
  const all = openings.flatMap((opening) =>
    allOf(opening, "UseFact").flatMap(({ value = [] }) =>
      value.map((use) => ({
        opening,
        span: use.span,
        written: use.path,
        isAlone: value.length === 1,
        path: resolvePath(path, use.path, root),
      })),
    ),
  );
  return {
    all,
    paths: new Set(all.flatMap(({ path }) => path ?? [])),
  };
}

/** The path that a relative one means from a file; undefined where it is absolute or leads out of the root. */
export function resolvePath(
  from: string,
  relative: string,
  root: string,
): string | undefined {
  const written = relative.replaceAll("\\", "/");
  if (
    written === "" ||
    written.startsWith("/") ||
    /^[a-z][a-z\d+.-]*:/iu.test(written)
  )
    return undefined;
  const parts = from.split("/").slice(0, -1);
  for (const part of written.split("/")) {
    if (part === "..") {
      if (parts.length === 0) return undefined;
      parts.pop();
    } else if (part !== "." && part !== "")
      parts.push(isUri(from) ? inAddress(part) : part);
  }
  const path = parts.join("/");
  const inside = root === "" || root.endsWith("/") ? root : `${root}/`;
  return path.startsWith(inside) ? path : undefined;
}

function isUri(path: string): boolean {
  return /^[a-z][a-z\d+.-]+:\/\//iu.test(path);
}
