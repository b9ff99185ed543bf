// The traps of names and signatures: a clause word for a name, a name that begins with a digit, a date in words, a name and a date
// without their `by` and `on`.
import type { Damage } from "./explain.ts";
import { readsOnWith, readsWith, type Asked } from "./asked.ts";
import { isName } from "./names.ts";
import { tokenize } from "./tokens.ts";
import { CLAUSE_WORDS } from "./vocabulary.ts";

/** The second word of an opening line is its name: a clause word or a word that begins with a digit can't be one. */
export function wordAsName(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  if (!asked.rule.endsWith("Entry")) return undefined;
  const [first, second] = tokenize(body).filter(
    (token) => token.kind !== "blank",
  );
  if (first === undefined || second === undefined) return undefined;
  const { start } = second;
  const end =
    second.kind === "text"
      ? second.end
      : body.slice(start).search(/[ \t\u{A0}]|$/u) + start;
  const word = body.slice(start, end);
  const kind = body.slice(first.start, first.end);
  if (CLAUSE_WORDS.includes(word)) {
    const mended = [`${word}-1`, `${kind}-1 ${word}`].find((text) =>
      readsWith(body, { start, end, text }, asked),
    );
    return {
      start,
      end,
      message: `A name is missing here: \`${word}\` opens a clause and can't be a name.`,
      ...(mended === undefined ? {} : { mended }),
    };
  }
  if (isName(word)) return undefined;
  const hyphened = word
    .replaceAll(/[^\p{L}\d]+/gu, "-")
    .replaceAll(/^-|-$/gu, "");
  const text = /^\d/.test(hyphened)
    ? `${kind.charAt(0)}-${hyphened}`
    : hyphened;
  // another fault that follows is told next
  const helps = readsOnWith(body, { start, end, text }, asked.rule, stoppedAt);
  return {
    start,
    end,
    message: `\`${word}\` can't be a name: a name is letters, digits and hyphens, and begins with a letter.${helps ? ` Write \`${text}\`.` : ""}`,
    ...(helps ? { mended: text } : {}),
  };
}

/** `oil SAE 30 at 120 F`, whose grade is the name of what is shipped */
export function gradeAsName(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const found = /(?<=^oil\s+)(?:SAE|ISO(?:\s+VG)?|VG)\s+\d\S*/iu.exec(body);
  if (found === null || asked.rule !== "OilFact") return undefined;
  const { 0: text, index: start } = found;
  const end = start + text.length;
  const mended = text
    .toLowerCase()
    .replaceAll(/\s+/gu, "-")
    .replace(/^(?:iso-)?(?:vg-)?(?=\d)/u, "iso-vg-");
  const change = { start, end, text: mended };
  if (!readsOnWith(body, change, asked.rule, stoppedAt) && end < body.length)
    return undefined;
  return {
    start,
    end,
    message: `An oil is named in one word: write \`${mended}\`.`,
    mended,
  };
}

const MONTHS = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec";
const DATE_IN_WORDS = new RegExp(
  String.raw`(?<![\p{L}\d])(?:\d{1,2}(?:st|nd|rd|th)?[\s.-]*(?:${MONTHS})\p{L}*\.?[\s,-]*\d{2,4}` +
    String.raw`|(?:${MONTHS})\p{L}*\.?\s*\d{1,2}(?:st|nd|rd|th)?,?\s+\d{4}` +
    String.raw`|\d{4}[-/.]\d{1,2}(?![-/.\d])|\d+[-/.]\d+[-/.]\d+T[\d:.]+\p{L}*|\d{8}|today|yesterday|tomorrow|now)(?![\p{L}\d])`,
  "giu",
);

/** `2 Nov 2026`, `November 2, 2026`, a day with its hour. */
export function dateInWords(
  body: string,
  stoppedAt: number,
): Damage | undefined {
  for (const found of body.matchAll(DATE_IN_WORDS)) {
    const end = found.index + found[0].length;
    const place = body.slice(0, found.index).trimEnd();
    // a part may be called `now`: what stops behind it is another fault
    if (stoppedAt < found.index || end <= stoppedAt) continue;
    if (!/(?:^|\s)(?:on|opened|done|calibrated|due)$/u.test(place)) continue;
    return { start: found.index, end, code: "date-wrong", message: "" };
  }
  return undefined;
}

/** `AK 2026-11-02` for `by AK on 2026-11-02` */
export function bareSignature(body: string, asked: Asked): Damage | undefined {
  const found =
    /(?<=\s)(?:by\s+)?(?!dated?\s)(?:"[^"]*"|\p{L}[\p{L}\d-]*)[\s,]+\d+[-/.]\d+[-/.]\d+$/u.exec(
      body,
    );
  if (found === null) return undefined;
  const mended = found[0].replace(
    /(?:by\s+)?(.*?)[\s,]+(\S+)$/u,
    "by $1 on $2",
  );
  if (
    !readsWith(
      body,
      { start: found.index, end: body.length, text: mended },
      asked,
    )
  )
    return undefined;
  return {
    start: found.index,
    end: body.length,
    message: `Who and when are written \`${mended}\`.`,
    mended,
    safe: true,
  };
}
