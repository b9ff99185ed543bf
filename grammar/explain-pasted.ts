// The traps of text that was pasted: characters that look like those of a keyboard, or like nothing, and are others.
import type { Asked } from "./asked.ts";
import type { Damage } from "./explain.ts";
import { replaced } from "./replaced.ts";

interface Pasted {
  readonly pattern: RegExp;
  readonly by: (text: string) => string;
  readonly says: (mended: string) => string;
}

/** The first of them that the line reads without. */
export function pasted(body: string, asked: Asked): Damage | undefined {
  for (const { pattern, by, says } of PASTED) {
    const found = replaced(body, asked, pattern, by, {
      says,
      // a text in quotes may have them as it likes
      safe: !body.includes('"'),
    });
    if (found !== undefined) return found;
  }
  return undefined;
}

const BLANKS = String.raw`\u1680\u2000-\u200A\u202F\u205F\u3000`;
/** Zero-width blanks and joiners, a byte order mark, a soft hyphen, marks of direction. */
const UNSEEN = String.raw`\u00AD\u200B-\u200F\u2060\u202A-\u202E\u2066-\u2069\uFEFF`;
const DASHES = String.raw`\u2010-\u2015\uFE63\uFF0D`;
const FRACTIONS = String.raw`\u00BC-\u00BE\u2150\u2151\u2153-\u215E`;

/** The words that hold a character of a class, with what stands on both sides of it. */
function wordsWith(characters: string): RegExp {
  return new RegExp(
    String.raw`[^ \t\u00A0]*[${characters}][^ \t\u00A0]*`,
    "gu",
  );
}

/** Whether text begins with characters that do not show, or blanks of another sort; how many. */
export function unseenBefore(body: string): number {
  return UNSEEN_BEFORE.exec(body)?.[0].length ?? 0;
}

const UNSEEN_BEFORE = new RegExp(`^[${BLANKS}${UNSEEN}]*`, "u");

const PASTED: readonly Pasted[] = [
  {
    pattern: wordsWith(BLANKS),
    by: (text) => text.replaceAll(new RegExp(`[${BLANKS}]+`, "gu"), " "),
    says: (mended) =>
      `A blank stands here that is not the space bar's, as in pasted text: write \`${mended}\`.`,
  },
  {
    pattern: wordsWith(UNSEEN),
    by: (text) => text.replaceAll(new RegExp(`[${UNSEEN}]+`, "gu"), ""),
    says: (mended) =>
      `A character stands here that does not show, as in pasted text: write \`${mended}\`.`,
  },
  {
    // the blank of `1 3/16` is a plain one
    pattern: /(?<=\d)[\u00A0\t]+(?=\d+\/\d)/gu,
    by: () => " ",
    says: () =>
      "A whole number and its fraction are parted by one plain blank.",
  },
  {
    // as a sign, within a name, within a date; between two sizes it is a range's
    pattern: new RegExp(
      String.raw`(?<![^\s/])[${DASHES}](?=[.\d])|(?<=\p{L})[${DASHES}](?=[\p{L}\d])|(?<=\d)[${DASHES}](?=\p{L})` +
        String.raw`|(?<!\d)\d{4}[${DASHES}]\d{1,2}[${DASHES}]\d{1,2}(?!\d)`,
      "gu",
    ),
    by: (text) => text.replaceAll(new RegExp(`[${DASHES}]`, "gu"), "-"),
    says: (mended) =>
      mended.length === 1
        ? "The dash here is not the keyboard's, as in pasted text: write `-`."
        : `A dash here is not the keyboard's, as in pasted text: write \`${mended}\`.`,
  },
  {
    pattern: new RegExp(
      String.raw`(?<!\S)(?:\d+\s*)?(?:[${FRACTIONS}]|\d+\u2044\d+)`,
      "gu",
    ),
    by: (text) =>
      text
        .replace(/(?<=\d)(?:\s+(?=\d)|\s*(?=[^\d\s\u2044]))/u, " ")
        .normalize("NFKC")
        .replace("\u2044", "/"),
    says: (mended) =>
      `A fraction is written with a slash: write \`${mended}\`.`,
  },
  {
    pattern:
      /(?<=\d)\s*(?:''|\u2032\u2032|[\u2033\u201C\u201D\u02BA\uFF02])(?=[\s,]|$)/gu,
    by: () => '"',
    says: () => 'Inches are marked by a plain double quote: `"`.',
  },
  {
    pattern:
      /(?<=\d)\s*(?:(?:deg(?:rees?)?\.?|[\u00B0\u00BA\u02DA])\s+[CFcf](?![\p{L}\d])|[\u2103\u2109])/gu,
    by: (text) => ` ${/[Ff\u2109]$/u.test(text) ? "F" : "C"}`,
    says: (mended) =>
      `The unit of a temperature is one word: write \`${mended.trim()}\`.`,
  },
  {
    pattern: /[\u3380-\u33DF]/gu,
    by: (text) => text.normalize("NFKC").replaceAll("\u03BC", "\u00B5"),
    says: (mended) =>
      `A unit is written in plain letters: write \`${mended}\`.`,
  },
];
