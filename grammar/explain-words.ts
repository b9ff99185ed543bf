// The traps of little words: one that stands twice, is shortened, runs on into what follows, or is spoken and not written.
import type { Damage } from "./explain.ts";
import {
  readsWith,
  wordAt,
  wordBefore,
  type Asked,
  readsWholeWith,
  textAt,
} from "./asked.ts";
import { replaced } from "./replaced.ts";
import { CLAUSE_WORDS } from "./vocabulary.ts";

/** `oil sae-30 at at 120 F` */
export function doubledWord(body: string, asked: Asked): Damage | undefined {
  for (const { 0: text, index } of body.matchAll(
    /(?<=^|\s)(\S+)\s+\1(?=\s|$)/gu,
  )) {
    const end = index + text.length;
    const word = text.slice(0, text.search(/\s/u));
    if (!readsWith(body, { start: index, end, text: word }, asked)) continue;
    return {
      start: index,
      end,
      message: `\`${word}\` stands twice in a row: write it once.`,
      mended: word,
      safe: /^\p{L}/u.test(word),
    };
  }
  return undefined;
}

/** `w/ mic-1` and `w mic-1` for `with mic-1`, `@ 68 F` for `at 68 F` */
export function shorthand(body: string, asked: Asked): Damage | undefined {
  return replaced(
    body,
    asked,
    SHORT,
    (mark) => (mark.startsWith("@") ? "at " : "with "),
    { says: () => "`with` and `at` are written out.", safe: true },
  );
}

const SHORT = /(?<=\s)(?:(?:w\/|@)\s*|w\.?\s+)(?=\S)/gu;

/** Words of speech that change nothing of the number behind them. */
const SPOKEN =
  /^(?:at|of|is|are|was|about|approx\.?|ca\.?|the|dia\.?|diam\.?|diameter)$/iu;

/** Marks of which the same is true, but behind a number. */
const MARK = /^(?:[@~=\u00B1]|\+\/-)$/u;

const FIGURE = /^[+\u2212-]?(?:\d+\s+\d+\/\d+(?!\S)|\.?\d\S*)/u;

/** `runs at 300 rpm`, `length of 30 mm` */
export function spokenWord(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const { start, end } = wordAt(body, stoppedAt);
  const word = body.slice(start, end);
  const next = wordAt(body, end).start;
  const figure = FIGURE.exec(body.slice(next))?.[0];
  if (
    figure === undefined ||
    !(
      SPOKEN.test(word) ||
      (MARK.test(word) && !endsInNumber(body.slice(0, start)))
    ) ||
    !readsWholeWith(body, { start, end: next, text: "" }, asked)
  )
    return undefined;
  return {
    start,
    end: next + figure.length,
    message: `\`${word}\` is not written here: write \`${figure}\`.`,
    mended: figure,
  };
}

/** `byAK`, `at68 F`, `withmic-1`, `Ra16`, `SAE30` */
export function gluedWord(body: string, asked: Asked): Damage | undefined {
  for (const { 0: text, index, groups } of body.matchAll(GLUED)) {
    const mended = `${groups?.word ?? ""} ${groups?.rest ?? ""}`;
    const change = { start: index, end: index + text.length, text: mended };
    // a small letter goes on with a word as well
    const isOneWord = /^\p{Ll}/u.test(groups?.rest ?? "");
    const isMeant = isOneWord
      ? readsWholeWith(body, change, asked)
      : readsWith(body, change, asked);
    if (!isMeant) continue;
    return {
      start: index,
      end: index + text.length,
      message: `\`${groups?.word ?? ""}\` is a word of its own: write \`${mended}\`.`,
      mended,
      safe: !isOneWord,
    };
  }
  return undefined;
}

const GLUED = new RegExp(
  String.raw`(?<=\s)(?<word>${[...CLAUSE_WORDS, "Ra", "Rz", "SAE", "VG"].join("|")})(?<rest>[\p{L}\d"][^ \t\u00A0]*)`,
  "gu",
);

/** `drive by hand`, `journal a on the shaft` */
export function needlessWord(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const here = wordAt(body, stoppedAt);
  for (const word of [wordBefore(body, here.start), here]) {
    if (word === undefined || !NEEDLESS.test(textAt(body, word))) continue;
    const next = wordAt(body, word.end);
    const mended = textAt(body, next);
    const change = { start: word.start, end: next.end, text: mended };
    // behind a number the next one would be its unit
    if (
      !/^\p{L}/u.test(mended) ||
      endsInNumber(body.slice(0, word.start)) ||
      !readsWholeWith(body, change, asked)
    )
      continue;
    return {
      start: word.start,
      end: next.end,
      message: `\`${textAt(body, word)}\` is not written here: write \`${mended}\`.`,
      mended,
    };
  }
  return undefined;
}

const NEEDLESS = new RegExp(
  `^(?:the|is|are|was|for|${CLAUSE_WORDS.join("|")})$`,
  "u",
);

/** `press front of bush front into hole front` */
export function wordRunOn(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const { start, end } = wordAt(body, stoppedAt);
  const text = body.slice(start, stoppedAt);
  const word = body.slice(start, end);
  if (
    text === "" ||
    !/^\p{L}+$/u.test(word) ||
    !readsWholeWith(body, { start, end, text }, asked)
  )
    return undefined;
  return {
    start,
    end,
    message: `\`${word}\` does not fit here: write \`${text}\`.`,
    mended: text,
  };
}

/** `bolts 20 N.m`, `viscosity 20 mPa.s at 40 C` */
export function pointInUnit(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const place = wordAt(body, stoppedAt);
  const word = textAt(body, place);
  const text = word.replaceAll(".", "-");
  const before = wordBefore(body, place.start);
  if (
    before === undefined ||
    !/^\p{L}[\p{L}.]*\.\p{L}+$/u.test(word) ||
    !/\d$/u.test(textAt(body, before)) ||
    // of two that have points, the other is told next
    !readsWith(body, { ...place, text }, asked)
  )
    return undefined;
  return {
    ...place,
    message: `A unit has no point in it: write \`${text}\`.`,
    mended: text,
  };
}

function endsInNumber(text: string): boolean {
  return /\d\s*$/u.test(text);
}
