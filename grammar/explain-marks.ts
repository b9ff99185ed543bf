// The traps of marks: one between a word and what it says, quotes, a full stop at a line's end, a remark in another dress than `#`.
import type { Damage } from "./explain.ts";
import { reads, readsWhole, wordBefore, type Asked } from "./asked.ts";
import { replaced } from "./replaced.ts";
import { endOfText } from "./tokens.ts";

/** `limits: 0.8740 to 0.8745`, `units = mm` */
export function markAfterWord(body: string, asked: Asked): Damage | undefined {
  const whole = body.replace(/^([\p{L}-]+)\s*[:=]+\s*/u, "$1 ");
  if (!reads(whole, asked)) return undefined;
  const mended = whole.slice(0, whole.indexOf(" ") + 1);
  return {
    start: 0,
    end: body.length - (whole.length - mended.length),
    message: `No mark stands between a word and what it says: write \`${readsWhole(whole, asked) ? whole : `${mended.trimEnd()} …`}\`.`,
    mended,
    safe: true,
  };
}

const QUOTED =
  /[\u{201C}\u{201D}\u{201E}\u{AB}\u{BB}]|(?<![^\s,])['\u{2018}\u{201A}]|['\u{2018}\u{2019}](?![^\s,])/gu;

const TEXT = /(?<=[\s,])"[^"]*"(?![^\s,])/u;

/** Quotes as word processors write them, and single ones. */
export function otherQuotes(body: string, asked: Asked): Damage | undefined {
  // after a number it would be a mark of inches
  if (!TEXT.test(body.replaceAll(QUOTED, '"'))) return undefined;
  return replaced(body, asked, QUOTED, () => '"', {
    says: () => 'A text stands in plain double quotes: `"`.',
    safe: true,
  });
}

export function unclosedText(body: string): Damage | undefined {
  const opening = /(?<=[\s,])"/gu;
  for (;;) {
    const at = opening.exec(body)?.index;
    if (at === undefined) return undefined;
    const end = endOfText(body, at);
    if (end === undefined)
      return {
        start: at,
        end: body.length,
        message: "This text has no closing quote: put one at its end.",
        mended: `${body.slice(at)}"`,
      };
    opening.lastIndex = end;
  }
}

/** `length 30 mm.`, `read 24.99;` */
export function markAtEnd(body: string, asked: Asked): Damage | undefined {
  const last = wordBefore(body, body.length);
  if (last === undefined) return undefined;
  const written = body.slice(last.start);
  // a comma has more to follow
  const mended = written.replace(/[.;:!#]+$/u, "");
  if (
    mended === written ||
    !readsWhole(body.slice(0, last.start) + mended, asked)
  )
    return undefined;
  return {
    ...last,
    message: `No mark stands at the end of a line: write \`${mended}\`.`,
    mended,
    safe: true,
  };
}

/** `load 180#` */
export function poundSign(body: string, asked: Asked): Damage | undefined {
  if (asked.rule !== "LoadFact") return undefined;
  return replaced(
    body,
    asked,
    /\d\S*#(?!\S)/gu,
    (text) => text.replace("#", " lbf"),
    {
      says: (mended) =>
        `A \`#\` begins a remark, and pounds of force are \`lbf\`: write \`${mended}\`.`,
      safe: false,
    },
  );
}

/** `read TBD`, `limits ?` */
export function notKnownYet(body: string, { rule }: Asked): Damage | undefined {
  const found = /(?<=\s)(?:tb[acd]|n\.?\/?a\.?|\?+|unknown|pending)$/iu.exec(
    body,
  );
  // an entry has facts below it
  if (found === null || rule.endsWith("Entry")) return undefined;
  return {
    start: 0,
    end: body.length,
    message: `What is not known yet is left out, and \`${found[0]}\` is read as nothing: make the line a remark until it is, \`# ${body}\`.`,
    mended: `# ${body}`,
  };
}

/** `length 30#ok`, `length 30 // ok`, `length 30 mm (1.18 in)` */
export function otherRemark(body: string, asked: Asked): Damage | undefined {
  const found = REMARK.exec(body);
  if (found?.groups === undefined) return undefined;
  const { mark = "", said = "" } = found.groups;
  const head = body.slice(0, found.index);
  if (!readsWhole(head, asked)) return undefined;
  const start = wordBefore(head, head.length)?.start ?? 0;
  const mended = `${head.slice(start)} # ${mark === "(" ? `(${said}` : said}`;
  return {
    start,
    end: body.length,
    message: `A remark goes behind a \`#\` with a blank before it: write \`${mended}\`.`,
    mended,
    safe: true,
  };
}

const REMARK = /\s*(?<mark>#|\/\/+|--+|\()\s*(?<said>.*)$/u;
