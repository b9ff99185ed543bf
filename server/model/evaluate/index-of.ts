// Who refers to whom: the fits of a journal or a bore, the line that cuts a bore, the press of a bush. Each index is worked out once for
// the job, and only an opening line or a line's list of bores changes it.
import { allOf } from "../entry.ts";
import { groupedBy } from "../groups.ts";
import { kindOf, nameOf } from "../reference.ts";
import {
  entryOf,
  headOf,
  query,
  queryOfShop,
  refOf,
  refsOfKind,
  type Shop,
} from "../shop.ts";
import type { EntryKind } from "../../../grammar/vocabulary.ts";

/** What the opening line of an entry names, resolved: for a fit its journal and its bore. */
export const namedIn = query<readonly (string | undefined)[]>(
  "named",
  (shop, ref) => {
    const kind = kindOf(ref);
    return headOf(shop, ref).map((written, index) => {
      return refOf(shop, {
        // without its kind it is written after a blank alone
        kind: written.startsWith(" ") ? undefined : kindOf(written),
        name: nameOf(written),
        takes: TAKES[kind]?.[index] ?? [],
      });
    });
  },
);

const TAKES: Readonly<Record<string, readonly (readonly EntryKind[])[]>> = {
  journal: [["part"]],
  hole: [["part"]],
  bush: [["hole"]],
  bore: [["bush", "part"]],
  press: [["bush"], ["hole"]],
  fit: [["journal"], ["bore"]],
};

/** The entries of a kind by what they name at that place of their opening line. */
function indexBy(
  kind: EntryKind,
  place: number,
): (shop: Shop, ref: string) => readonly string[] {
  const index = queryOfShop<Readonly<Record<string, readonly string[]>>>(
    `index-${kind}-${String(place)}`,
    (shop) =>
      Object.fromEntries(
        groupedBy(refsOfKind(shop, kind), (ref) => namedIn(shop, ref)[place]),
      ),
  );
  return query<readonly string[]>(
    `of-${kind}-${String(place)}`,
    (shop, ref) => index(shop)[ref] ?? [],
  );
}

export const fitsOfJournal = indexBy("fit", 0);
export const fitsOfBore = indexBy("fit", 1);
export const pressesOfBush = indexBy("press", 0);
export const boresOfHost = indexBy("bore", 0);
export const bushesOfHole = indexBy("bush", 0);

/** The bores of a line, in the order of cutting. */
export const boresOfLine = query<readonly string[]>(
  "bores-of-line",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return [];
    return allOf(entry, "LineBoreFact").flatMap(
      (fact) => refOf(shop, fact.value?.bore) ?? [],
    );
  },
);

/** The bores of a line that are its own to cut: one that two lines name is the first's. */
export function ownBores(shop: Shop, line: string): readonly string[] {
  return [...new Set(boresOfLine(shop, line))].filter(
    (bore) => lineOfBore(shop, bore) === line,
  );
}

const lineByBore = queryOfShop<Readonly<Record<string, string>>>(
  "line-by-bore",
  (shop) =>
    Object.fromEntries(
      // of several the first counts, which is set last
      refsOfKind(shop, "line")
        .toReversed()
        .flatMap((line) =>
          boresOfLine(shop, line).map((bore) => [bore, line] as const),
        ),
    ),
);

/** The line that cuts a bore; the first where several name it. */
export const lineOfBore = query<string | undefined>(
  "line-of-bore",
  (shop, ref) => lineByBore(shop)[ref],
);
