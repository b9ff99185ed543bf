// Cuts one line into tokens: enough to find its comment, to lay it out, and to know its shape. It gives them no meaning.

export type TokenKind = "blank" | "text" | "number" | "word" | "symbol";

export interface Token {
  readonly kind: TokenKind;
  readonly start: number;
  readonly end: number;
}

/** What separates words: the space, the tab, the no-break space. */
export function isBlank(character: string | undefined): boolean {
  return character === " " || character === "\t" || character === "\u{A0}";
}

const NUMBER = /(?:\d+\.\d*|\.\d+|\d+)(?:[eE][+-]?\d+)?/y;
const WORD = /[\p{L}\u{B0}%_](?:[\p{L}\d\u{B0}%_/\u{B7}\u{B2}\u{B3}^-])*/uy;
// most words: a pattern of all letters takes a millisecond to be made, and a line that has no others never asks for it
const ASCII_WORD = /[A-Za-z%_][\w%/^-]*/y;
const BLANK = /[ \t\u{A0}]+/uy;
const NUMERIC = ".0123456789";

function matchEnd(
  pattern: RegExp,
  text: string,
  from: number,
): number | undefined {
  pattern.lastIndex = from;
  return pattern.test(text) ? pattern.lastIndex : undefined;
}

/** Where the text that opens at `from` ends (after its closing quote); undefined where it never closes. */
export function endOfText(line: string, from: number): number | undefined {
  for (
    let at = line.indexOf('"', from + 1);
    at !== -1;
    at = line.indexOf('"', at + 1)
  ) {
    const next = line[at + 1];
    if (next !== undefined && next !== "," && !isBlank(next)) continue;
    if (!strayQuoteFollows(line, at + 1)) return at + 1;
  }
  return undefined;
}

/** The next quote, before any comment, does not open a text: then the quote before it was inside one. */
function strayQuoteFollows(line: string, from: number): boolean {
  for (let at = from; at < line.length; at++) {
    const before = line[at - 1];
    const opens = before === "," || isBlank(before);
    if (line[at] === "#" && isBlank(before)) return false;
    if (line[at] === '"') return !opens;
  }
  return false;
}

/** Where a comment starts, given a line from its first word on; the line's length where there is none. */
export function startOfComment(line: string): number {
  // spares a look: most lines have none
  if (!line.includes("#")) return line.length;
  let at = 0;
  // a text that never closes leaves no quote behind it that could close another
  let closes = true;
  while (at < line.length) {
    const afterBlank = at === 0 || isBlank(line[at - 1]);
    if (line[at] === "#" && afterBlank) return at;
    if (closes && line[at] === '"' && (afterBlank || line[at - 1] === ",")) {
      const end = endOfText(line, at);
      closes = end !== undefined;
      at = end ?? at + 1;
    } else at++;
  }
  return line.length;
}

/** The tokens of a line's body, blanks among them; they cover it without gaps. */
export function tokenize(body: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let closes = true;
  while (at < body.length) {
    const before = body[at - 1];
    const isQuote =
      body[at] === '"' && (at === 0 || before === "," || isBlank(before));
    const end: number | undefined =
      closes && isQuote ? endOfText(body, at) : undefined;
    if (isQuote) closes = end !== undefined;
    const token: Token =
      end === undefined
        ? nextToken(body, at)
        : { kind: "text", start: at, end };
    tokens.push(token);
    at = token.end;
  }
  return tokens;
}

/** Any but a text. */
function nextToken(body: string, start: number): Token {
  // each kind begins with signs of its own
  const first = body[start] ?? "";
  const isSpace = isBlank(first);
  const isNumeric = NUMERIC.includes(first);
  const kind = isSpace ? "blank" : isNumeric ? "number" : "word";
  const end = isSpace
    ? matchEnd(BLANK, body, start)
    : isNumeric
      ? matchEnd(NUMBER, body, start)
      : endOfWord(body, start);
  if (end !== undefined) return { kind, start, end };
  return {
    kind: "symbol",
    start,
    end: start + String.fromCodePoint(body.codePointAt(start) ?? 0).length,
  };
}

function endOfWord(body: string, start: number): number | undefined {
  const end = matchEnd(ASCII_WORD, body, start);
  return isAscii(body[end ?? start]) ? end : matchEnd(WORD, body, start);
}

/** A sign that is no letter but one of ASCII; so is what follows the end of a text. */
export function isAscii(character = ""): boolean {
  return character < "\u{80}";
}
