// What any answer of the server must be, whatever was asked: its ranges lie in their documents, its edits do not overlap, its parts lie in
// their wholes. How a text falls into lines is asked of vscode-languageserver-textdocument, which shares no code with grammar/lines.ts.
import type { Position, Range, TextEdit } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";

/** The open documents by address. */
export type Documents = ReadonlyMap<string, TextDocument>;

type Fields = Readonly<Record<string, unknown>>;

/** @throws Error for the first thing in an answer that is not as it must be. @param uri the document that was asked about */
export function assertWellFormed(
  answer: unknown,
  uri: string,
  documents: Documents,
): void {
  look(answer, uri, { documents, depth: 0 });
}

function isFields(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isPosition(value: unknown): value is Position {
  return (
    isFields(value) &&
    typeof value.line === "number" &&
    typeof value.character === "number"
  );
}

function isRange(value: unknown): value is Range {
  return isFields(value) && isPosition(value.start) && isPosition(value.end);
}

function isEdit(value: unknown): value is TextEdit {
  return (
    isFields(value) && isRange(value.range) && typeof value.newText === "string"
  );
}

interface Looked {
  readonly documents: Documents;
  readonly depth: number;
}

function look(value: unknown, uri: string, { documents, depth }: Looked): void {
  if (typeof value === "number" && !Number.isFinite(value))
    throw new Error("a number that is none");
  if (Array.isArray(value)) {
    if (0 < value.length && value.every(isEdit)) assertApart(value);
    for (const each of value as readonly unknown[])
      look(each, uri, { documents, depth: depth + 1 });
    return;
  }
  if (!isFields(value)) return;
  if (isRange(value)) {
    inside(value, uri, documents);
    return;
  }
  assertNested(value);
  const document = value.textDocument;
  const own = [value.uri, value.targetUri].find(
    (each): each is string => typeof each === "string",
  );
  const of =
    isFields(document) && typeof document.uri === "string"
      ? document.uri
      : (own ?? uri);
  for (const [key, each] of Object.entries(value)) {
    // what has its own meaning for `start` and `line` is not the protocol's
    if (key === "data") continue;
    if (key === "changes" && isFields(each))
      for (const [address, edits] of Object.entries(each))
        look(edits, address, { documents, depth: depth + 1 });
    else look(each, of, { documents, depth: depth + 1 });
  }
}

/** Of a document that is not open nothing can be said. */
function inside(range: Range, uri: string, documents: Documents): void {
  const document = documents.get(uri);
  for (const { line, character } of [range.start, range.end])
    if (
      !Number.isInteger(line) ||
      !Number.isInteger(character) ||
      line < 0 ||
      character < 0
    )
      throw new Error(`no place: ${JSON.stringify(range)}`);
  if (before(range.end, range.start))
    throw new Error(`it ends before it starts: ${JSON.stringify(range)}`);
  if (document === undefined) return;
  for (const place of [range.start, range.end]) {
    const clamped = document.positionAt(document.offsetAt(place));
    if (clamped.line !== place.line || clamped.character !== place.character)
      throw new Error(
        `outside of ${uri}: ${JSON.stringify(place)} is ${JSON.stringify(clamped)}`,
      );
  }
}

function before(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}

function within(inner: Range, outer: Range): boolean {
  return !before(inner.start, outer.start) && !before(outer.end, inner.end);
}

function assertApart(edits: readonly TextEdit[]): void {
  const ranges = edits
    .map(({ range }) => range)
    .sort(
      (a, b) =>
        a.start.line - b.start.line || a.start.character - b.start.character,
    );
  ranges.forEach((range, at) => {
    const next = ranges[at + 1];
    if (next !== undefined && before(next.start, range.end))
      throw new Error(`edits overlap: ${JSON.stringify([range, next])}`);
  });
}

/** Symbols and selections: a name lies in what it names, a part in its whole. */
function assertNested(value: Fields): void {
  const { range, selectionRange, children, parent } = value;
  if (!isRange(range)) return;
  const fail = (what: string): never => {
    throw new Error(`${what} lies outside of ${JSON.stringify(range)}`);
  };
  if (isRange(selectionRange) && !within(selectionRange, range)) fail("a name");
  if (isFields(parent) && isRange(parent.range) && !within(range, parent.range))
    throw new Error(`a selection lies outside of its parent's`);
  if (Array.isArray(children))
    for (const child of children as readonly unknown[])
      if (
        isFields(child) &&
        isRange(child.range) &&
        !within(child.range, range)
      )
        fail("a part");
}

/** A row of numbers of semantic tokens, as the protocol reads it. */
export function assertTokens(
  data: readonly number[],
  document: TextDocument,
): void {
  if (data.length % 5 !== 0) throw new Error("half a token");
  let [line, start, end] = [0, 0, 0];
  for (let at = 0; at < data.length; at += 5) {
    const [down = 0, right = 0, length = 0] = data.slice(at, at + 3);
    if (down < 0 || right < 0 || length <= 0)
      throw new Error(`no token: ${data.slice(at, at + 5).join(" ")}`);
    if (0 < down) [line, start, end] = [line + down, 0, 0];
    start += right;
    if (start < end) throw new Error(`tokens overlap on line ${line}`);
    end = start + length;
    const place = { line, character: end };
    const clamped = document.positionAt(document.offsetAt(place));
    if (clamped.line !== line || clamped.character !== end)
      throw new Error(`a token reaches out of line ${line}`);
  }
}
