// The entries of one job and the files it uses, by name, as inputs of its graph. Queries read them here, so that each knows what it
// depends on. Where an entry lies in its file is not an input: moving an entry changes no result.
import { ENTRY_KINDS, type EntryKind } from "../../grammar/vocabulary.ts";
import { material as materialNamed } from "../core/materials/material.ts";
import { oil as oilNamed } from "../core/materials/oils.ts";
import type { Entry } from "./entry.ts";
import {
  createGraph,
  inputNow,
  inputsBelow,
  readInput,
  readQuery,
  setInput,
  type Graph,
} from "./graph.ts";
import { changedEntries, type FileEntries } from "./file-entries.ts";
import type { RefSite } from "./values.ts";

export interface Shop {
  readonly graph: Graph;
  /** The files in the order they hold: the job's own first, then those it uses. */
  files: readonly FileEntries[];
  /** Where each entry lies; the first of a name counts. */
  places: ReadonlyMap<string, EntryPlace>;
  /** References that several entries carry. */
  twins: ReadonlySet<string>;
}

/** Where an entry lies: the number of its file, and of its block there. */
export interface EntryPlace {
  readonly file: number;
  readonly index: number;
}

export function createShop(): Shop {
  return {
    graph: createGraph(),
    files: [],
    places: new Map(),
    twins: new Set(),
  };
}

/** Gives the shop its files, the job's own first. `isWhole` is false while a used file is missing or can't be read. */
export function setFiles(
  shop: Shop,
  files: readonly FileEntries[],
  isWhole: boolean,
): void {
  const before = shop.files;
  shop.files = files;
  setInput(shop.graph, "whole", "", isWhole);
  const changed =
    before.length === files.length
      ? files.map((file, index) => changesIn(before[index], file))
      : [];
  if (before.length !== files.length || changed.includes(undefined)) {
    setTables(shop);
    return;
  }
  changed.forEach((numbers, index) => {
    for (const at of numbers ?? []) {
      const entry = files[index]?.entries[at];
      if (entry === undefined) continue;
      if (isFirst(shop, entry, index, at)) setEntry(shop, entry);
      else if (shop.twins.has(entry.ref))
        setInput(shop.graph, "all", entry.ref, allNamed(shop, entry.ref));
    }
  });
  setInput(shop.graph, "opening", "", openingOf(files[0]));
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
    twin.name === entry.name &&
    twin.kind === entry.kind &&
    ((entry.ref !== "" && !entry.damaged && !twin.damaged) ||
      headOfBlock(twin) === headOfBlock(entry))
  );
}

function isFirst(
  shop: Shop,
  entry: Entry,
  file: number,
  index: number,
): boolean {
  const place = shop.places.get(entry.ref);
  return place?.file === file && place.index === index;
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
    const name = ref.slice(ref.indexOf(" ") + 1);
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
  if ((entry.ref !== "" && !entry.damaged) || !entry.block.opens) return [];
  // a fact that lost its indent is no entry, and an entry that is set in has its name
  if (entry.problems.some((problem) => problem.code === "word-misplaced"))
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
  if (
    old.length === value.length &&
    value.every((each, index) => each === old[index])
  )
    return;
  setInput(shop.graph, name, of, value);
}

/** A value that is worked out from the shop for one reference, and remembered. */
export function query<T>(
  name: string,
  compute: (shop: Shop, of: string) => T,
): (shop: Shop, of: string) => T {
  // the value of a key is always what this query's own compute gave
  return (shop, of) => readQuery(shop.graph, name, of, shop, compute) as T;
}

export function entryOf(shop: Shop, ref: string): Entry | undefined {
  return readInput(shop.graph, "entry", ref) as Entry | undefined; // only setEntry sets such keys
}

/** Every entry of a reference, in the order of the files; one in most cases. */
export function entriesOf(shop: Shop, ref: string): readonly Entry[] {
  const all = readInput(shop.graph, "all", ref) as readonly Entry[] | undefined; // only allNamed makes such values
  if (all !== undefined) return all;
  const entry = entryOf(shop, ref);
  return entry === undefined ? [] : [entry];
}

/** The job, or the shop of a crib. */
export function openingEntry(shop: Shop): Entry | undefined {
  return readInput(shop.graph, "opening", "") as Entry | undefined; // only setFiles sets it
}

