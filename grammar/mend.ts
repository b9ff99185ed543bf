// Looks for the one small change that lets a damaged line be read: a word left out or put for another, a comma, quotes, a name in two
// words. A change is only offered where the line reads with it and no other change of its sort does the same. It says nothing of why.
import { keepIn } from "./kept.ts";
import { expectAfter, parseBody } from "./parse.ts";
import { isName } from "./names.ts";
import { shapeOf } from "./shape.ts";
import { isBlank } from "./tokens.ts";
import { CLAUSE_WORDS } from "./vocabulary.ts";

/** A change of a line's body. */
export interface Mend {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly sort:
    "insert" | "replace" | "comma" | "quote" | "join" | "comment" | "name";
}

/** What thou.ohm would take where reading stopped. */
export interface Expected {
  /** Words that may stand there as they are, those of a closed choice among them. */
  readonly words: readonly string[];
  /** A comma may stand there. */
  readonly comma: boolean;
  /** The line may end there. */
  readonly end: boolean;
  /** What else may stand there: "a reamer", "a text in quotes". */
  readonly described: readonly string[];
}

/** Where a word of the body starts and ends. */
export interface WordSpan {
  readonly start: number;
  readonly end: number;
}

/** The word that holds an offset, or the next one; both ends are the body's length where none follows. */
export function wordAt(body: string, offset: number): WordSpan {
  let start = offset;
  while (isBlank(body[start])) start++;
  if (start === body.length) return { start, end: start };
  const end = body.slice(start).search(/[ \t\u{A0}]|$/u) + start;
  while (0 < start && !isBlank(body[start - 1])) start--;
  return { start, end };
}

/** The word before an offset; undefined where there is none. */
export function wordBefore(body: string, offset: number): WordSpan | undefined {
  let end = offset;
  while (isBlank(body[end - 1])) end--;
  return end === 0 ? undefined : { ...wordAt(body, end - 1), end };
}

export function withMend(
  body: string,
  { start, end, text }: Pick<Mend, "start" | "end" | "text">,
): string {
  return body.slice(0, start) + text + body.slice(end);
}

/** The line that is explained as far as its first fault, and where reading of it stopped. */
let firstFault:
  { readonly body: string; readonly stoppedAt: number } | undefined;

/** What `explain` says where a change counts that lets reading go past it, though another fault follows. */
export function asFirstFault<T>(
  body: string,
  stoppedAt: number,
  explain: () => T,
): T {
  firstFault = { body, stoppedAt };
  try {
    return explain();
  } finally {
    firstFault = undefined;
  }
}

export function isFirstFault(): boolean {
  return firstFault !== undefined;
}

/** Whether a rule of thou.ohm reads the body; within `asFirstFault`, or reads on past all that is changed in it. */
export function reads(body: string, rule: string): boolean {
  const { damagedAt } = parseBody(body, rule);
  if (damagedAt === undefined) return true;
  // what breaks off lacks something, and what is cut off is no change
  if (firstFault === undefined || damagedAt === body.length) return false;
  const left = body.length - damagedAt;
  return (
    left < firstFault.body.length - firstFault.stoppedAt &&
    firstFault.body.endsWith(body.slice(-left))
  );
}

/** Whether a rule reads the whole body, wherever it is asked. */
export function readsWhole(body: string, rule: string): boolean {
  return parseBody(body, rule).damagedAt === undefined;
}

/** Whether it reads the body with a change. */
export function readsWith(
  body: string,
  change: Pick<Mend, "start" | "end" | "text">,
  rule: string,
): boolean {
  return reads(withMend(body, change), rule);
}

/** Whether it reads the body with a change, or stops behind where it stopped: another fault may follow. */
export function readsOnWith(
  body: string,
  change: Pick<Mend, "start" | "end" | "text">,
  rule: string,
  stoppedAt: number,
): boolean {
  return asFirstFault(body, stoppedAt, () => readsWith(body, change, rule));
}

const MOST_SHAPES = 2_000;
const expectations = new Map<string, Expected>();

/** What may stand where reading stopped. Lines of one shape stop alike, so that each shape is asked about once. */
export function expectedIn(body: string, rule: string): Expected {
  const key = `${rule} ${shapeOf(body).key}`;
  const known = expectations.get(key);
  if (known !== undefined) return known;
  const { words, described } = expectAfter(body, rule);
  const expected: Expected = {
    words: [
      ...words.filter((word) => /\p{L}{2}/u.test(word)),
      ...described.flatMap((each) => choicesIn(each)),
    ],
    comma: words.includes(","),
    end: described.includes("end of input"),
    described: described.filter(
      (each) => each !== "end of input" && choicesIn(each).length === 0,
    ),
  };
  keepIn(expectations, MOST_SHAPES, key, expected);
  return expected;
}

const STAGES = ["bought", "pressed", "roughed", "finished", "run"];

