// What a finding is made of. One rule is one file: its code, its level, what it looks at, its sentence and its fix; its page is
// test/rules/CODE.md. It reads the model and knows no protocol.
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { Dimension } from "../core/quantity/units.ts";
import type { Entry } from "../model/entry.ts";
import type { Problem } from "../model/problem.ts";
import type { Fix, Level } from "../model/result.ts";
import type { Shop } from "../model/shop.ts";
import type { Span } from "../model/values.ts";

/** A finding before it has a place in a file. */
export interface Draft {
  /** In place of the rule's own level. */
  readonly level?: Level;
  readonly span: Span;
  readonly message: string;
  /** Full reference of the step that it is about, where that is not the entry that it stands at. */
  readonly step?: string;
  readonly related?: readonly DraftRelated[];
  readonly fixes?: readonly DraftFix[];
  /** The value that a concession is held against, in SI; only for findings that have one. */
  readonly value?: number;
  /** What that value is; a length where left off. */
  readonly dimension?: Dimension;
}

export interface DraftRelated {
  /** Full reference of the other entry; the finding's own where left off, which need not be the first of its name. */
  readonly ref?: string;
  /** Where in it; its name where left off. */
  readonly span?: Span;
  readonly message: string;
}

export interface DraftFix {
  readonly title: string;
  readonly safe: boolean;
  readonly edits: readonly DraftEdit[];
  readonly creates?: Fix["creates"];
}

export interface DraftEdit {
  /** Full reference of the entry to change; the finding's own where left off. */
  readonly ref?: string;
  readonly span: Span;
  /** A line ends with `\n` in it, and takes the file's own end where it is placed. */
  readonly text: string;
}

/** A finding of an entry, before it has a place in a file. */
export interface EntryFinding extends Draft {
  readonly code: string;
  readonly level: Level;
  /** Name of the concession that accepts it. */
  readonly accepted?: string;
}

/** A rule about what an entry's own text says: it turns the problem into a sentence. */
export interface TextRule {
  readonly code: string;
  readonly level: Level;
  readonly draft: (
    problem: Problem,
    entry: Entry,
  ) => Omit<Draft, "span"> & { readonly span?: Span };
}

/** A rule about what an entry means beside the others. */
export interface Rule {
  readonly code: string;
  readonly level: Level;
  readonly about: readonly EntryKind[];
  /** `findingsOf` gives what the rules say of another entry, before any concession; only rules about concessions and steps ask for it. */
  readonly check: (
    shop: Shop,
    ref: string,
    entry: Entry,
    findingsOf: (shop: Shop, ref: string) => readonly EntryFinding[],
  ) => readonly Draft[];
}
