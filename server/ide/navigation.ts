// Where a name is defined, where it is used, and what else on the page means the same. It looks names up and never searches text.
import type { FileEntries } from "../model/file-entries.ts";
import type { OpenFile } from "../model/project.ts";
import { refOf, resolve, type Shop } from "../model/shop.ts";
import {
  headsOf,
  localsOf,
  mentionsOf,
  namedAt,
  type Local,
  type Named,
} from "./navigation-index.ts";
import { nameOf } from "../model/reference.ts";
import {
  rangeIn,
  rangeOfEntry,
  type Location,
  type Position,
  type Range,
  type Spot,
} from "./position.ts";

export interface Definition extends Location {
  /** The whole entry; the same as `range` for what is no entry. */
  readonly whole: Range;
  /** What was pointed at. */
  readonly origin: Range;
}

export interface Highlight {
  readonly range: Range;
  /** `write` where it is named for the first time: its own opening line. */
  readonly kind: "read" | "write";
}

/** Where what stands at a position is defined; several where a step is in the route and in the job, or a name stands twice. */
export function definitionAt(
  open: OpenFile,
  position: Position,
): readonly Definition[] {
  const named = namedAt(open, position);
  if (named === undefined) return [];
  const origin =
    named.as === "reference"
      ? rangeIn(open.file, named.spot.index, named.site.span)
      : nameRangeOf(open, named);
  if (named.as === "file") {
    const start = { line: 0, character: 0 };
    const range = { start, end: start };
    return [{ path: named.path, range, whole: range, origin }];
  }
  if (named.as === "local") {
    const { spot, local } = named;
    const first = localsOf(spot.entry).find((each) => isSame(each, local));
    if (first === undefined) return [];
    const range = rangeIn(open.file, spot.index, first.span);
    return [{ path: open.path, range, whole: range, origin }];
  }
  return refsMeant(open.shop, named).flatMap((ref) =>
    headsIn(open.shop, ref).map(({ file, index, range }) => ({
      path: file.path,
      range,
      whole: rangeOfEntry(file, index),
      origin,
    })),
  );
}

/**
 * Every place that means what stands at a position, in the files of the shop and, where `others` are given, in those of other jobs that
 * use the file it is defined in.
 */
export function referencesAt(
  open: OpenFile,
  position: Position,
  options: {
    readonly declaration: boolean;
    readonly others?: readonly OpenFile[];
  },
): readonly Location[] {
  const named = namedAt(open, position);
  if (named === undefined || named.as === "file") return [];
  if (named.as === "local")
    return localRanges(open, named.spot, named.local).map((range) => ({
      path: open.path,
      range,
    }));
  const ref = refMeant(open.shop, named);
  if (ref === undefined) return [];
  const found = shopsThatShare(open, ref, options.others ?? []).flatMap(
    (shop) => usesIn(shop, ref),
  );
  const heads = options.declaration
    ? headsIn(open.shop, ref).map(({ file, range }) => ({
        path: file.path,
        range,
      }))
    : [];
  return once([...heads, ...found]);
}

/** What else in this file means what stands at a position. */
export function highlightsAt(
  open: OpenFile,
  position: Position,
): readonly Highlight[] {
  const named = namedAt(open, position);
  if (named === undefined || named.as === "file") return [];
  if (named.as === "local")
    return localRanges(open, named.spot, named.local).map((range) => ({
      range,
      kind: "read",
    }));
  const ref = refMeant(open.shop, named);
  if (ref === undefined) return [];
  const { file, shop } = open;
  const heads = headsOf(file, ref).map((index): Highlight => ({
    range: nameRange(file, index),
    kind: "write",
  }));
  const uses = usesInFile(shop, file, ref).map(({ range }): Highlight => ({
    range,
    kind: "read",
  }));
  return [...heads, ...uses];
}

/** A file that a record uses, to be opened from where it is named. */
export interface FileLink {
  readonly range: Range;
  readonly path: string;
}

export function linksIn({ file, uses }: OpenFile): readonly FileLink[] {
  return uses.flatMap(({ entry, span, path, state }) =>
    path === undefined || state !== "there"
      ? []
      : [{ range: rangeIn(file, entry, span), path }],
  );
}

/** The one reference that a name means; undefined where it means none or several. */
export function refMeant(shop: Shop, named: Named): string | undefined {
  if (named.as === "entry") return named.spot.entry.ref;
  return named.as === "reference" ? refOf(shop, named.site) : undefined;
}

function refsMeant(shop: Shop, named: Named): readonly string[] {
  if (named.as !== "reference") {
    const ref = refMeant(shop, named);
    return ref === undefined ? [] : [ref];
  }
  const found = resolve(shop, named.site);
  switch (found.state) {
    case "found":
    case "wrong-kind":
      return [found.ref];
    case "ambiguous":
      return found.refs;
    default:
      return [];
  }
}

/** Where the name itself stands, without the kind before it. */
export function nameRangeOf(open: OpenFile, named: Named): Range {
  const { spot } = named;
  switch (named.as) {
    case "entry":
      return rangeIn(open.file, spot.index, spot.entry.nameSpan);
    case "reference":
      return rangeIn(open.file, spot.index, named.site.nameSpan);
    case "local":
      return rangeIn(open.file, spot.index, named.local.span);
    case "file":
      return rangeIn(open.file, spot.index, named.span);
  }
}

/** The shop itself, and the shops of other files that hold the same entry from the same file. */
export function shopsThatShare(
  { shop }: OpenFile,
  ref: string,
  others: readonly OpenFile[],
): readonly Shop[] {
  const homes = new Set(headsIn(shop, ref).map(({ file }) => file.path));
  return [
    shop,
    ...others
      .map((other) => other.shop)
      .filter(
        (other) =>
          other !== shop &&
          headsIn(other, ref).some(({ file }) => homes.has(file.path)),
      ),
  ];
}

interface Head {
  readonly file: FileEntries;
  readonly index: number;
  readonly range: Range;
}

/** Where the files of a shop open an entry. */
export function headsIn(shop: Shop, ref: string): readonly Head[] {
  return shop.files.flatMap((file) =>
    headsOf(file, ref).map((index) => ({
      file,
      index,
      range: nameRange(file, index),
    })),
  );
}

function nameRange(file: FileEntries, index: number): Range {
  const entry = file.entries[index];
  const none = { line: 0, start: 0, end: 0 };
  return rangeIn(file, index, entry?.nameSpan ?? none);
}

function usesIn(shop: Shop, ref: string): readonly Location[] {
  return shop.files.flatMap((file) => usesInFile(shop, file, ref));
}

function usesInFile(
  shop: Shop,
  file: FileEntries,
  ref: string,
): readonly Location[] {
  return mentionsOf(file, nameOf(ref)).flatMap(({ index, site }) =>
    refOf(shop, site) === ref
      ? [{ path: file.path, range: rangeIn(file, index, site.nameSpan) }]
      : [],
  );
}

function localRanges(
  { file }: OpenFile,
  { entry, index }: Spot,
  local: Local,
): readonly Range[] {
  return localsOf(entry)
    .filter((each) => isSame(each, local))
    .map(({ span }) => rangeIn(file, index, span));
}

function isSame(a: Local, b: Local): boolean {
  return a.type === b.type && a.name === b.name;
}

/** Each location once, in the order found. */
function once(locations: readonly Location[]): readonly Location[] {
  const seen = new Set<string>();
  return locations.filter(({ path, range }) => {
    const key = `${path} ${String(range.start.line)} ${String(range.start.character)}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
