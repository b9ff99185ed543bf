// The entries of one job and the files it uses, by name, as inputs of its graph. Queries read them here, so that each knows what it
// depends on. Where an entry lies in its file is not an input: moving an entry changes no result. What sets them is shop-files.ts's.
import type { EntryKind } from "../../grammar/vocabulary.ts";
import { material as materialNamed } from "../core/materials/material.ts";
import { oil as oilNamed } from "../core/materials/oils.ts";
import type { Entry } from "./entry.ts";
import {
  createGraph,
  inputsBelow,
  readInput,
  readQuery,
  type Graph,
} from "./graph.ts";
import type { FileEntries } from "./file-entries.ts";
import { kindOf, nameOf } from "./reference.ts";
import type { FactRule, RefSite } from "./values.ts";

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

/** Whether the entry of this number in a file, the job's own where none is given, is the one that its name means: the first of a name counts. */
export function isFirstOfName(
  { places }: Shop,
  ref: string,
  index: number,
  file = 0,
): boolean {
  const place = places.get(ref);
  return place?.file === file && place.index === index;
}

/** A value that is worked out from the shop for one reference, and remembered. */
export function query<T>(
  name: string,
  compute: (shop: Shop, of: string) => T,
): (shop: Shop, of: string) => T {
  // the value of a key is always what this query's own compute gave
  return (shop, of) => readQuery(shop.graph, name, of, shop, compute) as T;
}

/**
 * The same of what facts of these rules say, of which most entries have none: of those nothing is remembered.
 * @param none what it is there
 */
export function queryOfFacts<T>(
  name: string,
  rules: readonly FactRule[],
  none: T,
  compute: (shop: Shop, of: string) => T,
): (shop: Shop, of: string) => T {
  const found = query(name, compute);
  return (shop, of) =>
    entryOf(shop, of)?.facts.some(({ rule }) => rules.includes(rule)) === true
      ? found(shop, of)
      : none;
}

/** The same of the shop as a whole. */
export function queryOfShop<T>(
  name: string,
  compute: (shop: Shop) => T,
): (shop: Shop) => T {
  const found = query(name, compute);
  return (shop) => found(shop, "");
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
  return readInput(shop.graph, "opening", "") as Entry | undefined; // only shop-files.ts sets it
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
  const [kind, name] = [kindOf(ref), nameOf(ref)];
  return looseIn(shop).some((each) => each === name || each === `${kind} *`);
}

/** The words of opening lines that can't be read, and "journal *" for one that may be any journal. */
function looseIn(shop: Shop): readonly string[] {
  return (
    (readInput(shop.graph, "loose", "") as readonly string[] | undefined) ?? []
  ); // only setTables sets it
}

/** Every file is there and every opening line is known: only then may it be said that something is nowhere. */
export function isWhole(shop: Shop): boolean {
  const loose = looseIn(shop);
  return hasEveryFile(shop) && loose.length === 0;
}

/** Not so while a file is missing, or, as only setFiles says, while the `use` of an entry can't be read. */
function hasEveryFile(shop: Shop): boolean {
  return isThere(readInput(shop.graph, "whole", ""));
}

function isThere(whole: unknown): boolean {
  return whole === undefined || whole === true;
}

/** Why something can't be said that no fact would settle. */
export interface Waits {
  /** A name may be in a file that is missing. */
  readonly file: boolean;
  /** The entries that have a line that can't be read: "reamer r-1". */
  readonly damaged: readonly string[];
  /** What is named and may stand under an opening line that can't be read: "gauge mic-1". */
  readonly loose: readonly string[];
  /** What is named and is nowhere: "material bronze-932". */
  readonly names: readonly string[];
}

/** What the query being worked out waits for, as far as it has asked. */
export function waitsFor(shop: Shop): Waits {
  let file = false;
  let isElsewhere = false;
  const [damaged, loose, names] = [
    new Set<string>(),
    new Set<string>(),
    new Set<string>(),
  ];
  for (const { name, value } of inputsBelow(shop.graph)) {
    if (name === "whole") {
      file ||= value === false;
      isElsewhere ||= !isThere(value);
      if (typeof value === "string") damaged.add(value);
    } else if (name === "entry") {
      const entry = value as Entry | undefined; // only setEntry sets such keys
      if (entry === undefined) continue;
      if (entry.damaged || entry.facts.some((fact) => fact.value === undefined))
        damaged.add(entry.ref);
      for (const site of entry.refs) {
        const { state } = resolve(shop, site);
        const named = `${site.kind ?? site.takes.join(" or ")} ${site.name}`;
        if (state === "missing") names.add(named);
        else if (state === "silent") loose.add(named);
      }
    }
  }
  return {
    file,
    // in one order, whatever was asked first
    damaged: [...damaged].sort(),
    loose: isElsewhere ? [] : [...loose].sort(), // it may be in the file
    names: [...names].sort(),
  };
}

export type Resolution =
  | { readonly state: "found"; readonly ref: string }
  /** Shipped with the tool: a material or an oil that no file has. */
  | { readonly state: "shipped"; readonly ref: string }
  | { readonly state: "missing" }
  | { readonly state: "wrong-kind"; readonly ref: string }
  | { readonly state: "ambiguous"; readonly refs: readonly string[] }
  /** It may be in a file that is missing or whose `use` can't be read, or under a word that could not be read: said there. */
  | { readonly state: "silent" };

/** What a reference means. */
export function resolve(
  shop: Shop,
  site: Pick<RefSite, "kind" | "name" | "takes">,
): Resolution {
  const named =
    (readInput(shop.graph, "name", site.name) as
      readonly string[] | undefined) ?? []; // only setTables sets such keys
  const taken = ofTheKind(named, site);
  // by number: taking a list apart makes an iterator, and this is asked for each name of each entry
  const first = taken[0];
  const second = taken[1];
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
  const loose = looseIn(shop);
  const kinds = site.kind === undefined ? site.takes : [site.kind];
  if (
    loose.includes(site.name) ||
    kinds.some((kind) => loose.includes(`${kind} *`)) ||
    !hasEveryFile(shop)
  )
    return { state: "silent" };
  const [other] = named;
  return other === undefined || site.kind !== undefined
    ? { state: "missing" }
    : { state: "wrong-kind", ref: other };
}

/** Those of these references to one name that a site can mean by their kind. */
function ofTheKind(
  named: readonly string[],
  { kind, name, takes }: Pick<RefSite, "kind" | "name" | "takes">,
): readonly string[] {
  if (kind === undefined)
    return named.filter((ref) =>
      (takes as readonly string[]).includes(kindOf(ref)),
    );
  // none stands twice
  const meant = `${kind} ${name}`;
  return named.includes(meant) ? [meant] : [];
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
