// Gives an entry, a place or a member of a stack another name, wherever it is named. What can't be renamed is refused with a sentence.
import { isName } from "../../grammar/names.ts";
import { CLAUSE_WORDS } from "../../grammar/vocabulary.ts";
import type { FileEntries } from "../model/file-entries.ts";
import type { OpenFile } from "../model/project.ts";
import { refOf, resolve, type Shop } from "../model/shop.ts";
import type { RefSite } from "../model/values.ts";
import { shippedWhat } from "./hover-crib.ts";
import {
  localsOf,
  mentionsOf,
  namedAt,
  type Local,
  type Named,
} from "./navigation-index.ts";
import {
  headsIn,
  nameRangeOf,
  refMeant,
  shopsThatShare,
} from "./navigation.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import {
  rangeIn,
  type Location,
  type Position,
  type Range,
  type Spot,
} from "./position.ts";

export interface Refusal {
  /** Why, as a sentence for a person. */
  readonly refused: string;
}

export interface RenameStart {
  readonly range: Range;
  /** The name as it is now. */
  readonly placeholder: string;
}

export interface RenameEdit extends Location {
  readonly text: string;
}

/** What would be renamed; undefined where no name stands. */
export function prepareRenameAt(
  open: OpenFile,
  position: Position,
): RenameStart | Refusal | undefined {
  const named = namedAt(open, position);
  if (named === undefined || named.as === "file") return undefined;
  if (named.as !== "local") {
    const refusal = refusalOf(open.shop, named);
    if (refusal !== undefined) return refusal;
  }
  return { range: nameRangeOf(open, named), placeholder: oldName(named) };
}

/**
 * Every edit that gives what stands at a position a new name, in the files of the shop and, where `others` are given, in those of other
 * jobs that use the file it is defined in. A short reference that would then be ambiguous gets its kind.
 */
export function renameAt(
  open: OpenFile,
  position: Position,
  newName: string,
  others: readonly OpenFile[] = [],
): { readonly edits: readonly RenameEdit[] } | Refusal | undefined {
  const named = namedAt(open, position);
  if (named === undefined || named.as === "file") return undefined;
  const wrong = faultOfName(newName);
  if (wrong !== undefined) return { refused: wrong };
  if (oldName(named) === newName) return { edits: [] };
  if (named.as === "local")
    return renameLocal(open, named.spot, named.local, newName);
  const refusal = refusalOf(open.shop, named);
  const ref = refMeant(open.shop, named);
  if (refusal !== undefined || ref === undefined) return refusal;
  const shops = shopsThatShare(open, ref, others);
  const taken = faultOfTaking(shops, ref, newName);
  if (taken !== undefined) return { refused: taken };
  const { isFirst, heads } = headsToRename(open, named, ref);
  const uses = isFirst
    ? shops.flatMap((shop) => editsIn(shop, ref, newName))
    : [];
  return {
    edits: once([
      ...heads.map((head) => ({ ...head, text: newName })),
      ...uses,
    ]),
  };
}

/**
 * The opening lines that take the new name. A step of a route and the job's part of it are one; where any other name stands twice,
 * references mean the first, so that another is renamed by itself.
 */
function headsToRename(
  open: OpenFile,
  named: Named,
  ref: string,
): { readonly isFirst: boolean; readonly heads: readonly Location[] } {
  const heads = headsIn(open.shop, ref).map(({ file, range }): Location => ({
    path: file.path,
    range,
  }));
  const own = nameRangeOf(open, named);
  const isFirst =
    named.as !== "entry" ||
    kindOf(ref) === "step" ||
    heads[0]?.path !== open.path ||
    heads[0].range.start.line === own.start.line;
  if (!isFirst) return { isFirst, heads: [{ path: open.path, range: own }] };
  return { isFirst, heads: kindOf(ref) === "step" ? heads : heads.slice(0, 1) };
}

function oldName(named: Exclude<Named, { readonly as: "file" }>): string {
  switch (named.as) {
    case "entry":
      return named.spot.entry.name ?? "";
    case "reference":
      return named.site.name;
    case "local":
      return named.local.name;
  }
}

