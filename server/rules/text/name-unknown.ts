// A name that no entry has, or an entry of a kind that the place does not take: also a finding's code and a caution that do not exist, and
// a member that a stack has not. What may be in a missing file, or under a word that could not be read, is said there and not here.
import { ENTRY_KINDS, type EntryKind } from "../../../grammar/vocabulary.ts";
import { materials } from "../../core/materials/material.ts";
import { oils } from "../../core/materials/oils.ts";
import { CAUTIONS } from "../../model/cautions.ts";
import { allOf as allFacts, type Entry } from "../../model/entry.ts";
import { kindOf, nameOf } from "../../model/reference.ts";
import { refsOfKind, resolve, type Shop } from "../../model/shop.ts";
import type { RefSite, Span } from "../../model/values.ts";
import { CODES } from "../codes.ts";
import type { Draft, Rule } from "../rule.ts";
import { howToWrite, isMultigrade, shippedAs } from "./designation.ts";
import { isOpenPlace } from "./open-place.ts";
import { firstFound, namesInCommon, nearest } from "./near.ts";
import { eitherOf, oneOf, withArticle, writeInstead } from "./wording.ts";

export const nameUnknown: Rule = {
  code: "name-unknown",
  level: "error",
  about: ENTRY_KINDS,
  check(shop, _, entry) {
    return [
      ...entry.refs.flatMap((site) => unknownName(shop, site, entry) ?? []),
      ...unknownCodes(entry),
      ...unknownCautions(entry),
      ...unknownMembers(entry),
    ];
  },
};

function unknownName(
  shop: Shop,
  site: RefSite,
  entry: Entry,
): Draft | undefined {
  const found = resolve(shop, site);
  if (found.state === "missing")
    return isOpenPlace(entry, site.nameSpan, site.name)
      ? leftOpen(shop, site, entry)
      : missing(shop, site, entry);
  if (found.state !== "wrong-kind") return undefined;
  const kind = kindOf(found.ref);
  const near = nearOfTaken(shop, site);
  const others = writtenOf(shop, site.takes, entry);
  return {
    span: site.span,
    message: `\`${site.name}\` is ${withArticle(kind)}, and here stands ${anyOf(site.takes)}${ask(near) ?? choiceOf(others, site.takes)}`,
    related: [{ ref: found.ref, message: `${found.ref} is here.` }],
    fixes: writeInstead(site.span, 0 < near.length ? near : others),
  };
}

function missing(shop: Shop, site: RefSite, entry: Entry): Draft {
  const { kind, name, takes, span, nameSpan } = site;
  if (kind !== undefined && !takes.includes(kind)) {
    const near = nearOfTaken(shop, site);
    const others = writtenOf(shop, takes, entry);
    return {
      span,
      message: `Here stands ${anyOf(takes)}, and \`${kind} ${name}\` is none${ask(near) ?? choiceOf(others, takes)}`,
      fixes: writeInstead(span, 0 < near.length ? near : others),
    };
  }
  const kinds = kind === undefined ? takes : [kind];
  const names = namesOf(shop, kinds);
  // of an oil of two grades every shipped one is the wrong one
  const near =
    kinds.includes("oil") && isMultigrade(name)
      ? nearest(name, refsOfKind(shop, "oil").map(nameOf))
      : namesNear(name, kinds, names);
  const what = kinds.length === 1 ? kinds.join("") : "entry";
  return {
    span: nameSpan,
    message: `There is no ${what} \`${name}\` here or in the files that are used${ask(near) ?? choice(name, kinds, names)}`,
    fixes: writeInstead(nameSpan, near),
  };
}

/** `journal a on PART`, as a form was offered. */
function leftOpen(
  shop: Shop,
  { takes, kind, nameSpan, name }: RefSite,
  entry: Entry,
): Draft {
  const kinds = kind === undefined ? takes : [kind];
  const others = writtenOf(shop, kinds, entry);
  return {
    span: nameSpan,
    message: `\`${name}\` is only a place to fill in${choiceOf(others, kinds)}`,
    fixes: writeInstead(nameSpan, others),
  };
}

/** Other entries of these kinds, as they are written where any of the kinds may stand; none where they are too many to choose from. */
function writtenOf(
  shop: Shop,
  kinds: readonly EntryKind[],
  entry: Entry,
): readonly string[] {
  const refs = kinds
    .flatMap((kind) => refsOfKind(shop, kind))
    .filter((ref) => ref !== entry.ref);
  if (MOST_SHOWN < refs.length) return [];
  return kinds.length === 1 ? refs.map(nameOf) : refs;
}

function choiceOf(
  names: readonly string[],
  kinds: readonly EntryKind[],
): string {
  const [kind] = kinds;
  if (kinds.length === 1 && (kind === "material" || kind === "oil"))
    return `: name one, such as those that "thou explain ${kind}" lists.`;
  return names.length === 0
    ? ": name one, or write it."
    : `: write ${oneOf(names)}, or another ${kinds.length === ENTRY_KINDS.length ? "entry" : eitherOf(kinds)}.`;
}

