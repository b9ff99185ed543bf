// The traps of ranges: one that is written otherwise than with `to` (range-forms.ts has the forms), one end alone, a class without its size,
// and words behind it that say where it is from.
import type { Damage } from "./explain.ts";
import { reads, readsWith, type Asked } from "./asked.ts";
import {
  AND_OR_TO,
  CLASS,
  CLASS_FIRST,
  FORMS,
  group,
  LEAST_OR_MOST,
  marked,
  ONE_SIDED,
  ONE_SIZE,
  said,
} from "./range-forms.ts";

const ONLY_RANGE = /(?:Limits|Want|WantHot|Stock|Expands|Cut)Fact/;

/** A range of lengths or torques in other marks than the language's; undefined where the line has another fault. */
export function rangeTrap(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const turned = classFirst(body, asked);
  if (turned !== undefined) return turned;
  const ends = leastAndMost(body, asked);
  if (ends !== undefined) return ends;
  const oneSided = ONE_SIDED.exec(body);
  if (oneSided !== null) return oneSize(body, asked, oneSided.index);
  const start = /(?<=\s)[+\u2212-]?\.?\d/u.exec(body)?.index;
  if (start === undefined) return classAlone(body, asked);
  const rest = body.slice(start);
  // `1-3/16` and `1 5/8` are no two sizes
  if (ONE_SIZE.test(rest))
    return stoppedAt === body.length ? oneSize(body, asked, start) : undefined;
  // where another fault follows, what may be one size is not taken for two
  if (asked.firstFault !== undefined && !ONLY_RANGE.test(asked.rule))
    return undefined;
  return (
    betweenTwo(body, asked, start) ??
    otherFormAndSource(body, asked, start) ??
    otherForm(body, asked, start) ??
    source(body, asked)
  );
}

/** `want between 0.02 and 0.04`, `limits from 0.874 to 0.875` */
function betweenTwo(
  body: string,
  asked: Asked,
  start: number,
): Damage | undefined {
  const word = /(?<=\s)(?:between|from)\s+$/iu.exec(body.slice(0, start));
  const found = AND_OR_TO.exec(body.slice(start));
  const wording = found === null ? undefined : marked(found);
  if (word === null || found === null || wording === undefined)
    return undefined;
  const [from, end] = [word.index, start + found[0].length];
  const { text } = wording;
  if (!readsWith(body, { start: from, end, text }, asked)) return undefined;
  const message =
    group(found, "mark") === "to"
      ? `\`${word[0].trim()}\` is not written here: write ${said(text)}.`
      : wording.message;
  return { start: from, end, message, mended: text };
}

/** @param start of the first size */
function otherForm(
  body: string,
  asked: Asked,
  start: number,
): Damage | undefined {
  const rest = body.slice(start);
  for (const [form, wording] of FORMS) {
    const found = form.exec(rest);
    if (found === null) continue;
    const said = wording(found);
    if (said === undefined) continue;
    const end = start + found[0].length;
    if (!readsWith(body, { start, end, text: said.text }, asked)) continue;
    const { message, text, safe } = said;
    return { start, end, message, mended: text, safe };
  }
  return undefined;
}

/** `limits 0.8740 to 0.8745 drawing L-204` */
function source(body: string, asked: Asked): Damage | undefined {
  for (const { head, start, from, message } of sourcesIn(body, asked))
    if (reads(head, asked))
      return { start, end: body.length, message, mended: from };
  return undefined;
}

/** `limits 25 H 7 drawing L-204`, whose `drawing` is no unit */
function otherFormAndSource(
  body: string,
  asked: Asked,
  first: number,
): Damage | undefined {
  for (const { head, from, message } of sourcesIn(body, asked)) {
    // `1-3/16` is no two sizes, and a head that reads has but one fault
    if (ONE_SIZE.test(head.slice(first)) || reads(head, asked)) continue;
    const size = otherForm(head, asked, first);
    if (size?.mended === undefined) continue;
    return {
      start: size.start,
      end: body.length,
      message: `${size.message} ${message}`,
      mended: `${size.mended}${head.slice(size.end)} ${from}`,
    };
  }
  return undefined;
}

