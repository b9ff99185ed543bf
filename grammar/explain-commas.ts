// The traps of commas: those that stand where none belongs, before more of the line or before a remark, and one that is missing behind a
// number whose unit was left out.
import type { Damage } from "./explain.ts";
import {
  expectedIn,
  readsOnWith,
  readsWhole,
  withMend,
  wordAt,
  wordBefore,
  type Asked,
  type Change,
  type WordSpan,
  readsWholeWith,
  textAt,
} from "./asked.ts";
import { parseBody } from "./parse.ts";
import { CLAUSE_WORDS } from "./vocabulary.ts";

/** `load 4 kN, steady`, `read 0.8743 with mic-1, at 68 F, by AK`, `load 4 kN, steady, wet` */
export function needlessComma(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const words: WordSpan[] = [];
  let text = body;
  let known: Damage | undefined;
  // reading goes farther with each that is taken out
  for (let at: number | undefined = stoppedAt; at !== undefined;) {
    const word = commaAt(text, at, asked.rule);
    if (word === undefined)
      return (
        remarkAfter(body, text, at, words[0], asked) ??
        (asked.firstFault === undefined ? undefined : known)
      );
    text = withMend(text, commaOut(text, word));
    words.push({ ...word, end: word.end - 1 });
    at = parseBody(text, asked.rule).damagedAt;
    const isPast = at === undefined || wordAt(text, word.end).start < at;
    if (isPast) known = commasOut(text, words);
  }
  return known;
}

/** @param words of the text, behind which the body has commas */
function commasOut(
  text: string,
  words: readonly WordSpan[],
): Damage | undefined {
  const [first, last] = [words[0], words.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const { end } = wordAt(text, last.end);
  const mended = text.slice(first.start, end);
  return {
    start: first.start,
    end: end + words.length,
    message: `No comma${words.length === 1 ? " stands" : "s stand"} here: write \`${mended}\`.`,
    mended,
    // two numbers may have been meant as two
    safe: words.every(
      (word) => !/^[.\d]/u.test(textAt(text, wordAt(text, word.end))),
    ),
  };
}

/** The word with a comma at its end in which reading stopped, or after which, where it goes farther without. */
function commaAt(text: string, at: number, rule: string): WordSpan | undefined {
  const here = wordAt(text, at);
  return [wordBefore(text, here.start), here].find(
    (word) =>
      word !== undefined &&
      /[^,],$/u.test(textAt(text, word)) &&
      wordAt(text, word.end).start < text.length &&
      readsOnWith(text, commaOut(text, word), rule, at),
  );
}

function commaOut(text: string, word: WordSpan): Change {
  return { ...word, text: textAt(text, word).slice(0, -1) };
}

/** What is left of the text where it can end: a remark. The body has commas that the text has not, the first behind a word. */
function remarkAfter(
  body: string,
  text: string,
  at: number,
  word: WordSpan | undefined,
  asked: Asked,
): Damage | undefined {
  const first = word?.start;
  const { start } = wordAt(text, at);
  const head = text.slice(0, start).trimEnd();
  if (
    first === undefined ||
    !/^\p{L}{2}/u.test(text.slice(start)) ||
    CLAUSE_WORDS.includes(textAt(text, wordAt(text, start))) ||
    0 < expectedIn(text, asked).words.length ||
    !readsWhole(head, asked)
  )
    return undefined;
  const mended = `${head.slice(first)} # ${text.slice(start)}`;
  return {
    start: first,
    end: body.length,
    message: nothingMore(asked.rule, mended),
    mended,
  };
}

/** What is said of words after all that a line can hold. */
export function nothingMore(rule: string, mended: string): string {
  return `Nothing more can follow here: ${rule.endsWith("Entry") ? "each fact stands on a line of its own below, and " : ""}a remark goes behind a \`#\`, as in \`${mended}\`.`;
}

/** `hot shaft 60 case 40`, whose `case` was read as the unit of 60; `oscillates 60 deg at 60 per min` */
export function missingComma(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const here = wordAt(body, stoppedAt);
  const unit = wordBefore(body, here.start);
  const figure = unit === undefined ? undefined : wordBefore(body, unit.start);
  if (unit === undefined || figure === undefined) return undefined;
  const [first, next] =
    textAt(body, here) === "at"
      ? [unit, wordAt(body, here.end)]
      : [figure, unit];
  const mended = `${textAt(body, first)}, ${textAt(body, next)}`;
  const { start } = first;
  const { end } = next;
  if (
    !/\d\D*$/u.test(textAt(body, figure)) ||
    !readsWholeWith(body, { start, end, text: mended }, asked)
  )
    return undefined;
  return {
    start,
    end,
    message: `A comma parts what stands in a row: write \`${mended}\`.`,
    mended,
  };
}

/** `hot shaft 140 F bush 135 F case 130 F`, where more than one is missing */
export function missingCommas(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  // of names alone it may be one in several words
  if (!/\d/.test(body)) return undefined;
  let text = body;
  let start: number | undefined;
  let end = 0;
  let count = 0;
  for (let at: number | undefined = stoppedAt; at !== undefined;) {
    const here = wordAt(text, at);
    const before = wordBefore(text, here.start);
    if (before === undefined || !expectedIn(text, asked).comma)
      return undefined;
    const change = { ...before, text: `${textAt(text, before)},` };
    if (!readsOnWith(text, change, asked.rule, at)) return undefined;
    text = withMend(text, change);
    start ??= before.start;
    end = here.end + 1;
    count++;
    at = parseBody(text, asked.rule).damagedAt;
  }
  if (start === undefined || count < 2) return undefined;
  const mended = text.slice(start, end);
  return {
    start,
    end: body.length - (text.length - end),
    message: `Commas part what stands in a row: write \`${mended}\`.`,
    mended,
  };
}

/** `oil sae-30, 120 F`, `bush a, hole b`: a comma for the one word that belongs there */
export function commaForWord(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const { start, end } = wordAt(body, stoppedAt);
  const next = wordAt(body, end);
  const text = body.slice(start, end);
  const [only, other] = expectedIn(body, asked).words;
  // a range or a date may be no more than what follows
  if (
    only === undefined ||
    other !== undefined ||
    ["to", "on"].includes(only) ||
    !/[^,],$/u.test(text) ||
    next.start === body.length
  )
    return undefined;
  const mended = `${text.slice(0, -1)} ${only} ${textAt(body, next)}`;
  const change = { start, end: next.end, text: mended };
  if (!readsWholeWith(body, change, asked)) return undefined;
  return {
    start,
    end: next.end,
    message: `A word stands here, and no comma: write \`${mended}\`.`,
    mended,
  };
}