/** Why what a reference means has no name of its own to change. */
function refusalOf(shop: Shop, named: Named): Refusal | undefined {
  if (named.as !== "reference") return undefined;
  const { site } = named;
  const found = resolve(shop, site);
  switch (found.state) {
    case "found":
      return undefined;
    case "shipped":
      return {
        refused: `${site.name} is shipped with the tool and keeps its name. To call it otherwise, write a ${kindOf(found.ref)} of your own in the crib.`,
      };
    case "ambiguous":
      return {
        refused: `${site.name} may be ${found.refs.join(" or ")}: write the kind before it first.`,
      };
    case "wrong-kind":
      return { refused: `${found.ref} can't stand here: mend that first.` };
    case "missing":
    case "silent":
      return { refused: `Nothing that can be read is called ${site.name}.` };
  }
}

function faultOfName(name: string): string | undefined {
  if (isName(name)) return undefined;
  if (CLAUSE_WORDS.includes(name))
    return `\`${name}\` opens a clause and can't be a name.`;
  return "A name is letters, digits and hyphens, and begins with a letter.";
}

/** Names are unique among the entries of a kind over a job and the files that it uses. */
function faultOfTaking(
  shops: readonly Shop[],
  ref: string,
  newName: string,
): string | undefined {
  const kind = kindOf(ref);
  const wanted = `${kind} ${newName}`;
  for (const shop of shops) {
    const file = headsIn(shop, wanted)[0]?.file ?? routeNaming(shop, wanted);
    if (file !== undefined)
      return `There is a ${wanted} already, in ${fileName(file.path)}.`;
  }
  return shippedWhat(wanted) === undefined
    ? undefined
    : `${newName} is shipped with the tool: what refers to that would come to mean this one.`;
}

/** The file whose route already has a step of that name. */
function routeNaming(shop: Shop, wanted: string): FileEntries | undefined {
  if (kindOf(wanted) !== "step") return undefined;
  return shop.files.find((file) =>
    mentionsOf(file, nameOf(wanted)).some(
      ({ index }) => file.entries[index]?.kind === "route",
    ),
  );
}

function editsIn(
  shop: Shop,
  ref: string,
  newName: string,
): readonly RenameEdit[] {
  const renamed = shop.files.flatMap((file) =>
    mentionsOf(file, nameOf(ref)).flatMap(({ index, site }) => {
      if (refOf(shop, site) !== ref) return [];
      const isShort = site.kind === undefined;
      return isShort && isTakenByOther(shop, site, ref, newName)
        ? [edit(file, index, site.span, `${kindOf(ref)} ${newName}`)]
        : [edit(file, index, site.nameSpan, newName)];
    }),
  );
  const madeFull = shop.files.flatMap((file) =>
    mentionsOf(file, newName).flatMap(({ index, site }) => {
      if (site.kind !== undefined || !takes(site, kindOf(ref))) return [];
      const other = refOf(shop, site);
      return other === undefined || kindOf(other) === kindOf(ref)
        ? []
        : [edit(file, index, site.span, other)];
    }),
  );
  return [...renamed, ...madeFull];
}

function isTakenByOther(
  shop: Shop,
  site: RefSite,
  ref: string,
  newName: string,
): boolean {
  return site.takes.some(
    (kind) => kind !== kindOf(ref) && shop.places.has(`${kind} ${newName}`),
  );
}

function takes(site: RefSite, kind: string): boolean {
  return (site.takes as readonly string[]).includes(kind);
}

function edit(
  file: FileEntries,
  index: number,
  span: RefSite["span"],
  text: string,
): RenameEdit {
  return { path: file.path, range: rangeIn(file, index, span), text };
}

function renameLocal(
  { file, path }: OpenFile,
  { entry, index }: Spot,
  local: Local,
  newName: string,
): { readonly edits: readonly RenameEdit[] } | Refusal {
  const all = localsOf(entry).filter((each) => each.type === local.type);
  if (all.some((each) => each.name === newName))
    return {
      refused: `${entry.ref} has a ${local.type} ${newName} already: the two would become one.`,
    };
  return {
    edits: all
      .filter((each) => each.name === local.name)
      .map(({ span }) => ({
        path,
        range: rangeIn(file, index, span),
        text: newName,
      })),
  };
}

function fileName(path: string): string {
  const name = path.slice(path.lastIndexOf("/") + 1);
  try {
    return path.includes("://") ? decodeURIComponent(name) : name;
  } catch {
    return name;
  }
}

function once(edits: readonly RenameEdit[]): readonly RenameEdit[] {
  const seen = new Set<string>();
  return edits.filter(({ path, range: { start } }) => {
    const key = `${path} ${String(start.line)} ${String(start.character)}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
