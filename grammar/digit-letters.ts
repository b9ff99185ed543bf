// Letters that stand where digits belong, typed by a slip or read so off a photographed page: an O for 0, an l or an I for 1. It knows which
// digit each looks like, and finds the words of a damaged line that read with them.
import type { Damage } from "./explain.ts";
import { withMend, wordAt, wordBefore, type WordSpan } from "./asked.ts";
import { parseBody } from "./parse.ts";
import { IS_CLASS } from "./range-forms.ts";

const LOOKALIKE = /[OolI]/g;
const NUMBER_LIKE = /^[+\u2212-]?[\dOolI.,/-]+$/u;
/** The grade of a class such as `H1O`: one of 10 and more, of which the first digit is none of them. */
const LETTERED_GRADE = /(?<=^|\/)([A-Za-z]{1,2})(1[OolI])(?=\/|$)/gu;

/** The same with digits for the letters that look like one; as long as it was. */
export function withDigits(text: string): string {
  return text.replaceAll(LOOKALIKE, (letter) =>
    /[Oo]/.test(letter) ? "0" : "1",
  );
}

/** What is said of a number with such letters. It is never a sure mend: only who measured knows which digit it was. */
export function sayLetters(
  written: string,
  mended: string,
): Pick<Damage, "message" | "mended"> {
  return {
    message: `\`${written}\` has a letter where a digit belongs: write \`${mended}\`.`,
    mended,
  };
}

/**
 * `O.87430`, `0.8743O in`, `l2`, `H1O`: undefined where the line does not read with digits for the letters, but for a word that is a number for
 * sure: that is told though another fault follows it.
 */
export function letterForDigit(
  body: string,
  rule: string,
  stoppedAt: number,
): Damage | undefined {
  let text = body;
  let first: WordSpan | undefined;
  let last: WordSpan | undefined;
  // each word is as long as it was, and reading stops farther on with each that is mended
  for (let at: number | undefined = stoppedAt; at !== undefined;) {
    const word = lettered(text, at);
    if (word === undefined) {
      const isTold =
        first !== undefined &&
        last !== undefined &&
        last.end <= at &&
        isNumber(body, first);
      if (!isTold) return undefined;
      break;
    }
    const { start, end } = word;
    text = withMend(text, {
      start,
      end,
      text: inDigits(text.slice(start, end)),
    });
    first ??= word;
    last = word;
    at = parseBody(text, rule).damagedAt;
  }
  if (first === undefined || last === undefined) return undefined;
  const { start } = first;
  const { end } = last;
  return {
    start,
    end,
    ...sayLetters(body.slice(start, end), text.slice(start, end)),
  };
}

/** The word with such a letter in which reading stopped, or after which: `6O F` stops at its unit. */
function lettered(body: string, at: number): WordSpan | undefined {
  const here = wordAt(body, at);
  const before = wordBefore(body, here.start);
  const whole = (word: WordSpan): WordSpan => {
    // the comma of a list is no part of the number before it
    const isListed = body[word.end - 1] === ",";
    return { ...word, end: isListed ? word.end - 1 : word.end };
  };
  if (isLettered(body.slice(here.start, here.end))) return whole(here);
  if (before === undefined) return undefined;
  const text = body.slice(before.start, before.end);
  // a word of letters alone that was read is a name
  return isLettered(text) && /\d/.test(text) ? whole(before) : undefined;
}

/** `2O.1`, `O.87`, and no name such as `l2` */
function isNumber(body: string, { start, end }: WordSpan): boolean {
  return /^[+\u2212-]?(?:\d|[OolI]?\.[\dOolI])/u.test(body.slice(start, end));
}

function isLettered(text: string): boolean {
  return inDigits(text) !== text;
}

/** A number or a class of size with digits for its letters; any other word as it is. */
function inDigits(text: string): string {
  if (NUMBER_LIKE.test(text)) return withDigits(text);
  const whole = text.replaceAll(
    LETTERED_GRADE,
    (_, letters: string, grade: string) => letters + withDigits(grade),
  );
  return IS_CLASS.test(whole) ? whole : text;
}
