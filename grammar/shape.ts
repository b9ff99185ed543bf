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

const CLASS_LIKE = /^\p{L}{1,2}\d{1,2}$/u;
const LETTERS = /^\p{L}[\p{L}-]*$/u;
const NAME_LIKE = /^\p{L}[\p{L}\d-]*$/u;

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
      return text === " " || /^ +$/.test(text) ? " " : "\t";
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
  if (/^\d+\.(?!\d)/.test(text)) return `${exponent}0.`;
  return exponent + (text.includes(".") ? "0.0" : "0");
}

/** Words that thou.ohm names, and words that touch what is before them, stand as they are; lower-case letters mark the rest. */
function wordLetter(text: string, touches: boolean): string {
  if (touches || KEYWORDS.has(text)) return `\`${text}\``;
  if (CLASS_LIKE.test(text)) return "<c>";
  if (/^\p{L}$/u.test(text)) return "<l>";
  if (LETTERS.test(text)) return "<w>";
  return NAME_LIKE.test(text) ? "<n>" : `\`${text}\``;
}
