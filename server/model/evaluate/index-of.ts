// Who refers to whom: the fits of a journal or a bore, the line that cuts a bore, the press of a bush. Each index is worked out once for
// the job, and only an opening line or a line's list of bores changes it.
import { allOf } from "../entry.ts";
import { groupedBy } from "../groups.ts";
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
    const kind = ref.slice(0, ref.indexOf(" "));
    return headOf(shop, ref).map((written, index) => {
      const space = written.indexOf(" ");
      const of = written.slice(0, space);
      return refOf(shop, {
        kind: of === "" ? undefined : (of as EntryKind),
        name: written.slice(space + 1),
        takes: TAKES[kind]?.[index] ?? [],
      }); // headOf writes only kinds
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

function indexBy(
  kind: EntryKind,
  place: number,
): (shop: Shop) => Readonly<Record<string, readonly string[]>> {
  return queryOfShop<Readonly<Record<string, readonly string[]>>>(
    `index-${kind}-${String(place)}`,
    (shop) => {
      return Object.fromEntries(
        groupedBy(refsOfKind(shop, kind), (ref) => namedIn(shop, ref)[place]),
      );
    },
  );
}

const fitsByJournal = indexBy("fit", 0);
const fitsByBore = indexBy("fit", 1);
const pressesByBush = indexBy("press", 0);
const boresByHost = indexBy("bore", 0);
const bushesByHole = indexBy("bush", 0);

export const fitsOfJournal = query<readonly string[]>(
  "fits-of-journal",
  (shop, ref) => fitsByJournal(shop)[ref] ?? [],
);
export const fitsOfBore = query<readonly string[]>(
  "fits-of-bore",
  (shop, ref) => fitsByBore(shop)[ref] ?? [],
);
export const pressesOfBush = query<readonly string[]>(
  "presses-of-bush",
  (shop, ref) => pressesByBush(shop)[ref] ?? [],
);
export const boresOfHost = query<readonly string[]>(
  "bores-of-host",
  (shop, ref) => boresByHost(shop)[ref] ?? [],
);

export const bushesOfHole = query<readonly string[]>(
  "bushes-of-hole",
  (shop, ref) => bushesByHole(shop)[ref] ?? [],
);

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

const linesByBore = queryOfShop<Readonly<Record<string, readonly string[]>>>(
  "lines-by-bore",
  (shop) => {
    const found = new Map<string, string[]>();
    for (const line of refsOfKind(shop, "line")) {
      for (const bore of boresOfLine(shop, line))
        found.set(bore, [...(found.get(bore) ?? []), line]);
    }
    return Object.fromEntries(found);
  },
);

/** The line that cuts a bore; the first where several name it. */
export const lineOfBore = query<string | undefined>(
  "line-of-bore",
  (shop, ref) => linesByBore(shop)[ref]?.[0],
);
