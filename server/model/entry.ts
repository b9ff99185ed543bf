// An entry as its block says it: its name, its references, its facts as values, and what is wrong with its text. How a block is read is
// read-entry.ts's.
import type { Block } from "../../grammar/lines.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { Problem } from "./problem.ts";
import type { FactRule, FactValues, RefSite, Span } from "./values.ts";

export interface Fact<K extends FactRule = FactRule> {
  readonly word: string;
  readonly rule: K;
  readonly wordSpan: Span;
  /** From the fact's word to its last. */
  readonly span: Span;
  /** Undefined where the line is damaged or stands twice: then nothing is known, and nothing may be said. */
  readonly value: FactValues[K] | undefined;
}

export interface Entry {
  readonly block: Block;
  /** Undefined for a block that no known word opens. */
  readonly kind: EntryKind | undefined;
  readonly name: string | undefined;
  /** "fit front"; "" where kind or name is missing. */
  readonly ref: string;
  readonly headSpan: Span;
  readonly nameSpan: Span;
  /** The opening line is damaged or misplaced: the name holds, and nothing else is known. */
  readonly damaged: boolean;
  /** The references of the opening line, in order. */
  readonly of: readonly RefSite[];
  readonly facts: readonly Fact[];
  /** Every reference, those of the opening line among them. */
  readonly refs: readonly RefSite[];
  readonly problems: readonly Problem[];
}

/** A fact as an entry gives it. */
export type Given<T> =
  | { readonly state: "absent" }
  | { readonly state: "damaged" }
  | { readonly state: "given"; readonly value: T; readonly span: Span };

/** A fact that stands once. */
export function given<K extends FactRule>(
  entry: Entry,
  rule: K,
): Given<FactValues[K]> {
  if (entry.damaged) return DAMAGED;
  const fact = firstOf(entry, rule);
  if (fact === undefined) return ABSENT;
  return fact.value === undefined
    ? DAMAGED
    : { state: "given", value: fact.value, span: fact.span };
}

const ABSENT = { state: "absent" } as const;
const DAMAGED = { state: "damaged" } as const;

// a plain loop: facts are asked for hundreds of times a keystroke
function firstOf<K extends FactRule>(
  { facts }: Entry,
  rule: K,
): Fact<K> | undefined {
  for (const fact of facts) if (fact.rule === rule) return fact as Fact<K>; // of that rule
  return undefined;
}

/** The value of a fact that stands once, where it is whole. */
export function valueIn<K extends FactRule>(
  entry: Entry | undefined,
  rule: K,
): FactValues[K] | undefined {
  return entry === undefined || entry.damaged
    ? undefined
    : firstOf(entry, rule)?.value;
}

/** All facts of one rule, damaged ones among them. */
export function allOf<K extends FactRule>(
  entry: Entry,
  rule: K,
): readonly Fact<K>[] {
  return entry.facts.filter((each): each is Fact<K> => each.rule === rule);
}
