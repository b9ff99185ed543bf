// Runs the rules over the entries of a file. Findings of an entry are remembered as results are: only what depends on an edit is looked at
// again. Their places are check.ts's.
import { ENTRY_KINDS } from "../../grammar/vocabulary.ts";
import type { Entry } from "../model/entry.ts";
import { watch } from "../model/graph.ts";
import type { OpenFile } from "../model/project.ts";
import { entryOf, isFirstOfName, query, type Shop } from "../model/shop.ts";
import { canBeAccepted, withConcessions } from "./concessions.ts";
import { RULES } from "./index.ts";
import { standsAbout, type Stands } from "./order/stands.ts";
import type { EntryFinding } from "./rule.ts";
import { findingsOfText } from "./text-findings.ts";

/** The rules about each kind of entry, in their order: an entry is looked at with every keystroke that reaches it. */
const BY_KIND = new Map(
  ENTRY_KINDS.map((kind) => [
    kind,
    RULES.filter((rule) => rule.about.includes(kind)),
  ]),
);

const BY_RULES = "findings";

/** What the rules say of an entry by its name, before any concession. */
const findingsOfRules: (shop: Shop, ref: string) => readonly EntryFinding[] =
  query(BY_RULES, (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry?.kind === undefined || entry.damaged) return [];
    const found: EntryFinding[] = [];
    for (const { code, level, check } of BY_KIND.get(entry.kind) ?? [])
      for (const draft of check(shop, ref, entry, findingsOfRules))
        found.push({ code, level, ...draft });
    return found;
  });

const ACCEPTED = "findings-after-concessions";

const findingsAccepted = query<readonly EntryFinding[]>(ACCEPTED, (shop, ref) =>
  withConcessions(shop, ref, findingsOfRules(shop, ref)),
);

/** The same with those that a concession accepts as information. */
function findingsOfMeaning(shop: Shop, ref: string): readonly EntryFinding[] {
  const found = findingsOfRules(shop, ref);
  return canBeAccepted(found) ? findingsAccepted(shop, ref) : found;
}

/** What stands against a step that waits for nothing. */
export const standsAgainst = query<readonly Stands[]>("stands", (shop, ref) =>
  standsAbout(shop, ref, findingsOfRules),
);

/** What is found of one entry: by its text alone, and by what it means beside the others. Each list stays the same object while it is so. */
export interface FoundOfEntry {
  readonly text: readonly EntryFinding[];
  /** Nothing for an entry that another of its name goes before. */
  readonly meaning: readonly EntryFinding[];
}

/** The entries of which something else may be found, by what they mean, than when they were last taken out of this list. */
export function doubtedIn({ graph }: Shop): Set<string> {
  return watch(graph, BY_RULES, ACCEPTED);
}

const NONE: readonly EntryFinding[] = [];

/** What is found of an entry of the file; worked out if need be. */
export function foundOfEntry(
  { shop }: OpenFile,
  entry: Entry,
  index: number,
): FoundOfEntry {
  const text = findingsOfText(entry);
  const meaning = isFirstOfName(shop, entry.ref, index)
    ? findingsOfMeaning(shop, entry.ref)
    : NONE;
  return { text, meaning };
}

/** All findings of an entry of the file, those of its text first. */
export function findingsOfEntry(
  open: OpenFile,
  index: number,
): readonly EntryFinding[] {
  const entry = open.file.entries[index];
  if (entry === undefined) return NONE;
  const { text, meaning } = foundOfEntry(open, entry, index);
  return meaning.length === 0 ? text : [...text, ...meaning];
}