/** The names of the kinds that a place takes that are near; one that is the very name that stands there needs its kind to be another. */
function nearOfTaken(shop: Shop, { name, takes }: RefSite): readonly string[] {
  return nearest(name, namesOf(shop, takes)).flatMap((near) =>
    near === name
      ? takes
          .filter((kind) => namesOf(shop, [kind]).includes(near))
          .map((kind) => `${kind} ${near}`)
      : [near],
  );
}

/** Names nearest by their letters, else what is shipped under that designation, else names that have a part in common. */
function namesNear(
  name: string,
  kinds: readonly EntryKind[],
  names: readonly string[],
): readonly string[] {
  return firstFound(
    () => nearest(name, names),
    () => shippedAs(name, kinds),
    () => namesInCommon(name, names),
  );
}

function ask(near: readonly string[]): string | undefined {
  return near.length === 0 ? undefined : `: did you mean ${oneOf(near)}?`;
}

const MOST_SHOWN = 5;

/** The way out where no name is near: those that there are, or the entry to write. */
function choice(
  name: string,
  kinds: readonly EntryKind[],
  names: readonly string[],
): string {
  const [kind] = kinds;
  if (kinds.length !== 1 || kind === undefined) return ": write its entry.";
  if (kind === "material" || kind === "oil")
    return `: ${howToWrite(kind, name)}, or name one that is shipped, as "thou explain ${kind}" lists them.`;
  return names.length === 0 || MOST_SHOWN < names.length
    ? `: write its entry, \`${kind} NAME\`, or name another.`
    : `: write ${oneOf(names)}, or an entry of that name.`;
}

/** Names of entries of these kinds, shipped ones among them. */
function namesOf(shop: Shop, kinds: readonly EntryKind[]): readonly string[] {
  return kinds.flatMap((kind) => [
    ...refsOfKind(shop, kind).map(nameOf),
    ...(kind === "material" ? materials.map((each) => each.name) : []),
    ...(kind === "oil" ? oils.map((each) => each.name) : []),
  ]);
}

function anyOf(kinds: readonly EntryKind[]): string {
  return kinds.length === ENTRY_KINDS.length
    ? "an entry"
    : kinds.map(withArticle).join(" or ");
}

function unknownCodes(entry: Entry): readonly Draft[] {
  return [
    ...allFacts(entry, "WarnFact"),
    ...allFacts(entry, "AllowsFact"),
  ].flatMap(({ value }) =>
    value === undefined || CODES.includes(value.code)
      ? []
      : [listed(value.code, value.codeSpan, "finding", CODES, entry)],
  );
}

const CAUTION_NAMES = CAUTIONS.map((each) => each.name);

function unknownCautions(entry: Entry): readonly Draft[] {
  return allFacts(entry, "CautionFact").flatMap(({ value }) =>
    (value ?? []).flatMap(({ name, span }) =>
      CAUTION_NAMES.includes(name)
        ? []
        : [listed(name, span, "caution", CAUTION_NAMES, entry)],
    ),
  );
}

/** A name of a closed list. */
function listed(
  name: string,
  span: Span,
  what: string,
  names: readonly string[],
  entry: Entry,
): Draft {
  if (isOpenPlace(entry, span, name))
    return {
      span,
      message: `\`${name}\` is only a place to fill in: write there the ${what} that is meant.`,
    };
  const near = nearest(name, names);
  const list = what === "caution" ? ` It is one of ${names.join(", ")}.` : "";
  return {
    span,
    message: `There is no ${what} \`${name}\`${ask(near) ?? `.${list}`}`,
    fixes: writeInstead(span, near),
  };
}

/** Readings of a stack name one of its members. */
function unknownMembers(entry: Entry): readonly Draft[] {
  if (entry.kind !== "stack") return [];
  const names: string[] = [];
  for (const { value } of [
    ...allFacts(entry, "PlusFact"),
    ...allFacts(entry, "MinusFact"),
  ]) {
    // a member's line that can't be read may be the one that is meant
    if (value === undefined) return [];
    names.push(value.name);
  }
  return allFacts(entry, "StackReadFact").flatMap(({ value, wordSpan }) => {
    if (value === undefined || names.includes(value.member)) return [];
    const line = entry.block.lines[wordSpan.line];
    const start = line?.text.indexOf(value.member, wordSpan.end) ?? 0;
    const span = { ...wordSpan, start, end: start + value.member.length };
    const near = nearest(value.member, names);
    return [
      {
        span,
        message: `This stack has no member \`${value.member}\`${ask(near) ?? ": write it as `plus` or `minus` first."}`,
        fixes: writeInstead(span, near),
      },
    ];
  });
}
