// Splits a file into lines and gathers them into blocks, an entry with its facts. It follows edits: a line or a block that an edit
// does not touch stays the same object. It never looks past a line's first word.
import { isAscii, isBlank, startOfComment, tokenize } from "./tokens.ts";
import {
  entrySpec,
  factSpec,
  kindsWithFact,
  type EntryKind,
} from "./vocabulary.ts";

export interface Line {
  /** The line without its end. */
  readonly text: string;
  /** "\n", "\r\n", "\r", or "" at the end of the file. */
  readonly eol: string;
  /** Characters before the first word; a byte order mark counts, though it takes no room. */
  readonly indent: number;
  /** From the first word to the last, without the comment: "" for a blank or comment line. */
  readonly body: string;
  /** Where the comment starts in `text`; its length where there is none. */
  readonly comment: number;
  /** The first word of the body. */
  readonly word: string;
}

/** An opening line and the indented lines under it, up to the next opening line. */
export interface Block {
  /** Undefined for the lines before the first entry. */
  readonly kind: EntryKind | undefined;
  /** The opening line first; blank and comment lines are among them. Never empty. */
  readonly lines: readonly Line[];
  /** False for the lines before the first opening line of a file. */
  readonly opens: boolean;
}

export interface FileLines {
  /** Gathered from the blocks when it is first asked for; `lineAt` gives one without. */
  readonly lines: readonly Line[];
  readonly blocks: readonly Block[];
  /** The line that each block starts on, from 0. */
  readonly starts: readonly number[];
}

/** Whether nothing stands in a file, or nothing but comments. */
export function isEmpty({ blocks }: FileLines): boolean {
  return blocks.every(({ lines }) => lines.every(({ body }) => body === ""));
}

/** The line end that a file is written with. */
export function eolOf({ blocks }: Pick<FileLines, "blocks">): string {
  // asked with each edit, it goes no further than the first, and leaves the list of all lines alone
  for (const { lines } of blocks)
    for (const { eol } of lines) if (eol !== "") return eol;
  return "\n";
}

export interface Edit {
  /** Lines from 0, characters in UTF-16 units, end exclusive, as in the text before the edit. */
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
  readonly text: string;
}

const BYTE_ORDER_MARK = "\u{FEFF}";
const FIRST_WORD = /^(?:[\p{L}\d_-]+|.)/u;
// most first words; the other pattern takes a millisecond to be made
const ASCII_FIRST_WORD = /^(?:[\w-]+|[ -~])/;

function splitLines(text: string): readonly Line[] {
  const lines: Line[] = [];
  let start = 0;
  for (const { index, 0: eol } of text.matchAll(/\r\n?|\n/g)) {
    lines.push(readLine(text.slice(start, index), eol, start === 0));
    start = index + eol.length;
  }
  lines.push(readLine(text.slice(start), "", start === 0));
  return lines;
}

function readLine(text: string, eol: string, first: boolean): Line {
  let indent = first && text.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
  while (isBlank(text[indent])) indent++;
  const rest = text.slice(indent);
  const comment = startOfComment(rest);
  let end = comment;
  while (0 < end && isBlank(rest[end - 1])) end--;
  const body = rest.slice(0, end);
  return {
    text,
    eol,
    indent,
    body,
    comment: indent + comment,
    word: firstWord(body),
  };
}

function firstWord(body: string): string {
  const word = ASCII_FIRST_WORD.exec(body)?.[0] ?? "";
  return isAscii(body[word.length]) ? word : (FIRST_WORD.exec(body)?.[0] ?? "");
}

/** True where a line is set in from the margin. */
export function isIndented(line: Line): boolean {
  return line.indent - (line.text.startsWith(BYTE_ORDER_MARK) ? 1 : 0) > 0;
}

/**
 * True where a line opens a block: a word in column 1, unless it is a fact that lost its indent; or an indented word that only an entry
 * begins with. Under an opening word that is not known, indented lines are never looked at.
 */
function opens(line: Line, above: EntryKind | undefined): boolean {
  if (line.body === "") return false;
  const isKind = entrySpec(line.word) !== undefined;
  const isFactAbove =
    above !== undefined && factSpec(above, line.word) !== undefined;
  if (isIndented(line)) {
    // a material or an oil that is set in is a fact in the wrong entry: both words are facts far more often
    const isFactWord = line.word === "material" || line.word === "oil";
    return above !== undefined && isKind && !isFactAbove && !isFactWord;
  }
  if (isKind) return !isFactAbove || !isFactForm(line, above);
  return !isFactAbove && kindsWithFact(line.word).length === 0;
}

