// Which part of a form the caret is in: lays the words before it along the form. It reads no grammar: a line that is being typed is
// mostly none yet.
import { isBlank, tokenize } from "../../grammar/tokens.ts";
import { ENTRY_KINDS } from "../../grammar/vocabulary.ts";
import { unitOf, UNITS } from "../core/quantity/units.ts";
import type { Form, Part } from "./signature-forms.ts";

export interface InForm {
  /** The text ends within a text in quotes. */
  readonly isInText: boolean;
  /** Number of the part that is being written; undefined where nothing is left to write. */
  readonly part: number | undefined;
  /** How many words go against the form. */
  readonly misfits: number;
}

/** Where the end of a text lies in a form; the text begins with the fact's word and goes no further than the caret. */
export function placeIn(form: Form, text: string): InForm {
  const words = wordsOf(text);
  const laid = begin(form.parts);
  for (const word of words.slice(1)) take(laid, word);
  const last = words.at(-1);
  const isInText = last?.isText === true && last.isOpen;
  return { ...placeAfter(laid), isInText };
}

interface Written {
  readonly text: string;
  readonly isText: boolean;
  /** The caret touches it: more of it may come. */
  readonly isOpen: boolean;
  readonly comma: boolean;
}

/** The words of a text, parted by blanks and commas; a text that is not closed yet goes to the end. */
function wordsOf(text: string): readonly Written[] {
  const words: Written[] = [];
  const opened = openText(text);
  let start: number | undefined;
  const end = (at: number, comma: boolean): void => {
    if (start === undefined) return;
    words.push({
      text: text.slice(start, at),
      isText: text[start] === '"',
      isOpen: at === text.length && !comma,
      comma,
    });
    start = undefined;
  };
  for (const token of tokenize(opened === -1 ? text : text.slice(0, opened))) {
    const isComma =
      text[token.start] === "," &&
      (token.end === text.length || isBlank(text[token.end]));
    if (token.kind === "blank") end(token.start, false);
    else if (isComma) end(token.start, true);
    else start ??= token.start;
  }
  if (opened !== -1) start = opened;
  end(text.length, false);
  return words;
}

/** Where a text opens that is not closed. */
function openText(text: string): number {
  const closed = new Set(
    tokenize(text)
      .filter(({ kind }) => kind === "text")
      .map(({ start }) => start),
  );
  for (const { kind, start } of tokenize(text)) {
    const before = text[start - 1];
    const opens = before === "," || isBlank(before);
    // `"` after a number is the inch
    if (
      kind === "symbol" &&
      text[start] === '"' &&
      opens &&
      !closed.has(start) &&
      !/\d[ \t]*$/.test(text.slice(0, start))
    )
      return start;
  }
  return -1;
}

const NUMBER = /^[+\-\u{2212}]?(?:\d|\.\d)/u;
const FRACTION = /^\d+\/\d*$/;
const KINDS: ReadonlySet<string> = new Set(ENTRY_KINDS);

function isUnitSoFar(text: string): boolean {
  return UNITS.some(({ symbol }) => symbol.startsWith(text));
}

/** How far the words so far go along a form. */
interface Laid {
  readonly parts: readonly Part[];
  /** The part that the last word went to; -1 before the first. */
  at: number;
  /** That part has what it needs. */
  isFull: boolean;
  misfits: number;
  /** The caret touches the last word. */
  isTouched: boolean;
}

function begin(parts: readonly Part[]): Laid {
  return { parts, at: -1, isFull: true, misfits: 0, isTouched: false };
}

/** Lays one word more. */
function take(laid: Laid, word: Written): void {
  const { parts } = laid;
  laid.isTouched = word.isOpen;
  // what ends a part may lead to another one elsewhere: `on three points`, `on DATE`
  const ends =
    laid.isFull && parts[laid.at]?.trail.includes(word.text) === true;
  const led =
    word.isText || ends ? undefined : ledTo(laid, word.text, word.isOpen);
  const part = led === undefined ? undefined : parts[led];
  if (led !== undefined && part !== undefined) {
    if (led !== laid.at) goOn(laid, Math.max(led, laid.at), false);
    if (led < laid.at) laid.at = led;
    laid.isFull = part.choices.includes(word.text);
  } else if (!ends) takeValue(laid, word);
  if (!word.comma) return;
  if (parts[laid.at + 1]?.afterComma === true) laid.at++;
  laid.isFull = false;
}

function takeValue(laid: Laid, { text, isText, isOpen }: Written): void {
  const { parts } = laid;
  const isNumber = !isText && NUMBER.test(text);
  const part = parts[laid.at];
  if (!laid.isFull) {
    // the kind before a name is no name yet
    laid.isFull = !(KINDS.has(text) && part?.isNumber === false && !isOpen);
    return;
  }
  const isUnit = part?.isNumber === true && unitOf(text) !== undefined;
  if (isUnit || (isNumber && part?.name === "VALUES")) return;
  const following = next(laid, isNumber, isText);
  if (following !== undefined) {
    goOn(laid, following, true);
    // one of the words that may stand there would have led there
    if (0 < (parts[following]?.choices.length ?? 0)) laid.misfits++;
    if (KINDS.has(text) && !isNumber && !isOpen) laid.isFull = false;
  }
  // `1 3/16` is one number, and a unit may be half typed
  else if (!FRACTION.test(text) && !(isOpen && isUnitSoFar(text)))
    laid.misfits++;
}

/** To a part farther on; what the form needs in between is missing. */
function goOn(laid: Laid, part: number, isFull: boolean): void {
  for (const skipped of laid.parts.slice(laid.at + 1, part))
    if (!skipped.isOptional) laid.misfits++;
  laid.at = part;
  laid.isFull = isFull;
}

/** The part that a word leads to or is a choice of, the next one first; a clause may come in any order. */
function ledTo(
  { parts, at, isFull }: Laid,
  text: string,
  isOpen: boolean,
): number | undefined {
  const says = (part: Part): boolean =>
    [...part.lead, ...part.choices].some(
      (word) =>
        word === text ||
        (word === "+/-" && text === "\u{B1}") ||
        (isOpen && text !== "" && word.startsWith(text)),
    );
  const from = isFull ? at + 1 : Math.max(at, 0);
  const onward = parts.findIndex((part, each) => from <= each && says(part));
  if (onward !== -1) return onward;
  const back = parts.findIndex(
    (part, each) =>
      each < from && (part.isOptional || part.afterComma) && says(part),
  );
  return back === -1 ? undefined : back;
}

/** The next part that a value of this sort may go to without a word before it. */
function next(
  { parts, at, isFull }: Laid,
  isNumber: boolean,
  isText: boolean,
): number | undefined {
  for (let each = at + 1; each < parts.length; each++) {
    const part = parts[each];
    if (part === undefined) return undefined;
    const fits =
      part.lead.length === 0 &&
      !(part.afterComma && isFull && at !== -1) &&
      (part.isNumber === isNumber ||
        isText ||
        part.isText ||
        parts.length === 1);
    if (fits) return each;
    if (!part.isOptional) return undefined;
  }
  return undefined;
}

/** Where more would go. */
function placeAfter({
  parts,
  at,
  isFull,
  misfits,
  isTouched,
}: Laid): Omit<InForm, "isInText"> {
  const isDone = isFull && !isTouched;
  const isMore = parts[at]?.name === "VALUES";
  const part = isDone && !isMore ? at + 1 : Math.max(at, 0);
  return { part: part < parts.length ? part : undefined, misfits };
}
