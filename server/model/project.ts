// Files in, entries and results out. It does no reading of its own: whoever holds it (the language server, the command line) gives it the
// files, asks which others they use, and gives it those too. Findings are the rules' (rules/check.ts).
import type { FileLines } from "../../grammar/lines.ts";
import { readFile, type FileEntries } from "./file-entries.ts";
import type { Result } from "./result.ts";
import { resultsOf } from "./results.ts";
import { setFiles } from "./shop-files.ts";
import { createShop, refsOfKind, type Shop, isFirstOfName } from "./shop.ts";
import { faresOf, reachOf, readUses, type Use, type UsesIn } from "./uses.ts";

export interface Files {
  /**
   * Gives a file's lines, or `null` for one that is not there. Paths have forward slashes; a URI does as well.
   * @param beside of one that is not there, the names of the records in its folder
   */
  setFile(
    path: string,
    lines: FileLines | null,
    beside?: readonly string[],
  ): void;
  /** Forgets a file: as if it had never been given. */
  dropFile(path: string): void;
  /** Lets go of what was made of a file as a job of its own; others that use it still have it. */
  close(path: string): void;
  /** Some files that this one uses, however far, and that have not been given yet; none once it has all that it rests on. */
  missingUses(path: string): readonly string[];
  /** Every file that this one uses, however far, there or not, and whether it is there as a text. */
  restsOn(path: string): readonly UsedFile[];
  /** A file as a job or crib of its own; undefined where it is not there. */
  open(path: string): OpenFile | undefined;
  /** A file by itself, and whether it was opened before; undefined where it is not there. */
  look(path: string): FileAlone | undefined;
}

export interface UsedFile {
  readonly path: string;
  readonly isText: boolean;
}

/** A file without what it uses: no more than its entries are read. */
export interface FileAlone {
  readonly file: FileEntries;
  /** Undefined where it was not opened yet. */
  readonly shop: Shop | undefined;
}

/** A file with all that it uses. */
export interface OpenFile {
  readonly path: string;
  readonly shop: Shop;
  readonly file: FileEntries;
  readonly uses: readonly Use[];
  /** The names of the records in the folder of a file that is not there, as far as they were given. */
  readonly besideOf: (used: string) => readonly string[];
}

/** Few, so that of too many not all are read before the first are counted. */
const AT_ONCE = 8;

/** @param options.root the workspace folder: `use` never leads out of it. */
export function createFiles(options: { readonly root: string }): Files {
  const given = new Map<string, FileLines | null>();
  const besides = new Map<string, readonly string[]>();
  const read = new Map<string, FileEntries>();
  const shops = new Map<string, Shop>();
  /** By the openings of a file, which most edits leave as they are. Files may form long chains: each is asked many times. */
  const usesOf = new WeakMap<FileEntries["openings"], UsesIn>();

  function usesIn({ path, openings }: FileEntries): UsesIn {
    let uses = usesOf.get(openings);
    // spares a look: what stands in the openings is all that a file uses
    if (uses === undefined) {
      uses = readUses(path, openings, options.root);
      usesOf.set(openings, uses);
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

  const known = {
    entriesOf,
    usesIn,
    isGiven: (path: string) => given.has(path),
  };

  return {
    setFile(path, lines, beside = []) {
      given.set(path, lines);
      if (beside.length === 0) besides.delete(path);
      else besides.set(path, beside);
    },
    dropFile(path) {
      given.delete(path);
      besides.delete(path);
      read.delete(path);
      shops.delete(path);
    },
    close(path) {
      shops.delete(path);
    },
    missingUses: (path) => reachOf(path, known).missing.slice(0, AT_ONCE),
    restsOn: (path) =>
      reachOf(path, known)
        .looked.filter((used) => used !== path)
        .map((used) => ({
          path: used,
          isText: entriesOf(used) !== undefined,
        })),
    open(path) {
      const file = entriesOf(path);
      if (file === undefined) return undefined;
      const reach = reachOf(path, known);
      const { files } = reach;
      const { uses, isWhole } = faresOf(reach, known);
      const shop = shops.get(path) ?? createShop();
      shops.set(path, shop);
      setFiles(shop, files, isWhole);
      const besideOf = (used: string): readonly string[] =>
        besides.get(used) ?? [];
      return { path, shop, file, uses, besideOf };
    },
    look(path) {
      const file = entriesOf(path);
      return file === undefined ? undefined : { file, shop: shops.get(path) };
    },
  };
}

/**
 * Results of every entry of the file itself, in its order, the first of a name counting; then those of gauges of other files, which are
 * about what is read here.
 */
export function resultsIn({ file, shop }: OpenFile): readonly Result[] {
  const own = file.entries.flatMap(({ ref }, index) =>
    isFirstOfName(shop, ref, index) ? resultsOf(shop, ref) : [],
  );
  const borrowed = refsOfKind(shop, "gauge").flatMap((ref) =>
    shop.places.get(ref)?.file === 0 ? [] : resultsOf(shop, ref),
  );
  return [...own, ...borrowed];
}