/** The words of a closed choice, which thou.ohm describes as "hand or machine". */
function choicesIn(description: string): readonly string[] {
  if (description === "a stage") return STAGES;
  return /^\w+(?:, \w+)* or \w+$/.test(description)
    ? description.split(/, | or /)
    : [];
}

/** The one change that makes the line whole, where there is one. */
export function mendOf(
  body: string,
  rule: string,
  stoppedAt: number,
): Mend | undefined {
  const expected = expectedIn(body, rule);
  const word = wordAt(body, stoppedAt);
  if (word.start === body.length) return undefined;
  // where another fault follows, a word that is put in may be any that fits
  const sorts = isFirstFault()
    ? [quotes, commas, joins, names]
    : [quotes, commas, insertions, replacements, joins, names];
  for (const sort of sorts) {
    const whole = sort(body, word, expected, rule).filter((mend) =>
      readsWith(body, mend, rule),
    );
    const [only, other] = whole;
    if (only !== undefined && other === undefined) return only;
  }
  return comment(body, word, expected, rule);
}

function quotes(
  body: string,
  { start }: WordSpan,
  { described }: Expected,
  rule: string,
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
        rule === "UseFact"
          ? said
              .split(/\s*,\s*/u)
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
  rule: string,
): readonly Mend[] {
  // a word of a closed choice is not told by what reads, only by what was meant
  if (1 < words.length || /^[\d."]/u.test(body.slice(start, end))) return [];
  const isDash = /^[-\u2013\u2014]$/u.test(body.slice(start, end));
  return words
    .filter((each) => isDash || isCalledFor(each, body, start, rule))
    .map((text) => ({ start, end, text, sort: "replace" }));
}

function insertions(
  body: string,
  { start, end }: WordSpan,
  { words }: Expected,
  rule: string,
): readonly Mend[] {
  const written = body.slice(start, end);
  return words
    .filter((each) => isCalledFor(each, body, start, rule))
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
  rule: string,
): boolean {
  return word !== "to" || !reads(body.slice(0, start).trimEnd(), rule);
}

/** `mic-1` for `mic 1`, `main-lay-shaft` for three words: only where the first of them stands as a name. */
function joins(
  body: string,
  word: WordSpan,
  _: Expected,
  rule: string,
): readonly Mend[] {
  const before = wordBefore(body, word.start);
  if (before === undefined || before.start === 0) return [];
  const { described } = expectAfter(body.slice(0, before.start), rule);
  if (!described.some((each) => NAMED.test(each))) return [];
  const kind = /^an? (\p{Ll}+)$/u.exec(described[0] ?? "")?.[1];
  if (
    kind !== undefined &&
    isOneEditFrom(body.slice(before.start, before.end), kind)
  )
    return [{ ...before, text: kind, sort: "replace" }];
  // two of them are no one name
  if (
    !rule.endsWith("Entry") &&
    /^(?:and|or|&|\+)$/u.test(body.slice(word.start, word.end))
  )
    return [];
  const { start } = before;
  // `mic-1 AK`: a figure ends a name; `by AK 5 Nov`: a date is no part of one
  const first = body.slice(start, before.end);
  const isDated =
    /^\d/.test(body.slice(word.start)) &&
    /(?:^|\s)by\s+$/u.test(body.slice(0, start));
  if (!isName(first) || /-\d+$/.test(first) || isDated) return [];
  // where another fault follows, only `mic 1` is sure to be one name
  const isSure = /^\d+$/.test(body.slice(word.start, word.end));
  if (isFirstFault() && (!isSure || rule.endsWith("Entry"))) return [];
  // after `mic 1` comes a clause, and no more of its name
  const most = /^\d/.test(body.slice(word.start)) ? 1 : 3;
  const mends: Mend[] = [];
  for (
    let last: WordSpan = word;
    last.start < body.length && mends.length < most;
    last = wordAt(body, last.end)
  ) {
    const text = body.slice(start, last.end).replaceAll(BLANKS, "-");
    if (CLAUSE_WORDS.includes(body.slice(last.start, last.end))) break;
    mends.push({ start, end: last.end, text, sort: "join" });
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
  /^an? (?!text|number|decimal|unit|date|class|count|stage|signed)\p{Ll}/u;
const BLANKS = /[ \t\u{A0}]+/gu;

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
  const text = `${kind}-${body.slice(start, end)}`;
  return [{ start, end, text, sort: "name" }];
}

/** Words after all that the line can hold are a remark. */
function comment(
  body: string,
  { start, end: wordEnd }: WordSpan,
  { end, words }: Expected,
  rule: string,
): Mend | undefined {
  const before = wordBefore(body, start);
  const word = body.slice(start, wordEnd);
  if (!/^\p{L}{2}/u.test(word) || CLAUSE_WORDS.includes(word)) return undefined;
  if (
    0 < words.length ||
    !end ||
    before === undefined ||
    !reads(body.slice(0, before.end), rule)
  )
    return undefined;
  const text = `# ${body.slice(start)}`;
  return { start, end: body.length, text, sort: "comment" };
}
