// The entries of many files by name, for whoever looks for one in the whole workspace. It looks at opening lines only, so that a file is
// listed without being worked out.
import { parseBody } from "../../grammar/parse.ts";
import { child } from "../../grammar/tree.ts";
import { entrySpec, type EntryKind } from "../../grammar/vocabulary.ts";
import type { Block, FileLines } from "../../grammar/lines.ts";
import type { Range } from "./position.ts";
import { nameOf } from "../model/reference.ts";

export interface NamedEntry {
  /** "fit front" */
  readonly ref: string;
  readonly kind: EntryKind;
  /** The name itself. */
  readonly range: Range;
}

interface HeadName {
  readonly ref: string;
  readonly kind: EntryKind;
  readonly start: number;
  readonly end: number;
}

// a block that stays keeps what was found
const names = new WeakMap<Block, HeadName | null>();

/** The entries that a file opens, in its order; an opening line that lacks its name is none. */
export function entriesNamedIn(file: FileLines): readonly NamedEntry[] {
  return file.blocks.flatMap((block, index): readonly NamedEntry[] => {
    const found = nameOfBlock(block);
    const line = file.starts[index] ?? 0;
    return found === null
      ? []
      : [
          {
            ref: found.ref,
            kind: found.kind,
            range: {
              start: { line, character: found.start },
              end: { line, character: found.end },
            },
          },
        ];
  });
}

function nameOfBlock(block: Block): HeadName | null {
  let found = names.get(block);
  if (found === undefined) {
    found = readName(block);
    names.set(block, found);
  }
  return found;
}

function readName({ opens, kind, lines }: Block): HeadName | null {
  const [head] = lines;
  const rule = kind === undefined ? undefined : entrySpec(kind)?.rule;
  if (!opens || kind === undefined || head === undefined || rule === undefined)
    return null;
  // a damaged line keeps its name
  const name = child(parseBody(head.body, rule).tree, "name");
  return name === undefined
    ? null
    : {
        ref: `${kind} ${head.body.slice(name.start, name.end)}`,
        kind,
        start: head.indent + name.start,
        end: head.indent + name.end,
      };
}

/**
 * How well a name answers what was typed, higher is better; undefined where it does not hold all its letters in their order. Case, blanks
 * and hyphens count for nothing.
 */
export function likeness(query: string, ref: string): number | undefined {
  const wanted = plain(query);
  if (wanted === "") return 0;
  const name = nameOf(ref);
  const [whole, own] = [plain(ref), plain(name)];
  if (own === wanted || whole === wanted) return 5;
  if (own.startsWith(wanted)) return 4;
  if (whole.startsWith(wanted)) return 3;
  if (whole.includes(wanted)) return 2;
  return holdsInOrder(whole, wanted) ? 1 : undefined;
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[\s-]+/gu, "");
}

function holdsInOrder(text: string, letters: string): boolean {
  let at = 0;
  for (const letter of letters) {
    at = text.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}
