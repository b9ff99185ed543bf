// Every finding of a file, each in its place. What is found of an entry is entry-findings.ts's; here only what an edit can have changed is
// asked for again, and only that is placed again.
import type { FileEntries } from "../model/file-entries.ts";
import type { FileCheck, Finding } from "../model/result.ts";
import {
  createFiles,
  resultsIn,
  type Files,
  type OpenFile,
} from "../model/project.ts";
import type { Shop } from "../model/shop.ts";
import {
  findingsOfText,
  foundOfEntry,
  type FoundOfEntry,
} from "./entry-findings.ts";
import { fileDrafts } from "./file-rules.ts";
import { placed } from "./placed.ts";

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
  readonly found: readonly FoundOfEntry[];
  readonly placed: readonly (readonly Finding[])[];
}

const seenOf = new WeakMap<Shop, Seen>();

const NONE: readonly Finding[] = [];

/** Every finding of a file with its place, by line. A finding that has not changed is the same object as the last time. */
export function findingsIn(open: OpenFile): readonly Finding[] {
  const { file, shop } = open;
  const before = seenOf.get(shop);
  const entriesBefore = before?.files[0]?.entries;
  const inPlace = before !== undefined && liesAlike(shop, before);
  const found: FoundOfEntry[] = [];
  const placedOf: (readonly Finding[])[] = [];
  const findings: Finding[] = [];
  file.entries.forEach((entry, index) => {
    const old = before?.found[index];
    const now =
      inPlace &&
      old !== undefined &&
      entriesBefore?.[index] === entry &&
      old.watched?.state !== "doubtful" &&
      old.watched?.state !== "stale"
        ? old
        : foundOfEntry(open, entry, index);
    found.push(now);
    const there = before?.placed[index];
    const all =
      inPlace &&
      there !== undefined &&
      old?.text === now.text &&
      old.meaning === now.meaning
        ? there
        : now.text.length === 0 && now.meaning.length === 0
          ? NONE
          : [...now.text, ...now.meaning].map((each) =>
              placed(
                shop,
                file.path,
                file.lines.starts[index] ?? 0,
                entry,
                each,
              ),
            );
    placedOf.push(all);
    for (const each of all) findings.push(each);
  });
  seenOf.set(shop, {
    files: shop.files,
    places: shop.places,
    found,
    placed: placedOf,
  });
  for (const { entry: index, ...draft } of fileDrafts(open)) {
    const entry = file.entries[index];
    if (entry !== undefined)
      findings.push(
        placed(shop, file.path, file.lines.starts[index] ?? 0, entry, draft),
      );
  }
  return findings.sort(byPlace);
}

/** What the lines of a file have wrong by themselves, for which nothing is worked out: part of `findingsIn`. */
export function lineFindingsIn({ file, shop }: OpenFile): readonly Finding[] {
  return file.entries
    .flatMap((entry, index) =>
      findingsOfText(entry).map((each) =>
        placed(shop, file.path, file.lines.starts[index] ?? 0, entry, each),
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
        old.entries.length === file.entries.length &&
        file.entries.every((entry, index) => {
          const twin = old.entries[index];
          if (twin === entry) return true;
          return (
            twin?.ref === entry.ref &&
            twin.nameSpan.line === entry.nameSpan.line &&
            twin.nameSpan.start === entry.nameSpan.start &&
            twin.nameSpan.end === entry.nameSpan.end
          );
        })
      );
    })
  );
}
