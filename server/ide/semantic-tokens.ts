// What each word of a line is, for colours that follow the meaning. Names are told apart by the place they stand in, not by what they
// lead to, so that a line's words never change with another line's.
import type { FileLines, Line } from "../../grammar/lines.ts";
import { parseBody } from "../../grammar/parse.ts";
import { tokenize } from "../../grammar/tokens.ts";
import type { Node } from "../../grammar/tree.ts";
import {
  CLAUSE_WORDS,
  REFERENCE_PLACES,
  type EntryKind,
  lineSpec,
} from "../../grammar/vocabulary.ts";

/** What a word is: a standard token type of editors. */
export type TokenType =
  /** A word that opens an entry. */
  | "keyword"
  /** A word that opens a clause. */
  | "operator"
  /** The kind in a reference, `bore` of `bore rear`. */
  | "namespace"
  /** The word of a fact. */
  | "property"
  /** The name of an entry. */
  | "variable"
  /** The name of a material or an oil. */
  | "class"
  /** A unit. */
  | "type"
  | "number"
  | "string"
  | "comment"
  /** One of a few words to choose among, a class, a code. */
  | "enumMember"
  /** A place, a member of a stack, one of the bodies of a temperature. */
  | "parameter";

export interface WordToken {
  /** In the line, in UTF-16 units. */
  readonly start: number;
  readonly end: number;
  readonly type: TokenType;
  /** The name of an entry on its own opening line. */
  readonly declares: boolean;
}

/** The words of the lines from `first` to `last`, from 0, both inclusive, line by line. */
export function* tokensIn(
  file: FileLines,
  first = 0,
  last = Infinity,
): Generator<{ readonly line: number; readonly tokens: readonly WordToken[] }> {
  for (const [index, block] of file.blocks.entries()) {
    const start = file.starts[index] ?? 0;
    if (last < start) return;
    if (start + block.lines.length <= first) continue;
    for (const [number, line] of block.lines.entries()) {
      const at = start + number;
      if (at < first || last < at) continue;
      const isHead = number === 0 && block.opens;
      yield { line: at, tokens: tokensOf(line, block.kind, isHead) };
    }
  }
}

interface Kept {
  readonly kind: EntryKind | undefined;
  readonly isHead: boolean;
  readonly tokens: readonly WordToken[];
}
const kept = new WeakMap<Line, Kept>();

function tokensOf(
  line: Line,
  kind: EntryKind | undefined,
  isHead: boolean,
): readonly WordToken[] {
  const before = kept.get(line);
  if (before?.kind === kind && before?.isHead === isHead) return before.tokens;
  const tokens = [...bodyTokens(line, kind, isHead), ...commentToken(line)];
  kept.set(line, { kind, isHead, tokens });
  return tokens;
}

function commentToken(line: Line): readonly WordToken[] {
  const end = line.text.length;
  return line.comment < end
    ? [{ start: line.comment, end, type: "comment", declares: false }]
    : [];
}

function bodyTokens(
  line: Line,
  kind: EntryKind | undefined,
  isHead: boolean,
): readonly WordToken[] {
  if (line.body === "") return [];
  const spec = lineSpec(kind, line.word, isHead);
  const named: Named = new Map();
  let isRead = false;
  if (spec !== undefined) {
    const { tree, damagedAt } = parseBody(line.body, spec.rule);
    isRead = damagedAt === undefined;
    for (const node of tree.children) collect(node, "", isHead, named);
    const isData = line.word === "material" || line.word === "oil";
    const own = isHead
      ? tree.children.find(({ type }) => type === "name")
      : undefined;
    if (own !== undefined)
      named.set(own.start, {
        end: own.end,
        type: isData ? "class" : "variable",
        declares: true,
      });
  }
  const tokens: WordToken[] = [];
  let reached = 0;
  for (const { kind: shape, start, end } of tokenize(line.body)) {
    if (shape === "blank" || start < reached) continue;
    const first = start === 0 && end === line.word.length;
    const found = first
      ? spec && word(end, isHead ? "keyword" : "property")
      : (named.get(start) ??
        plain(shape, line.body.slice(start, end), end, isRead));
    if (found === undefined) continue;
    tokens.push({
      start: line.indent + start,
      end: line.indent + found.end,
      type: found.type,
      declares: found.declares,
    });
    reached = found.end;
  }
  return tokens;
}

type Named = Map<
  number,
  { readonly end: number; readonly type: TokenType; readonly declares: boolean }
>;

function word(end: number, type: TokenType) {
  return { end, type, declares: false };
}

/** The type of a leaf of the tree by its rule in thou.ohm; names depend on the place above them. */
const LEAVES: Readonly<Record<string, TokenType>> = {
  kind: "namespace",
  number: "number",
  decimal: "number",
  count: "number",
  date: "number",
  dashed: "number",
  sign: "number",
  text: "string",
  serialWord: "string",
  unit: "type",
  place: "parameter",
  member: "parameter",
  body: "parameter",
  cutBody: "parameter",
  stepName: "variable",
};

function collect(
  node: Node,
  place: string,
  isHead: boolean,
  named: Named,
): void {
  if (0 < node.children.length) {
    const below = node.type in REFERENCE_PLACES ? node.type : place;
    const inner = node.type === "who" ? "who" : below;
    for (const each of node.children) collect(each, inner, isHead, named);
    return;
  }
  // which word it is says what it is
  if (node.type === "word") return;
  const type = node.type === "name" ? nameType(place) : LEAVES[node.type];
  named.set(node.start, word(node.end, type ?? "enumMember"));
}

function nameType(place: string): TokenType {
  if (place === "who") return "string";
  return place === "materialRef" || place === "oilRef" ? "class" : "variable";
}

/** What a word is that no leaf of the tree holds: numbers and texts of a damaged line, clause words, words that a fact is chosen by. */
function plain(
  shape: string,
  text: string,
  end: number,
  isRead: boolean,
): ReturnType<typeof word> | undefined {
  if (shape === "number") return word(end, "number");
  if (shape === "text") return word(end, "string");
  if (shape !== "word") return undefined;
  if (CLAUSE_WORDS.includes(text) || text === "for")
    return word(end, "operator");
  return isRead ? word(end, "enumMember") : undefined;
}
