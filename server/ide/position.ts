// Finds what stands at a position of an open file: its entry, its line, the node of that line's tree, the reference. It says nothing
// about any of them. Positions are the editor's: lines and characters from 0, in UTF-16 units.
import {
  blockAt,
  isIndented,
  type Line,
  lineAt,
  lineCount,
} from "../../grammar/lines.ts";
import type { Parsed } from "../../grammar/by-ohm.ts";
import { parseBody } from "../../grammar/parse.ts";
import { pathAt, type Node } from "../../grammar/tree.ts";
import { type EntryKind, lineSpec } from "../../grammar/vocabulary.ts";
import type { Entry, Fact } from "../model/entry.ts";
import type { FileEntries } from "../model/file-entries.ts";
import type { OpenFile } from "../model/project.ts";
import type { Shop } from "../model/shop.ts";
import type { RefSite, Span } from "../model/values.ts";

export interface Position {
  readonly line: number;
  readonly character: number;
}

/** End exclusive. */
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export interface Location {
  readonly path: string;
  readonly range: Range;
}

/** A place in a file, with all that is known of its line. */
export interface Spot {
  /** The position, brought into the file where it lay past a line's or the file's end. */
  readonly position: Position;
  /** Number of the block and of its entry. */
  readonly index: number;
  readonly entry: Entry;
  /** The kind of entry that the line belongs to; undefined under a word that opens none. */
  readonly kind: EntryKind | undefined;
  readonly line: Line;
  /** The line's number in its block: `line` of every span of the entry. */
  readonly number: number;
  /** The line opens its entry. */
  readonly isHead: boolean;
  /** Offset from the start of the line's body; below 0 in the indent. */
  readonly offset: number;
  /** `after` is past the body and before any comment. */
  readonly where: "indent" | "body" | "after" | "comment";
}

/** What stands at a position; undefined only for a file without a line. */
export function spotAt(
  { file }: OpenFile,
  position: Position,
): Spot | undefined {
  const at = Math.max(0, Math.min(position.line, lineCount(file.lines) - 1));
  const line = lineAt(file.lines, at);
  const index = blockAt(file.lines, at);
  const entry = file.entries[index];
  if (line === undefined || entry === undefined) return undefined;
  const character = Math.max(0, Math.min(position.character, line.text.length));
  const number = at - (file.lines.starts[index] ?? 0);
  const offset = character - line.indent;
  return {
    position: { line: at, character },
    index,
    entry,
    kind: entry.block.kind,
    line,
    number,
    isHead: entry.block.opens && number === 0,
    offset,
    where: whereIn(line, character),
  };
}

/** The place just after a comment's first sign is in the comment, the one before it isn't. */
function whereIn(line: Line, character: number): Spot["where"] {
  if (line.comment < character) return "comment";
  if (character < line.indent) return "indent";
  return character <= line.indent + line.body.length ? "body" : "after";
}

/** The start rule of thou.ohm that reads a line of an entry; undefined where its first word has none. */
export function ruleOf(spot: Spot): string | undefined {
  return lineSpec(spot.kind, spot.line.word, spot.isHead)?.rule;
}

/** The line's tree; undefined for a line that no rule reads. A damaged line has only its first word and a name. */
export function parsedAt(spot: Spot): Parsed | undefined {
  const rule = ruleOf(spot);
  return rule === undefined || spot.line.body === ""
    ? undefined
    : parseBody(spot.line.body, rule);
}

/** The nodes from the line's root down to the innermost one at the spot; empty outside the line's body. */
export function nodesAt(spot: Spot): readonly Node[] {
  if (spot.where !== "body") return [];
  const parsed = parsedAt(spot);
  return parsed === undefined ? [] : pathAt(parsed.tree, spot.offset);
}

/** The fact that the spot's line says. */
export function factAt(spot: Spot): Fact | undefined {
  return spot.isHead
    ? undefined
    : spot.entry.facts.find((fact) => fact.span.line === spot.number);
}

/** The reference that the spot touches. */
export function refAt(spot: Spot): RefSite | undefined {
  return spot.entry.refs.find((site) => touches(site.span, spot));
}

/** Whether a spot lies in a span of its entry, ends included. */
export function touches(span: Span, { number, position }: Spot): boolean {
  return (
    span.line === number &&
    span.start <= position.character &&
    position.character <= span.end
  );
}

/** Where a span of an entry lies in its file. */
export function rangeIn(file: FileEntries, index: number, span: Span): Range {
  const line = (file.lines.starts[index] ?? 0) + span.line;
  return {
    start: { line, character: span.start },
    end: { line, character: span.end },
  };
}

/** Where a node of a spot's line lies. */
export function rangeOfNode(
  { line, position }: Spot,
  node: { readonly start: number; readonly end: number },
): Range {
  const at = position.line;
  return {
    start: { line: at, character: line.indent + node.start },
    end: { line: at, character: line.indent + node.end },
  };
}

/** From an entry's opening line to its last line with something on it. */
export function rangeOfEntry(file: FileEntries, index: number): Range {
  const start = file.lines.starts[index] ?? 0;
  const lines = file.entries[index]?.block.lines ?? [];
  let last = lines.length - 1;
  // what is set back to the margin below an entry's facts is a remark on the next entry
  while (0 < last && !isPartOf(lines[last])) last--;
  return {
    start: { line: start, character: 0 },
    end: { line: start + last, character: lines[last]?.text.length ?? 0 },
  };
}

function isPartOf(line: Line | undefined): boolean {
  if (line === undefined) return false;
  return (
    line.body !== "" || (line.comment < line.text.length && isIndented(line))
  );
}

/** Where the name of an entry stands; undefined for a reference that no file has. The first of a name counts. */
export function locationOf(shop: Shop, ref: string): Location | undefined {
  const place = shop.places.get(ref);
  const file = place === undefined ? undefined : shop.files[place.file];
  const entry = place === undefined ? undefined : file?.entries[place.index];
  if (place === undefined || file === undefined || entry === undefined)
    return undefined;
  return {
    path: file.path,
    range: rangeIn(file, place.index, entry.nameSpan),
  };
}