export function refsOfKind(shop: Shop, kind: EntryKind): readonly string[] {
  return (
    (readInput(shop.graph, "kind", kind) as readonly string[] | undefined) ?? []
  ); // only setTables sets such keys
}

/** What the opening line of an entry names, as "kind name" with the kind empty where it was left off; changes only with that line. */
export function headOf(shop: Shop, ref: string): readonly string[] {
  return (
    (readInput(shop.graph, "head", ref) as readonly string[] | undefined) ?? []
  ); // only setEntry sets such keys
}

/** A name that stands under a word that could not be read: it may be an entry of any kind. */
export function isLoose(shop: Shop, ref: string): boolean {
  const loose = readInput(shop.graph, "loose", "") as
    readonly string[] | undefined; // only setTables sets it
  const [kind = "", name = ""] = ref.split(" ");
  return loose?.some((each) => each === name || each === `${kind} *`) === true;
}

/** Every file is there and every opening line is known: only then may it be said that something is nowhere. */
export function isWhole(shop: Shop): boolean {
  const loose = readInput(shop.graph, "loose", "") as
    readonly string[] | undefined; // only setTables sets it
  return (
    readInput(shop.graph, "whole", "") !== false && (loose?.length ?? 0) === 0
  );
}

/** What the query being worked out waits for, as far as it has asked: a name that may be in a file that is missing, a line that can't be read. */
export function waitsFor(shop: Shop): {
  readonly file: boolean;
  readonly line: boolean;
} {
  let [file, line] = [false, false];
  for (const { name, value } of inputsBelow(shop.graph)) {
    if (name === "whole") file ||= value === false;
    else if (name === "entry") {
      const entry = value as Entry | undefined; // only setEntry sets such keys
      line ||=
        entry !== undefined &&
        (entry.damaged || entry.facts.some((fact) => fact.value === undefined));
    }
  }
  return { file, line };
}

export type Resolution =
  | { readonly state: "found"; readonly ref: string }
  /** Shipped with the tool: a material or an oil that no file has. */
  | { readonly state: "shipped"; readonly ref: string }
  | { readonly state: "missing" }
  | { readonly state: "wrong-kind"; readonly ref: string }
  | { readonly state: "ambiguous"; readonly refs: readonly string[] }
  /** It may be in a file that is missing, or under a word that could not be read: said there. */
  | { readonly state: "silent" };

/** What a reference means. */
export function resolve(
  shop: Shop,
  site: Pick<RefSite, "kind" | "name" | "takes">,
): Resolution {
  const named =
    (readInput(shop.graph, "name", site.name) as
      readonly string[] | undefined) ?? []; // only setTables sets such keys
  const kindOf = (ref: string): string => ref.slice(0, ref.indexOf(" "));
  const taken = named.filter((ref) =>
    site.kind === undefined
      ? (site.takes as readonly string[]).includes(kindOf(ref))
      : kindOf(ref) === site.kind,
  );
  const [first, second] = taken;
  if (site.kind !== undefined && !site.takes.includes(site.kind)) {
    return first === undefined
      ? { state: "missing" }
      : { state: "wrong-kind", ref: first };
  }
  if (first !== undefined && second === undefined)
    return { state: "found", ref: first };
  if (first !== undefined) return { state: "ambiguous", refs: taken };
  if (site.takes.includes("material") && materialNamed(site.name) !== undefined)
    return { state: "shipped", ref: `material ${site.name}` };
  if (site.takes.includes("oil") && oilNamed(site.name) !== undefined)
    return { state: "shipped", ref: `oil ${site.name}` };
  const loose = readInput(shop.graph, "loose", "") as
    readonly string[] | undefined; // only setTables sets it
  const kinds = site.kind === undefined ? site.takes : [site.kind];
  if (
    loose?.includes(site.name) === true ||
    kinds.some((kind) => loose?.includes(`${kind} *`)) ||
    readInput(shop.graph, "whole", "") === false
  )
    return { state: "silent" };
  const [other] = named;
  return other === undefined || site.kind !== undefined
    ? { state: "missing" }
    : { state: "wrong-kind", ref: other };
}

/** The full reference that a site means, where it means one entry. */
export function refOf(
  shop: Shop,
  site: Pick<RefSite, "kind" | "name" | "takes"> | undefined,
): string | undefined {
  if (site === undefined) return undefined;
  const found = resolve(shop, site);
  return found.state === "found" || found.state === "shipped"
    ? found.ref
    : undefined;
}