/** Words that follow a size without saying where it is from: the range's own, units as people write them, and a part of a class. */
const OF_SIZE =
  /^(?:(?:from|to|in|inch(?:es)?|mm|cm|m|thous?|mils?|tenths?|um|milli\p{L}+|micro\p{L}+)(?![\p{L}\d])|[a-z]{1,2}\s*\d)/iu;

/** The ways to take a line's last words for where its limits are from, the most words first. */
function* sourcesIn(
  body: string,
  asked: Asked,
): Generator<{
  readonly head: string;
  readonly start: number;
  readonly from: string;
  readonly message: string;
}> {
  // with a text in the line, it says already where they are from, or in part
  if (!/Limits?Fact/.test(asked.rule) || body.includes('"')) return;
  for (const gap of body.matchAll(/\s+(?=\p{L})/gu)) {
    const start = gap.index + gap[0].length;
    const words = body.slice(start);
    // what stands behind the other size too is a unit
    if (OF_SIZE.test(words) || body.indexOf(words) < start) continue;
    const from = `from "${words.replace(/^(?:as\s+)?per\s+/u, "")}"`;
    yield {
      head: body.slice(0, gap.index),
      start,
      from,
      message: `Where limits are from is written ${said(from)}.`,
    };
  }
}

/** `limits h7 25 mm` */
function classFirst(body: string, asked: Asked): Damage | undefined {
  const found = CLASS_FIRST.exec(body);
  if (found === null || !ONLY_RANGE.test(asked.rule)) return undefined;
  const { index: start } = found;
  const mended = `${group(found, "size")} ${group(found, "class")}`;
  const end = body.length;
  if (!readsWith(body, { start, end, text: mended }, asked)) return undefined;
  return {
    start,
    end,
    message: `A class stands behind its size: write ${said(mended)}.`,
    mended,
    safe: true,
  };
}

/** `limits 0.8740 min 0.8745 max`, `limits max 0.8745, min 0.8740` */
function leastAndMost(body: string, asked: Asked): Damage | undefined {
  if (!/\bmin/iu.test(body) || !/\bmax/iu.test(body)) return undefined;
  const start = /(?<=^\S+\s+)\S/u.exec(body)?.index ?? body.length;
  const said = body
    .slice(start)
    .replaceAll(LEAST_OR_MOST, " ")
    .trim()
    .replace(/(?<=[\p{L}\d"])\s+(?=\.?\d)/u, " to ");
  const found = AND_OR_TO.exec(said);
  const wording =
    found !== null && found[0].length === said.length
      ? marked(found)
      : undefined;
  if (wording === undefined) return undefined;
  const end = body.length;
  const { text } = wording;
  if (!readsWith(body, { start, end, text }, asked)) return undefined;
  return { start, end, message: wording.message, mended: text };
}

const CLASS_AT_END = new RegExp(
  String.raw`(?<=\s)(?:to\s+)?${CLASS}(?:[\s-]+${CLASS})?$`,
  "u",
);

function classAlone(body: string, asked: Asked): Damage | undefined {
  const found = CLASS_AT_END.exec(body);
  if (found === null) return undefined;
  const written = found[0].replace(/to\s+/u, "");
  const word = written.replace(/[\s-]+/u, "/");
  const [start, end] = [body.length - written.length, body.length];
  const text = `25 mm ${word}`;
  // `limits to H7` has a `to` too many, `cut to H7` its own
  if (
    ![start, found.index].some((at) =>
      readsWith(body, { start: at, end, text }, asked),
    )
  )
    return undefined;
  return {
    start,
    end,
    message: `A class alone is no size: write the nominal size before it, as in ${said(text)}.`,
  };
}

function oneSize(
  body: string,
  asked: Asked,
  start: number,
): Damage | undefined {
  if (!ONLY_RANGE.test(asked.rule)) return undefined;
  return {
    start,
    end: body.length,
    message:
      "One size is not a range: write `LOW to HIGH`, a size with its deviations, or a size and a class.",
  };
}
