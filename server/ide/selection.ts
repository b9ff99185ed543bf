// What a selection grows to, step by step: the word, the value, the clause, the fact, the entry, the file. It looks at lines only, so that
// it waits for nothing.
import {
  blockAt,
  type Block,
  type FileLines,
  type Line,
  lineAt,
  lineCount,
} from "../../grammar/lines.ts";
import { parseBody } from "../../grammar/parse.ts";
import { tokenize } from "../../grammar/tokens.ts";
import { pathAt } from "../../grammar/tree.ts";
import { lineSpec } from "../../grammar/vocabulary.ts";
import type { Position, Range } from "./position.ts";

/** From the innermost range at a position to the whole file, each holding the one before; never empty. */
export function selectionsAt(
  file: FileLines,
  position: Position,
): readonly Range[] {
  const last = lineCount(file) - 1;
  const at = Math.max(0, Math.min(position.line, last));
  const line = lineAt(file, at);
  const end = { line: last, character: lineAt(file, last)?.text.length ?? 0 };
  const whole = { start: { line: 0, character: 0 }, end };
  if (line === undefined) return [whole];
  const character = Math.max(0, Math.min(position.character, line.text.length));
  const index = blockAt(file, at);
  const block = file.blocks[index];
  const first = file.starts[index] ?? 0;
  const inLine = (
    block === undefined ? [] : spansAt(block, at - first, character)
  ).map(([from, to]): Range => ({
    start: { line: at, character: from },
    end: { line: at, character: to },
  }));
  const entry = block?.opens === true ? [rangeOfBlock(block, first, at)] : [];
  return distinct([...inLine, ...entry, whole]);
}

/** Spans of a line from the innermost outwards: word, value, clause, fact, and the line with its comment. */
function spansAt(
  block: Block,
  number: number,
  character: number,
): readonly (readonly [number, number])[] {
  const line = block.lines[number];
  if (line === undefined) return [];
  const { indent, text, comment, body } = line;
  const bodyEnd = indent + body.length;
  const all: readonly [number, number] = [
    Math.min(indent, character),
    text.length,
  ];
  if (comment < character) return [[comment, text.length], all];
  if (body === "" || character < indent || bodyEnd < character)
    return text.length === 0 ? [] : [all];
  const offset = character - indent;
  const rule = ruleOfLine(block, number, line);
  const nodes =
    rule === undefined ? [] : pathAt(parseBody(body, rule).tree, offset);
  return [
    ...wordSpans(body, offset),
    ...nodes.map((node) => [node.start, node.end] as const).reverse(),
    [0, body.length] as const,
  ]
    .map(([from, to]) => [indent + from, indent + to] as const)
    .concat([all]);
}

function ruleOfLine(
  { kind, opens }: Block,
  number: number,
  { word }: Line,
): string | undefined {
  return lineSpec(kind, word, opens && number === 0)?.rule;
}

/** The word that an offset touches, the later one between two; a text first without its quotes. */
function wordSpans(
  body: string,
  offset: number,
): readonly (readonly [number, number])[] {
  const token = tokenize(body)
    .filter(
      ({ kind, start, end }) =>
        kind !== "blank" && start <= offset && offset <= end,
    )
    .at(-1);
  if (token === undefined) return [];
  const { kind, start, end } = token;
  return kind === "text" && start < offset && offset < end
    ? [
        [start + 1, end - 1],
        [start, end],
      ]
    : [[start, end]];
}

/** The entry without the empty lines after it, unless the position is on one. */
function rangeOfBlock({ lines }: Block, first: number, at: number): Range {
  let last = lines.length - 1;
  while (at - first < last && lines[last]?.text.trim() === "") last--;
  return {
    start: { line: first, character: 0 },
    end: { line: first + last, character: lines[last]?.text.length ?? 0 },
  };
}

/** Each range once, and none that does not hold the one before it. */
function distinct(ranges: readonly Range[]): readonly Range[] {
  const kept: Range[] = [];
  for (const range of ranges) {
    const inner = kept.at(-1);
    if (inner === undefined || (holds(range, inner) && !holds(inner, range)))
      kept.push(range);
  }
  return kept;
}

function holds(outer: Range, inner: Range): boolean {
  return !isBefore(inner.start, outer.start) && !isBefore(outer.end, inner.end);
}

function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}
