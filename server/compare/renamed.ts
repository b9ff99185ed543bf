// Entries that only have another name at the later time. Never a guess: nothing but the name may differ, in the entry and in all that refer
// to it, and no other entry may be its like.
import { allOf, type Entry } from "../model/entry.ts";
import { groupedBy } from "../model/groups.ts";
import type { OpenFile } from "../model/project.ts";
import { refOf, type Shop } from "../model/shop.ts";
import type { RefSite } from "../model/values.ts";

/** The full reference of an entry at the earlier time, and what it is at the later one. */
export type Renamed = ReadonlyMap<string, string>;

/** One state of a record, its own entries by their references. */
interface State {
  readonly shop: Shop;
  readonly entries: ReadonlyMap<string, Entry>;
  /** The entries that refer to one, by its reference. */
  readonly referring: ReadonlyMap<string, readonly Entry[]>;
}

export function renamedBetween(
  before: OpenFile | undefined,
  after: OpenFile | undefined,
): Renamed {
  const renamed = new Map<string, string>();
  if (before === undefined || after === undefined) return renamed;
  const [old, now] = [stateOf(before), stateOf(after)];
  const gone = without(old, now);
  const come = without(now, old);
  if (gone.length === 0 || come.length === 0) return renamed;
  // what is found tells others apart that refer to it
  while (pairUp(renamed, gone, come, old, now)) continue;
  const cameFrom = new Map([...renamed].map(([from, to]) => [to, from]));
  while (dropUnsure(renamed, cameFrom, old, now)) continue;
  return renamed;
}

function stateOf({ file, shop }: OpenFile): State {
  const entries = new Map<string, Entry>();
  for (const entry of file.entries) {
    if (entry.ref !== "" && !entries.has(entry.ref))
      entries.set(entry.ref, entry);
  }
  const pairs = [...entries.values()].flatMap((entry) =>
    [...new Set(entry.refs.map((site) => refIn(shop, site)))].map((to) => ({
      entry,
      to,
    })),
  );
  const referring = new Map(
    [...groupedBy(pairs, ({ to }) => to)].map(([to, all]) => [
      to,
      all.map(({ entry }) => entry),
    ]),
  );
  return { shop, entries, referring };
}

function without({ entries }: State, other: State): readonly Entry[] {
  return [...entries.values()].filter(
    (entry) =>
      !entry.damaged &&
      !other.entries.has(entry.ref) &&
      // else its name is what is done
      (entry.kind !== "step" || allOf(entry, "DoFact").length !== 0),
  );
}

/** Puts those together that have one like of their own; says whether there were any. */
function pairUp(
  renamed: Map<string, string>,
  gone: readonly Entry[],
  come: readonly Entry[],
  old: State,
  now: State,
): boolean {
  const taken = new Set(renamed.values());
  const isKnown = new Set(
    [...now.entries.keys()].filter(
      (ref) => old.entries.has(ref) || taken.has(ref),
    ),
  );
  const among = (state: State, names: Renamed) => (entry: Entry) => {
    const called = (ref: string): string =>
      calledIn(ref, names, isKnown, state);
    const referring = referringTo(entry.ref, state)
      .map(({ ref }) => called(ref))
      .filter((ref) => ref !== "");
    return [likeness(entry, state, called), ...referring.sort()].join("\n");
  };
  const before = groupedBy(
    gone.filter(({ ref }) => !renamed.has(ref)),
    among(old, renamed),
  );
  const after = groupedBy(
    come.filter(({ ref }) => !taken.has(ref)),
    among(now, new Map()),
  );
  let found = false;
  for (const [like, [one, ...others]] of before) {
    const [two, ...more] = after.get(like) ?? [];
    if (one === undefined || two === undefined) continue;
    if (0 < others.length + more.length) continue;
    renamed.set(one.ref, two.ref);
    found = true;
  }
  return found;
}

/** What a reference is called at the later time; nothing of one that may have another name then. */
function calledIn(
  ref: string,
  renamed: Renamed,
  isKnown: ReadonlySet<string>,
  { entries }: State,
): string {
  const called = renamed.get(ref) ?? ref;
  return isKnown.has(called) || !entries.has(ref) ? called : "";
}

/** All that an entry says but its name, each reference as it is called; its layout and its comments left out. */
function likeness(
  entry: Entry,
  { shop }: State,
  called: (ref: string) => string,
): string {
  const lines = entry.block.lines.map(({ text, indent, body }, number) => {
    const end = indent + body.length;
    const cuts = [
      ...(number === 0
        ? [{ start: entry.nameSpan.start, end: entry.nameSpan.end, says: "" }]
        : []),
      ...entry.refs
        .filter(({ span }) => span.line === number)
        .map((site) => ({
          start: site.span.start,
          end: site.span.end,
          says: called(refIn(shop, site)),
        })),
    ].sort((a, b) => a.start - b.start);
    let at = indent;
    let said = "";
    for (const cut of cuts) {
      said += `${text.slice(at, cut.start)}\u{0}${cut.says}\u{0}`;
      at = cut.end;
    }
    return `${said}${text.slice(at, end)}`.replaceAll(/\s+/gu, " ");
  });
  return [entry.kind, ...lines.filter((line) => line !== "")].join("\n");
}

/** Takes those out that something else does not follow; says whether there were any. */
function dropUnsure(
  renamed: Map<string, string>,
  cameFrom: Map<string, string>,
  old: State,
  now: State,
): boolean {
  const unsure = [...renamed].filter(
    ([from, to]) =>
      !areAlike(from, to, renamed, old, now) ||
      !isFollowed(from, to, renamed, old, now) ||
      !isFollowed(to, from, cameFrom, now, old) ||
      !isKnownAgain(from, to, renamed, old, now),
  );
  for (const [from, to] of unsure) {
    renamed.delete(from);
    cameFrom.delete(to);
  }
  return 0 < unsure.length;
}

function areAlike(
  from: string,
  to: string,
  renamed: Renamed,
  old: State,
  now: State,
): boolean {
  const [one, two] = [old.entries.get(from), now.entries.get(to)];
  return (
    one !== undefined &&
    two !== undefined &&
    likeness(one, old, (ref) => renamed.get(ref) ?? ref) ===
      likeness(two, now, (ref) => ref)
  );
}

/** Whether every entry that refers to it and is there at the other time refers to the other name then. */
function isFollowed(
  ref: string,
  other: string,
  renamed: Renamed,
  here: State,
  there: State,
): boolean {
  return referringTo(ref, here).every((entry) => {
    const twin = there.entries.get(renamed.get(entry.ref) ?? entry.ref);
    return twin === undefined || referringTo(other, there).includes(twin);
  });
}

/** Whether something is left to know it by: an entry that refers to it at both times, else, of what nothing refers to, what it says itself. */
function isKnownAgain(
  from: string,
  to: string,
  renamed: Renamed,
  old: State,
  now: State,
): boolean {
  const before = referringTo(from, old);
  const isAlone = before.length + referringTo(to, now).length === 0;
  return isAlone
    ? old.entries.get(from)?.facts.length !== 0
    : before.some(({ ref }) => now.entries.has(renamed.get(ref) ?? ref));
}

function referringTo(ref: string, { referring }: State): readonly Entry[] {
  return referring.get(ref) ?? [];
}

function refIn(shop: Shop, site: RefSite): string {
  return refOf(shop, site) ?? `? ${site.name}`;
}
