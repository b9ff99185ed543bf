// Files in, entries and results out. It does no reading of its own: whoever holds it (the language server, the command line) gives it the
// files, asks which others they use, and gives it those too. Findings are the rules' (rules/check.ts).
import type { FileLines } from "../../grammar/lines.ts";
import { inAddress } from "./address.ts";
import { allOf } from "./entry.ts";
import { readFile, type FileEntries } from "./file-entries.ts";
import type { Result } from "./result.ts";
import { resultsOf } from "./results.ts";
import { createShop, refsOfKind, setFiles, type Shop } from "./shop.ts";
import type { Span } from "./values.ts";

export interface Files {
  /** Gives a file's lines, or `null` for one that is not there. Paths have forward slashes; a URI does as well. */
  setFile(path: string, lines: FileLines | null): void;
  /** Forgets a file: as if it had never been given. */
  dropFile(path: string): void;
  /** Files that this one uses, however far, and that have not been given yet. */
  missingUses(path: string): readonly string[];
  /** A file as a job or crib of its own; undefined where it is not there. */
  open(path: string): OpenFile | undefined;
}

/** A file with all that it uses. */
export interface OpenFile {
  readonly path: string;
  readonly shop: Shop;
  readonly file: FileEntries;
  readonly uses: readonly Use[];
}

/** A `use` of a file, with what it leads to. */
export interface Use {
  /** The entry that says it. */
  readonly ref: string;
  readonly span: Span;
  readonly written: string;
  /** Undefined where the path leads out of the workspace folder. */
  readonly path: string | undefined;
  readonly state: "there" | "missing" | "outside" | "loop";
}

/** @param options.root the workspace folder: `use` never leads out of it. */
export function createFiles(options: { readonly root: string }): Files {
  const given = new Map<string, FileLines | null>();
  const read = new Map<string, FileEntries>();
  const shops = new Map<string, Shop>();
  /** Of files that may form long chains: each is asked many times. */
  const usesOf = new WeakMap<FileEntries, readonly Omit<Use, "state">[]>();

  function usesIn(file: FileEntries): readonly Omit<Use, "state">[] {
    let uses = usesOf.get(file);
    if (uses === undefined) {
      uses = readUses(file, options.root);
      usesOf.set(file, uses);
    }
    return uses;
  }

  function entriesOf(path: string): FileEntries | undefined {
    const lines = given.get(path);
    if (lines === undefined || lines === null) return undefined;
    const before = read.get(path);
    if (before?.lines === lines) return before;
    const now = readFile(path, lines, before);
    read.set(path, now);
    return now;
  }

  /** The file and all that it uses, each once, nearest first; and how each of its own uses fares. */
  function gather(path: string): {
    readonly files: readonly FileEntries[];
    readonly uses: readonly Use[];
    readonly isWhole: boolean;
  } {
    const files: FileEntries[] = [];
    const uses: Use[] = [];
    let isWhole = true;
    const seen = new Set([path]);
    const waiting = [path];
    for (
      let next = waiting.shift();
      next !== undefined;
      next = waiting.shift()
    ) {
      const file = entriesOf(next);
      if (file === undefined) continue;
      files.push(file);
      if (!file.isWhole) isWhole = false;
      for (const use of usesIn(file)) {
        const state = stateOf(use.path, next);
        // a file that uses itself lacks nothing
        if (state !== "there" && use.path !== next) isWhole = false;
        if (next === path) uses.push({ ...use, state });
        if (use.path === undefined || state === "outside") continue;
        if (state === "there" && !seen.has(use.path)) waiting.push(use.path);
        seen.add(use.path);
      }
    }
    return { files, uses, isWhole };
  }

  function stateOf(used: string | undefined, by: string): Use["state"] {
    if (used === undefined) return "outside";
    if (used === by || leadsTo(used, by)) return "loop";
    return given.get(used) === undefined || given.get(used) === null
      ? "missing"
      : "there";
  }

  /** What a file uses, however far, and was not given. It looks for no loops: a chain is asked about once for each of its files. */
  function missingFrom(path: string): readonly string[] {
    const missing = new Set<string>();
    const seen = new Set([path]);
    for (const next of seen) {
      const file = entriesOf(next);
      if (file === undefined) continue;
      for (const { path: used } of usesIn(file)) {
        if (used === undefined) continue;
        if (!given.has(used)) missing.add(used);
        seen.add(used);
      }
    }
    return [...missing];
  }

  /** Whether a file uses another, however far. */
  function leadsTo(from: string, to: string): boolean {
    const seen = new Set<string>();
    const waiting = [from];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      if (next === to) return true;
      if (seen.has(next)) continue;
      seen.add(next);
      const file = entriesOf(next);
      if (file !== undefined)
        waiting.push(...usesIn(file).flatMap((use) => use.path ?? []));
    }
    return false;
  }

  return {
    setFile(path, lines) {
      given.set(path, lines);
    },
    dropFile(path) {
      given.delete(path);
      read.delete(path);
      shops.delete(path);
    },
    missingUses: missingFrom,
    open(path) {
      const file = entriesOf(path);
      if (file === undefined) return undefined;
      const { files, uses, isWhole } = gather(path);
      const shop = shops.get(path) ?? createShop();
      shops.set(path, shop);
      setFiles(shop, files, isWhole);
      return { path, shop, file, uses };
    },
  };
}

/**
 * Results of every entry of the file itself, in its order, the first of a name counting; then those of gauges of other files, which are
 * about what is read here.
 */
export function resultsIn({ file, shop }: OpenFile): readonly Result[] {
  const own = file.entries.flatMap((entry, index) => {
    const place = shop.places.get(entry.ref);
    return place?.file === 0 && place.index === index
      ? resultsOf(shop, entry.ref)
      : [];
  });
  const borrowed = refsOfKind(shop, "gauge").flatMap((ref) =>
    shop.places.get(ref)?.file === 0 ? [] : resultsOf(shop, ref),
  );
  return [...own, ...borrowed];
}

function readUses(
  file: FileEntries,
  root: string,
): readonly Omit<Use, "state">[] {
  return file.openings.flatMap((entry) =>
    allOf(entry, "UseFact").flatMap((fact) =>
      (fact.value ?? []).map((use) => ({
        ref: entry.ref,
        span: use.span,
        written: use.path,
        path: resolvePath(file.path, use.path, root),
      })),
    ),
  );
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
