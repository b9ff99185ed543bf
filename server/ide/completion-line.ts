// What may follow inside a line: it asks the grammar what it expects after the words before the caret, and fills each expectation with what
// the shop has.
import { expectAfter, STOP } from "../../grammar/parse.ts";
import { REFERENCE_PLACES, type EntryKind } from "../../grammar/vocabulary.ts";
import { sideOf } from "../model/ranges.ts";
import { findingsIn } from "../rules/check.ts";
import { tokenText, type Writing } from "./completion-caret.ts";
import { classOffers } from "./completion-classes.ts";
import type { Offer } from "./completion-item.ts";
import { isKind } from "./completion-names.ts";
import {
  referenceOffers,
  refsBefore,
  type Place,
} from "./completion-references.ts";
import { dimensionsOf, unitOffers } from "./completion-units.ts";
import { RANK, valueOffers, wordOffer } from "./completion-values.ts";
import { choiceMeaning, clauseMeaning } from "./hover-words.ts";

export function lineOffers(writing: Writing): readonly Offer[] {
  const { caret, rule } = writing;
  return [
    ...ofKindBefore(writing),
    ...expected(caret.head, rule).flatMap((each) => offersFor(writing, each)),
  ];
}

interface Expected {
  readonly word?: string;
  readonly described?: string;
}

/** What may stand at the end of a text; nothing where reading stops before. */
function expected(head: string, rule: string): readonly Expected[] {
  const found = expectAfter(head + STOP, rule);
  if (found.at !== head.length) return [];
  return [
    ...found.described.map((described) => ({ described })),
    ...found.words.map((word) => ({ word })),
  ];
}

/** After `journal ` where a journal may stand: the name of one. */
function ofKindBefore(writing: Writing): readonly Offer[] {
  const { caret, rule } = writing;
  const last = caret.tokens.at(-1);
  const kind = tokenText(caret, last);
  if (last === undefined || !isKind(kind)) return [];
  const takes = expected(caret.head.slice(0, last.start), rule).some(
    ({ described }) =>
      described !== undefined && kindsOf(described)?.includes(kind) === true,
  );
  return takes
    ? referenceOffers(placeOf(writing), [kind], "name", RANK.names)
    : [];
}

function placeOf({ open, caret, rule, owner }: Writing): Place {
  const words = caret.tokens
    .slice(rule.endsWith("Entry") ? 2 : 1)
    .filter((token) => token.kind === "word")
    .map((token) => tokenText(caret, token));
  return {
    shop: open.shop,
    rule,
    owner,
    before: refsBefore(open.shop, words, rule),
    slot: words.includes("in") && words[0] === "of" ? 1 : 0,
  };
}

/** The kinds that a description of thou.ohm stands for. */
function kindsOf(described: string): readonly EntryKind[] | undefined {
  if (described === "an entry" || described === "an entry, with its kind")
    return REFERENCE_PLACES.entryRef;
  if (described === "a bush or a part") return REFERENCE_PLACES.boreHost;
  const kind = /^an? ([a-z]+)$/.exec(described)?.[1] ?? "";
  return isKind(kind) ? [kind] : undefined;
}

/** Kinds that are named without saying what they are: a gauge after `with` is a gauge. */
const PLAIN = new Set<EntryKind>([
  "part",
  "gauge",
  "reamer",
  "pilot",
  "material",
  "oil",
  "route",
  "step",
]);

function offersFor(
  writing: Writing,
  { word, described }: Expected,
): readonly Offer[] {
  if (word !== undefined) return wordOffers(writing, word);
  if (described === undefined) return [];
  const { open, caret } = writing;
  const { system } = open.file.context;
  const kinds = kindsOf(described);
  if (kinds !== undefined) return entryOffers(writing, kinds);
  const dimensions = dimensionsOf(described);
  if (dimensions !== undefined)
    return unitOffers(dimensions, system, RANK.units);
  if (CHOICE.test(described))
    return described
      .split(/, | or /)
      .map((choice) => wordOffer(choice, choiceMeaning(choice)));
  if (described === "a class")
    return classOffers(
      caret,
      sideOf(writing.kind, tokenText(caret, caret.tokens[0])),
      system,
      RANK.classes,
    );
  return valueOffers(described, writing);
}

/** "solid, wrapped, porous or lined" */
const CHOICE = /^[\w-]+(?:, [\w-]+)* or [\w-]+$/;

/** What a step can check, likeliest first. */
const CHECKABLE: readonly EntryKind[] = [
  "fit",
  "press",
  "bore",
  "journal",
  "hole",
  "bush",
  "line",
  "stack",
];

function entryOffers(
  writing: Writing,
  taken: readonly EntryKind[],
): readonly Offer[] {
  const place = placeOf(writing);
  const kinds = writing.rule === "ChecksFact" ? CHECKABLE : taken;
  const full = kinds.filter((kind) => !isPlain(kind, writing.rule));
  const plain = kinds.filter((kind) => isPlain(kind, writing.rule));
  const found = findingsOn(writing);
  return [
    ...referenceOffers(place, full, "full", RANK.names),
    ...referenceOffers(place, plain, "name", RANK.names),
  ].map((offer) =>
    found.has(offer.label)
      ? { ...offer, rank: offer.rank - 1, detail: "has this finding" }
      : offer,
  );
}

/** A place that takes several kinds needs them said, and a line's own bores are named alone. */
function isPlain(kind: EntryKind, rule: string): boolean {
  if (rule === "ChecksFact" || rule === "AllowsFact" || rule === "BoreEntry")
    return false;
  return PLAIN.has(kind) || (rule === "LineBoreFact" && kind === "bore");
}

/** The entries that have the finding which a concession is to allow. */
function findingsOn({ open, caret, rule }: Writing): ReadonlySet<string> {
  if (rule !== "AllowsFact") return new Set();
  const code = caret.head.split(/\s+/u)[1];
  return new Set(
    findingsIn(open).flatMap((each) =>
      each.code === code && each.entry !== null ? [each.entry] : [],
    ),
  );
}

const CLAUSES_ONCE = /^(?:Read|Repeat|BushRead|StackRead)Fact$/;

/** Words of the grammar as they stand; marks and the letters of numbers are left out. */
function wordOffers({ caret, rule }: Writing, word: string): readonly Offer[] {
  if (!/^\p{L}{2,}$/u.test(word)) return [];
  const isGiven = caret.tokens
    .slice(1)
    .some((token) => tokenText(caret, token) === word);
  if (isGiven && CLAUSES_ONCE.test(rule)) return [];
  return [wordOffer(word, clauseMeaning(word) ?? choiceMeaning(word))];
}
