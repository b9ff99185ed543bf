// What stands before the caret: the part of the line that is read, and the word that is being typed. What may stand there is not its affair.
import { isBlank, tokenize, type Token } from "../../grammar/tokens.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { OpenFile } from "../model/project.ts";
import type { Range, Spot } from "./position.ts";

export interface Caret {
  /** The line's body up to the word that is being typed. */
  readonly head: string;
  /** What is typed of the word so far. */
  readonly word: string;
  /** The whole word, what stands of it after the caret as well. */
  readonly range: Range;
  /** The words before it that are no blanks. */
  readonly tokens: readonly Token[];
}

/** A line that is being written. */
export interface Writing {
  readonly open: OpenFile;
  readonly spot: Spot;
  readonly caret: Caret;
  readonly rule: string;
  /** The kind of the entry that the line opens or belongs to. */
  readonly kind: EntryKind;
  /** Full reference of that entry; "" where it has none yet. */
  readonly owner: string;
  readonly today: string | undefined;
}

const REST_OF_WORD = /^[\p{L}\d\u{B0}%_/\u{B7}\u{B2}\u{B3}^-]*/u;
const DATE_SO_FAR = /(?<![^\s])\d[\d-]*$/u;

/** Undefined in a comment and in a text. */
export function caretAt(spot: Spot): Caret | undefined {
  const { line, position } = spot;
  if (spot.where === "comment") return undefined;
  const before = line.text.slice(line.indent, position.character);
  const tokens = tokenize(before);
  if (isInText(before, tokens)) return undefined;
  const start = startOfWord(before, tokens);
  const rest = REST_OF_WORD.exec(
    line.text.slice(position.character, line.comment),
  );
  const at = position.line;
  const first = Math.min(line.indent, position.character);
  return {
    head: before.slice(0, start),
    word: before.slice(start),
    range: {
      start: { line: at, character: first + start },
      end: {
        line: at,
        character: position.character + (rest?.[0].length ?? 0),
      },
    },
    tokens: tokens.filter(
      (token) => token.kind !== "blank" && token.end <= start,
    ),
  };
}

function startOfWord(before: string, tokens: readonly Token[]): number {
  const last = tokens.at(-1);
  const date = DATE_SO_FAR.exec(before);
  if (date !== null) return date.index;
  const start =
    last === undefined || last.kind === "blank" || last.kind === "symbol"
      ? before.length
      : last.start;
  // `per min` is one unit of two words
  const words = tokens.filter(
    (token) => token.kind !== "blank" && token.end <= start,
  );
  const previous = words.at(-1);
  const isPer =
    previous !== undefined &&
    before.slice(previous.start, previous.end) === "per" &&
    "min".startsWith(before.slice(start));
  return isPer ? previous.start : start;
}

/** A quote that opens a text and is not closed yet; or the caret touches the end of one. */
function isInText(before: string, tokens: readonly Token[]): boolean {
  if (tokens.at(-1)?.kind === "text") return true;
  return tokens.some((token) => {
    const previous = before[token.start - 1];
    return (
      token.kind === "symbol" &&
      before[token.start] === '"' &&
      (previous === undefined || previous === "," || isBlank(previous))
    );
  });
}

/** The text of a token before the caret. */
export function tokenText({ head }: Caret, token: Token | undefined): string {
  return token === undefined ? "" : head.slice(token.start, token.end);
}
