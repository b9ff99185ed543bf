// What may be written at the caret. This file finds out where the caret is; what is offered there is the other completion-*.ts's.
import { isIndented } from "../../grammar/lines.ts";
import type { OpenFile } from "../model/project.ts";
import { caretAt, type Caret, type Writing } from "./completion-caret.ts";
import { entryOffers } from "./completion-entries.ts";
import { factOffers } from "./completion-facts.ts";
import { completions, type Completion } from "./completion-item.ts";
import { lineOffers } from "./completion-line.ts";
import { spotAt, type Position, type Spot, ruleOf } from "./position.ts";

export type { Completion, CompletionKind } from "./completion-item.ts";

/**
 * What may stand at a position, best first. Only the line before the caret counts, so that an unfinished line is completed as well. Nothing
 * in comments and texts.
 * @param today the day to offer where a date may stand, ISO 8601; none is offered without it.
 */
export function completionAt(
  open: OpenFile,
  position: Position,
  today?: string,
): readonly Completion[] {
  const spot = spotAt(open, position);
  const caret = spot === undefined ? undefined : caretAt(spot);
  if (spot === undefined || caret === undefined) return [];
  if (caret.head.trim() === "")
    return completions(firstWord(open, spot, today), caret.range);
  const writing = writingAt(open, spot, caret, today);
  return writing === undefined
    ? []
    : completions(lineOffers(writing), caret.range);
}

function firstWord(
  open: OpenFile,
  spot: Spot,
  today: string | undefined,
): ReturnType<typeof factOffers> {
  const { line, position } = spot;
  if (line.body !== "" && spot.where === "indent") return [];
  const isAtMargin =
    line.body === ""
      ? position.character === marginOf(spot)
      : !isIndented(line);
  if (isAtMargin) return entryOffers(open, today);
  const owner = ownerOf(open, spot);
  return owner === undefined
    ? []
    : factOffers(open, owner.entry, owner.kind, owner.number, today);
}

/** Where column 1 is: after a byte order mark, if there is one. */
function marginOf({ line }: Spot): number {
  return line.text.startsWith("\u{FEFF}") ? 1 : 0;
}

/** The entry that an indented line is a fact of: an indented word such as `bore` opens an entry only once it is finished. */
function ownerOf(
  open: OpenFile,
  spot: Spot,
):
  | {
      readonly entry: Spot["entry"];
      readonly kind: NonNullable<Spot["kind"]>;
      readonly number: number | undefined;
    }
  | undefined {
  const isStray = spot.isHead && isIndented(spot.line);
  const entry = isStray ? open.file.entries[spot.index - 1] : spot.entry;
  const kind = entry?.block.kind;
  return entry === undefined || kind === undefined
    ? undefined
    : { entry, kind, number: isStray ? undefined : spot.number };
}

function writingAt(
  open: OpenFile,
  spot: Spot,
  caret: Caret,
  today: string | undefined,
): Writing | undefined {
  const { kind, entry } = spot;
  if (kind === undefined) return undefined;
  const rule = ruleOf(spot);
  return rule === undefined
    ? undefined
    : { open, spot, caret, rule, kind, owner: entry.ref, today };
}
