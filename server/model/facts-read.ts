// Facts that were read before. The same lines stand under many entries of a record, and with every key an entry reads its lines again: a fact
// with which nothing is wrong is the same object wherever its line stands alike, so that to read it again costs a look, and to compare it, too.
import { keepIn } from "../../grammar/kept.ts";
import type { Line } from "../../grammar/lines.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { System } from "../core/quantity/show.ts";
import type { Fact } from "./entry.ts";
import type { RefSite } from "./values.ts";

/** Where a line stands. A fact says where its words lie, so it is the same under one kind of entry, in one unit, at one place of a block. */
export interface Standing {
  readonly kind: EntryKind;
  readonly system: System | undefined;
  /** Of the line in its block. */
  readonly number: number;
}

interface FactRead extends Standing {
  readonly indent: number;
  readonly fact: Fact;
  /** The names that it refers to. */
  readonly refs: readonly RefSite[];
}

const MOST_LINES = 10_000;
/** Places of one line: a line that stands at more is looked for among these alone. */
const MOST_PLACES = 8;
const byBody = new Map<string, FactRead[]>();

/** The fact of a line that stood alike before. */
export function factRead(
  { body, indent }: Line,
  { kind, system, number }: Standing,
): Pick<FactRead, "fact" | "refs"> | undefined {
  return byBody
    .get(body)
    ?.find(
      (each) =>
        each.number === number &&
        each.kind === kind &&
        each.system === system &&
        each.indent === indent,
    );
}

/** Takes note of a fact with which nothing is wrong. */
export function noteFact(
  { body, indent }: Line,
  standing: Standing,
  fact: Fact,
  refs: readonly RefSite[],
): void {
  const read = { ...standing, indent, fact, refs };
  const others = byBody.get(body);
  if (others === undefined) keepIn(byBody, MOST_LINES, body, [read]);
  else if (others.length < MOST_PLACES) others.push(read);
}
