// Looks for the one small change that lets a damaged line be read: a word left out or put for another, a comma, quotes, a name in two
// words. A change is only offered where the line reads with it and no other change of its sort does the same. It says nothing of why.
import {
  expectedIn,
  reads,
  readsWith,
  wordAt,
  wordBefore,
  type Asked,
  type Change,
  type Expected,
  type WordSpan,
} from "./asked.ts";
import { expectAfter, STOP } from "./parse.ts";
import { isName } from "./names.ts";
import { CLAUSE_WORDS } from "./vocabulary.ts";

/** A change of a line's body. */
export interface Mend extends Change {
  readonly sort:
    "insert" | "replace" | "comma" | "quote" | "join" | "comment" | "name";
  /** Of words that are joined to a name: of which entry a name belongs there. */
  readonly kind?: string | undefined;
}

/** The one change that makes the line whole, where there is one. */
export function mendOf(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Mend | undefined {
  const expected = expectedIn(body, asked);
  const word = wordAt(body, stoppedAt);
  if (word.start === body.length) return undefined;
  // where another fault follows, a word that is put in may be any that fits
  const sorts =
    asked.firstFault !== undefined
      ? [quotes, commas, joins, names]
      : [quotes, commas, insertions, replacements, joins, names];
  for (const sort of sorts) {
    const whole = sort(body, word, expected, asked).filter((mend) =>
      readsWith(body, mend, asked),
    );
    const [only, other] = whole;
    if (only !== undefined && other === undefined) return only;
  }
  return comment(body, word, expected, asked);
}

function quotes(
  body: string,
  { start }: WordSpan,
  { described }: Expected,
  asked: Asked,
): readonly Mend[] {
  const quoted = (text: string): string => `"${text}"`;
  const rest = body.slice(start);
  if (
    !described.includes("a text in quotes") ||
    !/^[\p{L}\d][^"]*$/u.test(rest)
  )
    return [];
  const [signature = ""] = SIGNED.exec(rest) ?? [];
  const said = rest.slice(0, rest.length - signature.length);
  return [
    {
      start,
      end: body.length,
      text: `${
        asked.rule === "UseFact"
          ? said
              .split(/\s*,\s*|(?<=\.thou)\s+(?:and|&)\s+/u)
              .map(quoted)
              .join(", ")
          : quoted(said)
      }${signature}`,
      sort: "quote",
    },
  ];
}

/** What ends in `by WHO on DATE` or half of it is signed. */
const SIGNED =
  /(?:(?:\s+by\s+[\p{L}\d-]+)?\s+on\s+\d+\D\d+\D\d+|\s+on\s+\d+\D\d+\D\d+\s+by\s+[\p{L}\d-]+)$/u;

function commas(
  body: string,
  word: WordSpan,
  { comma }: Expected,
): readonly Mend[] {
  const before = wordBefore(body, word.start);
  if (!comma || before === undefined) return [];
  const isAnd = ["and", "&", "+", ";"].includes(
    body.slice(word.start, word.end),
  );
  const next = isAnd ? wordAt(body, word.end) : word;
  const text = `${body.slice(before.start, before.end)}, ${body.slice(next.start, next.end)}`;
  return [{ start: before.start, end: next.end, text, sort: "comma" }];
}

function replacements(
  body: string,
  { start, end }: WordSpan,
  { words }: Expected,
  asked: Asked,
): readonly Mend[] {
  // a word of a closed choice is not told by what reads, only by what was meant
  if (1 < words.length || /^[\d."]/u.test(body.slice(start, end))) return [];
  const isDash = /^[-\u2013\u2014]$/u.test(body.slice(start, end));
  return words
    .filter((each) => isDash || isCalledFor(each, body, start, asked))
    .map((text) => ({ start, end, text, sort: "replace" }));
}

function insertions(
  body: string,
  { start, end }: WordSpan,
  { words }: Expected,
  asked: Asked,
): readonly Mend[] {
  const written = body.slice(start, end);
  return words
    .filter((each) => isCalledFor(each, body, start, asked))
    .map((word) => ({
      start,
      end,
      text: `${word} ${written}`,
      sort: "insert",
    }));
}

/** A `to` is, where the line can't end without one: a second figure makes no range of a size. */
function isCalledFor(
  word: string,
  body: string,
  start: number,
  asked: Asked,
): boolean {
  return word !== "to" || !reads(body.slice(0, start).trimEnd(), asked);
}

/** `mic-1` for `mic 1`, `main-lay-shaft` for three words: only where the first of them stands as a name. */
function joins(
  body: string,
  word: WordSpan,
  _: Expected,
  asked: Asked,
): readonly Mend[] {
  const before = wordBefore(body, word.start);
  if (before === undefined || before.start === 0) return [];
  const { described } = expectAfter(
    body.slice(0, before.start) + STOP,
    asked.rule,
  );
  if (!described.some((each) => NAMED.test(each))) return [];
  const kind = /^an? (\p{Ll}+)$/u.exec(described[0] ?? "")?.[1];
  const { start } = before;
  const first = body.slice(start, before.end);
  const next = body.slice(word.start, word.end);
  if (kind !== undefined && isOneEditFrom(first, kind))
    return [{ ...before, text: kind, sort: "replace" }];
  // two of them are no one name
  const isEntry = asked.rule.endsWith("Entry");
  if (!isEntry && /^(?:and|or|&|\+)$/u.test(next)) return [];
  const isFigure = /^\d/.test(next);
  // `with reamer 1`, where the kind is said and the name begins with a digit
  if (first === kind && isFigure)
    return [
      { ...word, text: `${kind.charAt(0)}-${inOneWord(next)}`, sort: "name" },
    ];
  // `mic-1 AK`: a figure ends a name; `by AK 5 Nov`: a date is no part of one
  const isDated = isFigure && /(?:^|\s)by\s+$/u.test(body.slice(0, start));
  if (!isName(first) || /-\d+$/.test(first) || isDated) return [];
  // where another fault follows, only `mic 1` is sure to be one name
  const isSure = /^\d+$/.test(next);
  if (asked.firstFault !== undefined && (!isSure || isEntry)) return [];
  // after `mic 1` comes a clause, and no more of its name
  const most = isFigure ? 1 : 3;
  const mends: Mend[] = [];
  for (
    let last: WordSpan = word;
    last.start < body.length && mends.length < most;
    last = wordAt(body, last.end)
  ) {
    const text = body.slice(start, last.end).replaceAll(BLANKS, "-");
    if (CLAUSE_WORDS.includes(body.slice(last.start, last.end))) break;
    mends.push({ start, end: last.end, text, sort: "join", kind });
  }
  return mends;
}

/** One letter more, less or other. */
function isOneEditFrom(word: string, other: string): boolean {
  let head = 0;
  while (head < word.length && word[head] === other[head]) head++;
  let tail = 0;
  const most = Math.min(word.length, other.length) - head;
  while (tail < most && word.at(-1 - tail) === other.at(-1 - tail)) tail++;
  const left = Math.max(word.length, other.length) - head - tail;
  return left === 1;
}

const NAMED =
  /^(?:an? (?!text|number|decimal|unit|date|class|count|stage|signed)\p{Ll}|the code of a finding$)/u;
const BLANKS = /[ \t\u{A0}]+/gu;

/** `7-8` for `7/8`, `1` for `1"` */
function inOneWord(text: string): string {
  return text.replaceAll(/[/"']+/gu, "-").replace(/-(?=,?$)/u, "");
}

/** `with r-8755` for `with 8755`. */
function names(
  body: string,
  { start, end }: WordSpan,
  { described }: Expected,
): readonly Mend[] {
  const [only, other] = described;
  const kind = /^an? (\p{Ll})\p{Ll}+$/u.exec(only ?? "")?.[1];
  if (
    kind === undefined ||
    other !== undefined ||
    !/^\d/.test(body.slice(start))
  )
    return [];
  const text = `${kind}-${inOneWord(body.slice(start, end))}`;
  return [{ start, end, text, sort: "name" }];
}

/** Words after all that the line can hold are a remark. */
function comment(
  body: string,
  { start, end: wordEnd }: WordSpan,
  { end, words }: Expected,
  asked: Asked,
): Mend | undefined {
  const before = wordBefore(body, start);
  const word = body.slice(start, wordEnd);
  if (!/^\p{L}{2}/u.test(word) || CLAUSE_WORDS.includes(word)) return undefined;
  if (
    0 < words.length ||
    !end ||
    before === undefined ||
    !reads(body.slice(0, before.end), asked)
  )
    return undefined;
  const text = `# ${body.slice(start)}`;
  return { start, end: body.length, text, sort: "comment" };
}
