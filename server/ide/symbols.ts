// The outline of a file: one symbol an entry, with what it comes to beside its name. Facts are not among them.
import { entrySpec, type EntryKind } from "../../grammar/vocabulary.ts";
import type { OpenFile } from "../model/project.ts";
import { headlineText } from "./headline.ts";
import { rangeIn, rangeOfEntry, type Range } from "./position.ts";

export interface EntrySymbol {
  /** "fit front", or the opening line where it can't be read. */
  readonly name: string;
  /** What the entry comes to, else what it is of; "" for neither. */
  readonly detail: string;
  /** Undefined under a word that opens no entry. */
  readonly kind: EntryKind | undefined;
  readonly range: Range;
  readonly nameRange: Range;
}

export function symbolsIn(open: OpenFile): readonly EntrySymbol[] {
  const { file } = open;
  return file.entries.flatMap((entry, index): readonly EntrySymbol[] => {
    const { block, kind, nameSpan } = entry;
    const [head] = block.lines;
    if (!block.opens || head === undefined) return [];
    const comesTo = headlineText(open, index);
    return [
      {
        name: entry.ref === "" ? head.body : entry.ref,
        detail: comesTo === "" ? restOfHead(head.body, kind) : comesTo,
        kind,
        range: rangeOfEntry(file, index),
        nameRange: rangeIn(file, index, nameSpan),
      },
    ];
  });
}

/** "on layshaft" of "journal front on layshaft". */
function restOfHead(body: string, kind: EntryKind | undefined): string {
  if (kind === undefined || entrySpec(kind) === undefined) return "";
  return /^\S+\s+\S+\s+(.+)$/u.exec(body)?.[1] ?? "";
}
