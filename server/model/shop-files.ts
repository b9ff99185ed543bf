// Gives a shop its files: which entries changed since it had them last is told to its graph, by name, and nothing else is. What is asked of
// the entries is shop.ts's.
import { ENTRY_KINDS, type EntryKind } from "../../grammar/vocabulary.ts";
import { allOf, type Entry } from "./entry.ts";
import { changedEntries, type FileEntries } from "./file-entries.ts";
import { inputNow, setInput } from "./graph.ts";
import { nameOf } from "./reference.ts";
import { isFirstOfName, type EntryPlace, type Shop } from "./shop.ts";

/** Gives the shop its files, the job's own first. `isWhole` is false while a used file is missing or can't be read. */
export function setFiles(
  shop: Shop,
  files: readonly FileEntries[],
  isWhole: boolean,
): void {
  const before = shop.files;
  shop.files = files;
  setInput(
    shop.graph,
    "whole",
    "",
    isWhole ? (entryOfUnreadUse(files) ?? true) : false,
  );
  const changed = files.map((file, index) => changesIn(before[index], file));
  if (before.length !== files.length || changed.includes(undefined)) {
    setTables(shop);
    return;
  }
  changed.forEach((numbers, index) => {
    for (const at of numbers ?? []) {
      const entry = files[index]?.entries[at];
      if (entry === undefined) continue;
      if (isFirstOfName(shop, entry.ref, at, index)) setEntry(shop, entry);
      else if (shop.twins.has(entry.ref))
        setInput(shop.graph, "all", entry.ref, allNamed(shop, entry.ref));
    }
  });
  setInput(shop.graph, "opening", "", openingOf(files[0]));
}

/** A `use` that can't be read leads to a file that nobody can name. */
function entryOfUnreadUse(files: readonly FileEntries[]): string | undefined {
  return files
    .flatMap(({ openings }) => openings)
    .find((entry) =>
      allOf(entry, "UseFact").some(({ value }) => value === undefined),
    )?.ref;
}

/** The numbers of the entries that changed; undefined unless all have the same names as before, in the same order. */
function changesIn(
  old: FileEntries | undefined,
  file: FileEntries,
): readonly number[] | undefined {
  if (old?.path !== file.path) return undefined;
  const changed = changedEntries(old, file);
  return changed?.every((at) =>
    isSameName(old.entries[at], file.entries[at]),
  ) === true
    ? changed
    : undefined;
}

/** Only what the entry says can have changed. */
function isSameName(
  twin: Entry | undefined,
  entry: Entry | undefined,
): boolean {
  return (
    entry !== undefined &&
    twin?.ref === entry.ref &&
    isSameList(looseNames(twin), looseNames(entry))
  );
}

function setEntry(shop: Shop, entry: Entry): void {
  setInput(shop.graph, "entry", entry.ref, entry);
  setInput(shop.graph, "all", entry.ref, allNamed(shop, entry.ref));
  setEqual(
    shop,
    "head",
    entry.ref,
    entry.of.map((site) => `${site.kind ?? ""} ${site.name}`),
  );
}

/** Every entry of a name, where there are several; undefined for the usual one. */
function allNamed(shop: Shop, ref: string): readonly Entry[] | undefined {
  if (!shop.twins.has(ref)) return undefined;
  return shop.files.flatMap((file) =>
    file.entries.filter((entry) => entry.ref === ref),
  );
}

function setTables(shop: Shop): void {
  shop.twins = twinsOf(shop.files);
  const places = new Map<string, EntryPlace>();
  const byKind = new Map<EntryKind, string[]>(
    ENTRY_KINDS.map((kind) => [kind, []]),
  );
  const byName = new Map<string, string[]>();
  const loose: string[] = [];
  shop.files.forEach((file, fileIndex) => {
    file.entries.forEach((entry, index) => {
      for (const name of looseNames(entry)) loose.push(name);
      if (
        entry.ref === "" ||
        places.has(entry.ref) ||
        entry.kind === undefined ||
        entry.name === undefined
      )
        return;
      places.set(entry.ref, { file: fileIndex, index });
      byKind.get(entry.kind)?.push(entry.ref);
      byName.set(entry.name, [...(byName.get(entry.name) ?? []), entry.ref]);
      setEntry(shop, entry);
    });
  });
  for (const ref of shop.places.keys()) {
    if (!places.has(ref)) {
      setInput(shop.graph, "entry", ref, undefined);
      setInput(shop.graph, "all", ref, undefined);
    }
  }
  for (const [kind, refs] of byKind) setEqual(shop, "kind", kind, refs);
  for (const [name, refs] of byName) setEqual(shop, "name", name, refs);
  for (const ref of shop.places.keys()) {
    const name = nameOf(ref);
    if (!byName.has(name)) setEqual(shop, "name", name, []);
  }
  setEqual(shop, "loose", "", loose);
  shop.places = places;
  setInput(shop.graph, "opening", "", openingOf(shop.files[0]));
}

/**
 * What an entry may be whose opening line can't be read: any word of that line, and where it has no name that can be read, any of its
 * kind, as "journal *".
 */
function looseNames(entry: Entry): readonly string[] {
  if (!entry.damaged || !entry.block.opens) return [];
  // an entry that stands where it may not has its name
  if (
    entry.problems.some(
      ({ code, span }) => code === "word-misplaced" && span.line === 0,
    )
  )
    return [];
  const words = headOfBlock(entry).match(/\p{L}[\p{L}\d-]*/gu) ?? [];
  return entry.kind === undefined || entry.ref !== ""
    ? words
    : [...words, `${entry.kind} *`];
}

function headOfBlock(entry: Entry): string {
  return entry.block.lines[0]?.body ?? "";
}

function twinsOf(files: readonly FileEntries[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const twins = new Set<string>();
  for (const file of files) {
    for (const { ref } of file.entries) {
      if (ref !== "" && seen.has(ref)) twins.add(ref);
      seen.add(ref);
    }
  }
  return twins;
}

/** The job or shop entry of a file. */
function openingOf(file: FileEntries | undefined): Entry | undefined {
  return (
    file?.openings.find((entry) => entry.kind === "job") ?? file?.openings[0]
  );
}

function setEqual(
  shop: Shop,
  name: string,
  of: string,
  value: readonly string[],
): void {
  const old =
    (inputNow(shop.graph, name, of) as readonly string[] | undefined) ?? []; // only this function sets such inputs
  if (!isSameList(old, value)) setInput(shop.graph, name, of, value);
}

function isSameList(one: readonly string[], other: readonly string[]): boolean {
  return (
    one.length === other.length &&
    one.every((each, index) => each === other[index])
  );
}
