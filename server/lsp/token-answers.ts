// Words and what they are, as the protocol's row of numbers: whole, of some lines, or what changed since the last answer.
import type {
  SemanticTokens,
  SemanticTokensDelta,
} from "vscode-languageserver";
import type { FileLines } from "../../grammar/lines.ts";
import { tokensIn } from "../ide/semantic-tokens.ts";
import { DECLARATION, TYPE_NUMBERS } from "./legend.ts";

/** Five numbers a word: lines on, characters on, length, type, modifiers. */
export function encoded(
  file: FileLines,
  first?: number,
  last?: number,
): number[] {
  const data: number[] = [];
  let line = 0;
  let start = 0;
  for (const { line: at, tokens } of tokensIn(file, first, last)) {
    for (const token of tokens) {
      const isSameLine = at === line;
      data.push(
        at - line,
        isSameLine ? token.start - start : token.start,
        token.end - token.start,
        TYPE_NUMBERS[token.type],
        token.declares ? DECLARATION : 0,
      );
      line = at;
      start = token.start;
    }
  }
  return data;
}

export interface TokenAnswers {
  whole(uri: string, file: FileLines): SemanticTokens;
  since(
    uri: string,
    file: FileLines,
    previous: string,
  ): SemanticTokens | SemanticTokensDelta;
  forget(uri: string): void;
}

export function createTokenAnswers(): TokenAnswers {
  const last = new Map<
    string,
    { readonly id: string; readonly data: number[] }
  >();
  let count = 0;

  function keep(uri: string, data: number[]): string {
    const id = String(count++);
    last.set(uri, { id, data });
    return id;
  }

  return {
    whole(uri, file) {
      const data = encoded(file);
      return { resultId: keep(uri, data), data };
    },
    since(uri, file, previous) {
      const before = last.get(uri);
      const data = encoded(file);
      const resultId = keep(uri, data);
      return before?.id === previous
        ? { resultId, edits: difference(before.data, data) }
        : { resultId, data };
    },
    forget(uri) {
      last.delete(uri);
    },
  };
}

/** One edit that makes the one row of the other: what they share at either end stays. */
export function difference(
  before: readonly number[],
  after: readonly number[],
): SemanticTokensDelta["edits"] {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  if (start === before.length && start === after.length) return [];
  let tail = 0;
  while (
    tail < most - start &&
    before[before.length - 1 - tail] === after[after.length - 1 - tail]
  )
    tail++;
  return [
    {
      start,
      deleteCount: before.length - start - tail,
      data: after.slice(start, after.length - tail),
    },
  ];
}
