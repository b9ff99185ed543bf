// The shape of a line: its tokens with the numbers and names left open. Two lines of one shape are read alike by thou.ohm, so the
// second needs no parse. What thou.ohm tells apart must differ here; a test holds the two together.
import { keywords } from "./thou.ohm-bundle.ts";
import { isBlank, tokenize, type Token } from "./tokens.ts";

export interface Shape {
  readonly key: string;
  /** Where each token that is not a blank starts and ends. */
  readonly starts: readonly number[];
  readonly ends: readonly number[];
}

const KEYWORDS = new Set(keywords);

const ASCII = /^[ -~]*$/;
/** What a word of these letters is like. */
const likes = (letter: string) => ({
  class: new RegExp(`^${letter}{1,2}\\d{1,2}$`, "u"),
  letter: new RegExp(`^${letter}$`, "u"),
  letters: new RegExp(`^${letter}(?:${letter}|-)*$`, "u"),
  name: new RegExp(`^${letter}(?:${letter}|\\d|-)*$`, "u"),
});
// most words are the first: patterns of all letters take a millisecond each to be made, and are made when they are first asked
const ASCII_LIKE = likes("[A-Za-z]");
const ANY_LIKE = likes(String.raw`\p{L}`);

export function shapeOf(body: string): Shape {
  let key = "";
  const starts: number[] = [];
  const ends: number[] = [];
  let before: Token["kind"] | undefined;
  for (const token of tokenize(body)) {
    const text = body.slice(token.start, token.end);
    key += letterFor(token, text, body, before);
    before = token.kind;
    if (token.kind === "blank") continue;
    starts.push(token.start);
    ends.push(token.end);
  }
  return { key, starts, ends };
}

/** Open words of a key that are looked for in each way; a usual line has at most four. */
const MOST_OPEN = 5;

/**
 * The keys that stand for this one and for others: any of its open words may be written `<a>`, a word of whatever letters. Most such words
 * first.
 */
export function widerKeys(key: string): readonly string[] {
  const parts = key.split(/<[wcnl]>/);
  const open = parts.length - 1;
  if (MOST_OPEN < open) return [];
  const letters = key.match(/<[wcnl]>/g) ?? [];
  return Array.from({ length: 2 ** open - 1 }, (_, kept) =>
    parts
      .map((part, index) =>
        index === open
          ? part
          : part + (kept & (1 << index) ? (letters[index] ?? "") : "<a>"),
      )
      .join(""),
  );
}

/** A mark that says all that thou.ohm can see of a token. */
function letterFor(
  token: Token,
  text: string,
  body: string,
  before: Token["kind"] | undefined,
): string {
  switch (token.kind) {
    case "blank":
      // only plain spaces may part the whole from the fraction of `1 3/16`
      return text.includes("\t") || text.includes("\u{A0}") ? "\t" : " ";
    case "text":
      return '""';
    case "number":
      // numbers that run into each other, as in 1e5.5, stand as they are
      return before === "number" || before === "word"
        ? `\`${text}\``
        : numberLetter(text);
    case "symbol":
      return text;
    case "word":
      return wordLetter(
        text,
        token.start !== 0 && !isBlank(body[token.start - 1]),
      );
  }
}

function numberLetter(text: string): string {
  const exponent = /[eE]/.test(text) ? "E" : "";
  if (text.startsWith(".")) return `${exponent}.0`;
  if (/\.(?!\d)/.test(text)) return `${exponent}0.`;
  return exponent + (text.includes(".") ? "0.0" : "0");
}

/** Words that thou.ohm names, and words that touch what is before them, stand as they are; lower-case letters mark the rest. */
function wordLetter(text: string, touches: boolean): string {
  if (touches || KEYWORDS.has(text)) return `\`${text}\``;
  const like = ASCII.test(text) ? ASCII_LIKE : ANY_LIKE;
  if (like.class.test(text)) return "<c>";
  if (like.letter.test(text)) return "<l>";
  if (like.letters.test(text)) return "<w>";
  return like.name.test(text) ? "<n>" : `\`${text}\``;
}
