// Names that a record already holds and that may be meant again: entries for a form's capital words, names for a new entry, places,
// members, people.
import { ENTRY_KINDS, type EntryKind } from "../../grammar/vocabulary.ts";
import { allOf, type Entry } from "../model/entry.ts";
import { namedIn } from "../model/evaluate/index-of.ts";
import { routeSteps } from "../model/evaluate/order.ts";
import type { OpenFile } from "../model/project.ts";
import { entryOf, refsOfKind, type Shop } from "../model/shop.ts";
import { CODES } from "../rules/codes.ts";
import { canBeAllowed, figuresOf } from "../rules/figures.ts";
import { CAUTIONS } from "../model/cautions.ts";
import { referenceOffers } from "./completion-references.ts";
import { nameOf } from "../model/reference.ts";
import type { Filling } from "./completion-snippet.ts";

/** Capital words that stand for an entry, and how it is written there. */
const WORDS: Readonly<Record<string, readonly [EntryKind, "full" | "name"]>> = {
  PART: ["part", "name"],
  JOURNAL: ["journal", "full"],
  HOLE: ["hole", "full"],
  BUSH: ["bush", "full"],
  BORE: ["bore", "full"],
  LINE: ["line", "full"],
  PRESS: ["press", "full"],
  STEP: ["step", "name"],
  ROUTE: ["route", "name"],
  REAMER: ["reamer", "name"],
  MATERIAL: ["material", "name"],
  GAUGE: ["gauge", "name"],
  ENTRY: ["fit", "full"],
};

/** What NAME stands for in these rules. */
const NAME_IN: Readonly<Record<string, EntryKind>> = {
  MaterialFact: "material",
  OilFact: "oil",
  LineBoreFact: "bore",
  LinePilotFact: "pilot",
  RouteStepFact: "step",
};

const MOST_CHOICES = 40;

export function fillingOf(
  open: OpenFile,
  owner: string,
  today: string | undefined,
): Filling {
  const { shop } = open;
  return {
    system: open.file.context.system,
    today,
    namesFor(word, rule) {
      const offered = (
        kinds: readonly EntryKind[],
        written: "full" | "name",
      ): readonly string[] =>
        [
          ...referenceOffers(
            {
              shop,
              rule,
              owner,
              before: [],
              slot: SLOTS[`${rule} ${word}`] ?? 0,
            },
            kinds,
            written,
            0,
            false,
          ),
        ]
          .sort((a, b) => a.rank - b.rank)
          .slice(0, MOST_CHOICES)
          .map((offer) => offer.label);
      if (word === "bush|part NAME") return offered(["bush", "part"], "full");
      if (word === "CODE")
        return rule === "AllowsFact" ? codesToAllow() : codesToWarn();
      if (word === "WHO") return peopleIn(open);
      if (word === "NAME" && rule === "CautionFact")
        return CAUTIONS.map((each) => each.name);
      const kind = word === "NAME" ? NAME_IN[rule] : undefined;
      if (kind !== undefined) return offered([kind], "name");
      const [named, written] = WORDS[word] ?? [];
      return named === undefined || written === undefined
        ? []
        : offered([named], written);
    },
  };
}

const SLOTS: Readonly<Record<string, number>> = {
  "PressEntry HOLE": 1,
  "FitEntry BORE": 1,
};

/** The codes of findings that a threshold can be set for. */
export function codesToWarn(): readonly string[] {
  return CODES.filter((code) => 0 < figuresOf(code).warn.length);
}

/** The codes of findings that a concession can accept. */
export function codesToAllow(): readonly string[] {
  return CODES.filter(canBeAllowed);
}

/** Who has signed in this file, in the order of signing; names that need quotes keep them. */
export function peopleIn({ file }: OpenFile): readonly string[] {
  const found = new Set<string>();
  for (const entry of file.entries)
    for (const { value } of entry.facts) {
      const who = whoOf(value);
      if (who !== undefined)
        found.add(/^\p{L}[\p{L}\d-]*$/u.test(who) ? who : `"${who}"`);
    }
  return [...found]
    .filter((who) => !who.slice(1, -1).includes('"'))
    .slice(0, MOST_CHOICES);
}

function whoOf(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const signed = "signature" in value ? value.signature : value;
  if (typeof signed !== "object" || signed === null || !("who" in signed))
    return undefined;
  return typeof signed.who === "string" ? signed.who : undefined;
}

const HAVE_PLACES = [
  "ReadFact",
  "RepeatFact",
  "BushReadFact",
  "SwingFact",
  "BoreSwingFact",
] as const;

/** Places along the length: those of the entry itself first, then those used in the rest of the file. */
export function placesIn({ file }: OpenFile, own: Entry): readonly string[] {
  const found = new Set<string>();
  for (const entry of [own, ...file.entries])
    for (const rule of HAVE_PLACES)
      for (const { value } of allOf(entry, rule))
        if (value?.place !== undefined) found.add(value.place);
  return [...found].slice(0, MOST_CHOICES);
}

/** The members of a stack, those that are not read yet first. */
export function membersOf(entry: Entry): readonly string[] {
  const read = new Set(
    allOf(entry, "StackReadFact").flatMap(({ value }) => value?.member ?? []),
  );
  const members = [
    ...allOf(entry, "PlusFact"),
    ...allOf(entry, "MinusFact"),
  ].flatMap(({ value }) => value?.name ?? []);
  return [
    ...members.filter((name) => !read.has(name)),
    ...members.filter((name) => read.has(name)),
  ];
}

/** Entries of one kind that none of another kind names yet in its opening line. */
export function unmated(
  shop: Shop,
  of: EntryKind,
  by: EntryKind,
  slot: number,
): readonly string[] {
  const mated = new Set(
    refsOfKind(shop, by).flatMap((ref) => namedIn(shop, ref)[slot] ?? []),
  );
  return refsOfKind(shop, of).filter((ref) => !mated.has(ref));
}

/** What a new entry of a kind is likely to be called: as what it belongs to, or as the route's next step. */
export function newNames(shop: Shop, kind: EntryKind): readonly string[] {
  const isFree = (name: string): boolean =>
    entryOf(shop, `${kind} ${name}`) === undefined;
  if (kind === "step")
    return routeSteps(shop)
      .filter((ref) => shop.places.get(ref)?.file !== 0)
      .map(nameOf);
  const [of, slot] = MATES[kind] ?? [];
  return of === undefined || slot === undefined
    ? []
    : unmated(shop, of, kind, slot).map(nameOf).filter(isFree);
}

/** What an entry of a kind is made for, and where its opening line names that. */
export const MATES: Readonly<
  Partial<Record<EntryKind, readonly [EntryKind, number]>>
> = {
  bush: ["hole", 0],
  bore: ["bush", 0],
  press: ["bush", 0],
  fit: ["journal", 0],
};

export function isKind(word: string): word is EntryKind {
  return (ENTRY_KINDS as readonly string[]).includes(word);
}