/** `bore rear from 5.5 to 6.75` in column 1 under a line is that line's fact; `bore rear in bush rear` opens a bore. */
function isFactForm(line: Line, above: EntryKind | undefined): boolean {
  const clause = tokenize(line.body).filter(
    (token) => token.kind === "word",
  )[2];
  const word =
    clause === undefined ? "" : line.body.slice(clause.start, clause.end);
  if (above === "line" && line.word === "bore") return word === "from";
  if (above === "line" && line.word === "pilot") return word === "in";
  if (above === "fit" && line.word === "oil") return word === "at";
  return false;
}

/** Blocks of lines that begin a file, or of ones that begin with an opening line; `above` is the kind of the block before those. */
function gather(lines: readonly Line[], above?: EntryKind): readonly Block[] {
  const blocks: Block[] = [];
  let pending: Line[] = [];
  let kind = above;
  let opened = false;
  for (const line of lines) {
    if (opens(line, kind)) {
      if (0 < pending.length)
        blocks.push({ kind, lines: pending, opens: opened });
      pending = [];
      kind = entrySpec(line.word)?.kind;
      opened = true;
    }
    pending.push(line);
  }
  if (0 < pending.length) blocks.push({ kind, lines: pending, opens: opened });
  return blocks;
}

function startsOf(blocks: readonly Block[]): readonly number[] {
  const starts: number[] = [];
  let at = 0;
  for (const block of blocks) {
    starts.push(at);
    at += block.lines.length;
  }
  return starts;
}

export function readLines(text: string): FileLines {
  const blocks = gather(splitLines(text));
  return fileOf(blocks, startsOf(blocks));
}

/** An edit touches a few blocks of thousands: the list of all lines is left to who goes through them all. */
function fileOf(
  blocks: readonly Block[],
  starts: readonly number[],
): FileLines {
  let lines: readonly Line[] | undefined;
  return {
    blocks,
    starts,
    get lines() {
      return (lines ??= blocks.flatMap((block) => block.lines));
    },
  };
}

export function lineCount({ blocks, starts }: FileLines): number {
  return (starts.at(-1) ?? 0) + (blocks.at(-1)?.lines.length ?? 0);
}

/** A line by its number, from 0. */
export function lineAt(file: FileLines, line: number): Line | undefined {
  const block = blockAt(file, line);
  return file.blocks[block]?.lines[line - (file.starts[block] ?? 0)];
}

