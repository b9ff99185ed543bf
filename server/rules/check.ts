// Every finding of a file, each in its place. What is found of an entry is entry-findings.ts's; here only what an edit can have changed is
// asked for again, and only that is placed again.
import { eolOf } from "../../grammar/lines.ts";
import { changedEntries, type FileEntries } from "../model/file-entries.ts";
import type { FileCheck, Finding } from "../model/result.ts";
import {
  createFiles,
  resultsIn,
  type Files,
  type OpenFile,
} from "../model/project.ts";
import type { Shop } from "../model/shop.ts";
import {
  doubtedIn,
  foundOfEntry,
  type FoundOfEntry,
} from "./entry-findings.ts";
import { fileDrafts } from "./file-rules.ts";
import { placed, type Whereabouts } from "./placed.ts";
import { findingsOfText } from "./text-findings.ts";

export interface Project extends Files {
  /** Results and findings of one file, as a job or a crib of its own; nothing of a file that is not there. */
  check(path: string): FileCheck;
}

export function createProject(options: { readonly root: string }): Project {
  const files = createFiles(options);
  return {
    ...files,
    check(path) {
      const open = files.open(path);
      return open === undefined
        ? { findings: [], results: [] }
        : { findings: findingsIn(open), results: resultsIn(open) };
    },
  };
}

/** What the last look at a file found of each of its entries, and where everything lay then. */
interface Seen {
  readonly files: readonly FileEntries[];
  readonly places: Shop["places"];
  readonly found: FoundOfEntry[];
  /** The findings of each entry of which there are any, by its number. */
  readonly placed: Map<number, readonly Finding[]>;
}

const seenOf = new WeakMap<Shop, Seen>();

/** Every finding of a file with its place, by line. A finding that has not changed is the same object as the last time. */
export function findingsIn(open: OpenFile): readonly Finding[] {
  const { file, shop } = open;
  const before = seenOf.get(shop);
  const doubted = doubtedIn(shop);
  const isInPlace = before !== undefined && liesAlike(shop, before);
  const found = isInPlace ? before.found : [];
  const placedOf = isInPlace
    ? before.placed
    : new Map<number, readonly Finding[]>();
  const again = isInPlace
    ? entriesInDoubt(open, before, doubted)
    : file.entries.keys();
  for (const index of again) {
    const entry = file.entries[index];
    if (entry === undefined) continue;
    const old = found[index];
    const now = foundOfEntry(open, entry, index);
    if (old?.text === now.text && old.meaning === now.meaning) continue;
    const all = [...now.text, ...now.meaning];
    if (all.length === 0) placedOf.delete(index);
    else
      placedOf.set(
        index,
        all.map((each) => placed(shop, file, index, entry, each)),
      );
    found[index] = now;
  }
  doubted.clear();
  seenOf.set(shop, {
    files: shop.files,
    places: shop.places,
    found,
    placed: placedOf,
  });
  const ofFile = fileDrafts(open).flatMap(({ entry: index, ...draft }) => {
    const entry = file.entries[index];
    return entry === undefined ? [] : placed(shop, file, index, entry, draft);
  });
  return [...[...placedOf.values()].flat(), ...ofFile].sort(byPlace);
}

/** The numbers of the entries of which something else may be found now: those that read otherwise, and those whose meaning is in doubt. */
function entriesInDoubt(
  { file, shop }: OpenFile,
  before: Seen,
  doubted: ReadonlySet<string>,
): ReadonlySet<number> {
  const [old] = before.files;
  const numbers = new Set(
    (old === undefined ? undefined : changedEntries(old, file)) ??
      file.entries.keys(),
  );
  for (const ref of doubted) {
    const place = shop.places.get(ref);
    if (place?.file === 0) numbers.add(place.index);
  }
  return numbers;
}

/** The text of an entry has nothing wrong that points to another. */
const ALONE: Whereabouts = { places: new Map(), files: [] };

/**
 * What the lines of a file have wrong by themselves: part of `findingsIn`, for which nothing is worked out, and of which no shop need know.
 */
export function lineFindingsIn(file: FileEntries): readonly Finding[] {
  return file.entries
    .flatMap((entry, index) =>
      findingsOfText(entry).map((each) =>
        placed(ALONE, file, index, entry, each),
      ),
    )
    .sort(byPlace);
}

function byPlace({ place: one }: Finding, { place: other }: Finding): number {
  return one.line - other.line || one.start - other.start;
}

/**
 * Whether every entry of every file lies where it lay: the same names in the same order, each on its line, and its name at its place there.
 * A finding may point to any of them.
 */
function liesAlike(shop: Shop, before: Seen): boolean {
  return (
    shop.places === before.places &&
    shop.files.length === before.files.length &&
    shop.files.every((file, at) => {
      const old = before.files[at];
      if (file === old) return true;
      return (
        old?.path === file.path &&
        old.lines.starts === file.lines.starts &&
        // fixes are written with it
        eolOf(old.lines) === eolOf(file.lines) &&
        changedEntries(old, file)?.every((index) => {
          const entry = file.entries[index];
          const twin = old.entries[index];
          return (
            entry !== undefined &&
            twin?.ref === entry.ref &&
            twin.nameSpan.line === entry.nameSpan.line &&
            twin.nameSpan.start === entry.nameSpan.start &&
            twin.nameSpan.end === entry.nameSpan.end
          );
        }) === true
      );
    })
  );
}