/** The block that a line lies in. */
export function blockAt(file: FileLines, line: number): number {
  let low = 0;
  let high = file.starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((file.starts[middle] ?? 0) <= line) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * The file after an edit. Positions past a line's or the file's end are taken as its end, as the protocol says. Costs as much as
 * what the edit touches, and one copy of the lists.
 */
export function editLines(file: FileLines, edit: Edit): FileLines {
  return editWithin(file, edit) ?? editAcross(file, edit);
}

/** A keystroke: an edit within one line that opens no block before or after it. Undefined for any other. */
function editWithin(file: FileLines, edit: Edit): FileLines | undefined {
  const { start, end } = edit;
  if (start.line !== end.line || /[\r\n]/.test(edit.text)) return undefined;
  const at = blockAt(file, start.line);
  const block = file.blocks[at];
  const index = start.line - (file.starts[at] ?? 0);
  const old = block?.lines[index];
  if (block === undefined || old === undefined || index === 0) return undefined;
  const text =
    old.text.slice(0, start.character) +
    edit.text +
    old.text.slice(end.character);
  // the ends of a line that is emptied may join; one that reads as it did stays the object that it was
  if (text === "" || text === old.text) return undefined;
  const line = readLine(text, old.eol, false);
  if (opens(line, block.kind)) return undefined;
  const lines = block.lines.slice();
  lines[index] = line;
  const blocks = file.blocks.slice();
  blocks[at] = { kind: block.kind, lines, opens: block.opens };
  return fileOf(blocks, file.starts);
}

function editAcross(file: FileLines, edit: Edit): FileLines {
  const last = lineCount(file) - 1;
  const from = Math.min(Math.max(edit.start.line, 0), last);
  const to = Math.min(Math.max(edit.end.line, from), last);
  const head = textOf(file, from).slice(
    0,
    edit.start.line > last ? undefined : edit.start.character,
  );
  const tailLine = lineAt(file, to);
  const tail =
    edit.end.line > last ? "" : textOf(file, to).slice(edit.end.character);
  // A \r before an inserted \n, or the reverse, joins into one end: widen the edit to the neighbours that may join.
  const first = Math.max(0, from - 1);
  const until = Math.min(last, to + 1);
  const before =
    first < from ? textOf(file, first) + (lineAt(file, first)?.eol ?? "") : "";
  const after =
    to < until ? textOf(file, until) + (lineAt(file, until)?.eol ?? "") : "";
  const text = before + head + edit.text + tail + (tailLine?.eol ?? "") + after;
  let fresh = splitLines(first === 0 ? text : `\n${text}`);
  if (first !== 0) fresh = fresh.slice(1);
  // The text ended with a line end that is followed by more lines: the empty line after it is theirs.
  if (until < last) fresh = fresh.slice(0, -1);
  const old = Array.from({ length: until + 1 - first }, (_, index) =>
    lineAt(file, first + index),
  ).filter((line) => line !== undefined);
  return replaceLines(file, first, until + 1, keepEqual(fresh, old));
}

function textOf(file: FileLines, line: number): string {
  return lineAt(file, line)?.text ?? "";
}

/** Lines at either end that read as they did stay the objects that they were. */
function keepEqual(
  fresh: readonly Line[],
  old: readonly Line[],
): readonly Line[] {
  const kept = [...fresh];
  const same = (a: Line | undefined, b: Line | undefined): boolean =>
    a !== undefined &&
    a.text === b?.text &&
    a.eol === b.eol &&
    a.indent === b.indent;
  let head = 0;
  while (head < kept.length) {
    const line = old[head];
    if (line === undefined || !same(line, kept[head])) break;
    kept[head] = line;
    head++;
  }
  for (
    let tail = 1;
    tail <= kept.length - head && tail <= old.length - head;
    tail++
  ) {
    const line = old.at(-tail);
    if (line === undefined || !same(line, kept.at(-tail))) break;
    kept[kept.length - tail] = line;
  }
  return kept;
}

function replaceLines(
  file: FileLines,
  from: number,
  to: number,
  fresh: readonly Line[],
): FileLines {
  // A changed opening line can change how the lines above and below it are gathered: one block more on either side.
  const firstBlock = Math.max(0, blockAt(file, from) - 1);
  let lastBlock = Math.min(file.blocks.length - 1, blockAt(file, to - 1) + 1);
  for (;;) {
    const startLine = file.starts[firstBlock] ?? 0;
    const old = file.blocks.slice(firstBlock, lastBlock + 1);
    const region = replaced(
      old.flatMap((block) => block.lines),
      from - startLine,
      to - startLine,
      fresh,
    );
    const gathered = gather(region, file.blocks[firstBlock - 1]?.kind);
    // The block after the region was gathered knowing the kind of the one above it: go on while that kind differs.
    const next = file.blocks[lastBlock + 1];
    if (
      next !== undefined &&
      gathered.at(-1)?.kind !== file.blocks[lastBlock]?.kind
    ) {
      lastBlock++;
      continue;
    }
    const blocks = replaced(
      file.blocks,
      firstBlock,
      lastBlock + 1,
      keepBlocks(gathered, old),
    );
    // the list that it was where every block starts where it did: whoever holds it sees that nothing has moved
    const starts = startAlike(gathered, old) ? file.starts : startsOf(blocks);
    return fileOf(blocks, starts);
  }
}

/** A list with another piece in place of one; a long one is copied whole, which costs no look at each. */
function replaced<T>(
  list: readonly T[],
  from: number,
  to: number,
  by: readonly T[],
): readonly T[] {
  return list.slice(0, from).concat(by, list.slice(to));
}

/** Whether blocks, and what follows them, start where those that they replace did. The last one is longer only where nothing follows it. */
function startAlike(fresh: readonly Block[], old: readonly Block[]): boolean {
  return (
    fresh.length === old.length &&
    fresh.every(
      ({ lines }, index) =>
        lines.length === old[index]?.lines.length || index === fresh.length - 1,
    )
  );
}

function keepBlocks(
  fresh: readonly Block[],
  old: readonly Block[],
): readonly Block[] {
  return fresh.map((block) => {
    return old.find((each) => sameBlock(each, block)) ?? block;
  });
}

function sameBlock(a: Block, b: Block): boolean {
  return (
    a.opens === b.opens &&
    a.lines.length === b.lines.length &&
    a.lines.every((line, index) => line === b.lines[index])
  );
}
