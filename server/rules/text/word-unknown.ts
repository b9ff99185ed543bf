// The first word of a line is none that can stand there. Words that are legal here are offered first, then those of other places.
import { unseenBefore } from "../../../grammar/explain-pasted.ts";
import { parseBody } from "../../../grammar/parse.ts";
import {
  ENTRIES,
  ENTRY_KINDS,
  entrySpec,
  factsWithin,
  kindsWithFact,
  type EntryKind,
  type EntrySpec,
  type FactSpec,
} from "../../../grammar/vocabulary.ts";
import type { Entry } from "../../model/entry.ts";
import type { Problem } from "../../model/problem.ts";
import type { Span } from "../../model/values.ts";
import type { DraftFix, TextRule } from "../rule.ts";
import { nearest, otherNames } from "./near.ts";
import { heating, isHeating } from "./worked-out.ts";
import { capitalised } from "../../model/sentences.ts";
import {
  allOf,
  eitherOf,
  oneOf,
  withArticle,
  writeInstead,
} from "./wording.ts";

type Said = ReturnType<TextRule["draft"]>;

const FACT_WORDS = [
  ...new Set(ENTRIES.flatMap(({ facts }) => facts.map(({ word }) => word))),
];

export const wordUnknown: TextRule = {
  code: "word-unknown",
  level: "error",
  draft(problem, entry) {
    const word = String(problem.data.word);
    const kind = entry.kind === undefined ? undefined : entrySpec(entry.kind);
    const body = entry.block.lines[problem.span.line]?.body ?? "";
    const unseen = unseenBefore(body);
    if (0 < unseen) return unseenMark(problem.span, unseen);
    const facts = kind?.facts ?? [];
    const stray = strayWord(problem.span, body, kind?.facts ?? ENTRIES);
    if (stray !== undefined) return stray;
    if (kind?.kind === "line" && isBoreOfLine(body))
      return boreOfLine(problem.span, body);
    if (/^[+-]?[\d.,/]*\d[\d.,/]*(?:\s|$)/.test(body))
      return numbersAlone(problem.span, body, facts);
    if (!/^[\p{L}\d]/u.test(word)) return mark(problem, entry);
    if (isHeating(word)) return heating(word, problem.span, entry);
    return kind === undefined
      ? opener(word, problem.span)
      : factOf(kind.kind, word, problem.span);
  },
};

/** A byte order mark of a file that was joined to another, or a blank that no key gives. */
function unseenMark(span: Span, length: number): Said {
  const place = { ...span, end: span.start + length };
  return {
    span: place,
    message:
      "A character that does not show stands before the first word of this line, as in pasted text: take it out.",
    fixes: [
      { title: "Take it out", safe: true, edits: [{ span: place, text: "" }] },
    ],
  };
}

/** `1.0000 to 1.0005` with nothing that says of what. */
function numbersAlone(
  span: Span,
  body: string,
  facts: readonly FactSpec[],
): Said {
  const written = /^\S+/.exec(body)?.[0] ?? "";
  const place = { ...span, end: span.start + written.length };
  const words = facts
    .filter(
      ({ word, rule }) =>
        parseBody(`${word} ${body}`, rule).damagedAt === undefined,
    )
    .map(({ word }) => word)
    .slice(0, MOST_SHOWN);
  return {
    span: place,
    message: `A line begins with a word, and \`${written}\` is a number: say first what it is${words.length === 0 ? "" : `, such as ${oneOf(words)}`}.`,
    fixes: words.map((word) => ({
      title: `Write \`${word}\` before it`,
      safe: false,
      edits: [{ span: { ...place, end: place.start }, text: `${word} ` }],
    })),
  };
}

function isBoreOfLine(body: string): boolean {
  return parseBody(`bore ${body}`, "LineBoreFact").damagedAt === undefined;
}

/** `front from 0 to 1.25` */
function boreOfLine(span: Span, body: string): Said {
  return {
    message: `A bore of a line is written \`bore ${body}\`.`,
    fixes: [
      {
        title: "Write `bore` before it",
        safe: true,
        edits: [{ span: { ...span, end: span.start }, text: "bore " }],
      },
    ],
  };
}

const MOST_SHOWN = 4;

/** `h length 1.250`: the word after it is one that can begin the line. */
function strayWord(
  span: Span,
  body: string,
  fitting: readonly (FactSpec | EntrySpec)[],
): Said | undefined {
  const word = /^\S+/.exec(body)?.[0] ?? "";
  const rest = body.slice(word.length).trimStart();
  const found = fitting.find((each) => {
    const begins = "kind" in each ? each.kind : each.word;
    return (
      rest.startsWith(`${begins} `) &&
      parseBody(rest, each.rule).damagedAt === undefined
    );
  });
  if (found === undefined) return undefined;
  const gap = body.length - rest.length;
  return {
    span: { ...span, end: span.start + word.length },
    message: `\`${word}\` begins no line here, and \`${rest}\` would read without it.`,
    fixes: [
      {
        title: `Take \`${word}\` out`,
        safe: false,
        edits: [{ span: { ...span, end: span.start + gap }, text: "" }],
      },
    ],
  };
}

/** No word at all: most often a comment in another dress. */
function mark({ span }: Problem, entry: Entry): Said {
  const line = entry.block.lines[span.line];
  const written = /^\S+/.exec(line?.body ?? "")?.[0] ?? "";
  const other = /^(?:\/\/+|;+|--+|\/\*|%+|'|!)/.exec(written)?.[0];
  const message = `A line begins with a word, and \`${written}\` is none; a comment begins with \`#\`.`;
  const start = span.start;
  return {
    span: { ...span, end: start + written.length },
    message,
    fixes: [
      {
        title: "Make it a comment",
        safe: other !== undefined,
        edits: [
          {
            span: { ...span, end: start + (other ?? "").length },
            text: other === undefined ? "# " : "#",
          },
        ],
      },
    ],
  };
}

/** The first word of an entry. */
function opener(word: string, span: Span): Said {
  const kinds = meant(word, ENTRY_KINDS);
  if (0 < kinds.length)
    return {
      message: `No entry begins with \`${word}\`: did you mean ${oneOf(kinds)}?`,
      fixes: replaced(word, span, kinds),
    };
  const facts = meant(word, FACT_WORDS);
  if (0 < facts.length)
    return {
      message: `No entry begins with \`${word}\`: did you mean the fact ${oneOf(facts)}, indented under its entry?`,
      fixes: facts.map((fact) => ({
        title: `Write \`${fact}\`, indented`,
        safe: false,
        edits: [{ span, text: `  ${fact}` }],
      })),
    };
  return {
    message: `No entry begins with \`${word}\`: in column 1 stands what the entry is, such as part, journal, hole, bush, bore or fit, then its name.`,
  };
}

/** The first word of a fact, in an entry of a kind that is known. */
function factOf(kind: EntryKind, word: string, span: Span): Said {
  const here = (entrySpec(kind)?.facts ?? []).map((fact) => fact.word);
  const elsewhere = kindsWithFact(word);
  const near = meant(word, here);
  if (0 < elsewhere.length) {
    const message = `\`${word}\` is a fact of ${allOf(elsewhere)}, not of ${kind}`;
    return near.length === 0
      ? {
          message: `${message}: it stands under ${anOneOf(elsewhere)}.`,
        }
      : {
          message: `${message}: did you mean ${oneOf(near)}?`,
          fixes: writeInstead(span, near),
        };
  }
  const within = onlyFactWithin(word, kind);
  if (within !== undefined) return { message: within };
  if (0 < near.length)
    return {
      message: `${capitalised(withArticle(kind))} has no fact \`${word}\`: did you mean ${oneOf(near)}?`,
      fixes: replaced(word, span, near),
    };
  const far = meant(word, FACT_WORDS);
  const [fact] = far;
  if (fact !== undefined)
    return {
      message: `${capitalised(withArticle(kind))} has no fact \`${word}\`: did you mean \`${fact}\`, which stands under ${anOneOf(kindsWithFact(fact))}?`,
      fixes: writeInstead(span, [fact]),
    };
  const kinds = meant(word, ENTRY_KINDS);
  if (0 < kinds.length)
    return {
      message: `${capitalised(withArticle(kind))} has no fact \`${word}\`: did you mean ${oneOf(kinds)}, which begins an entry in column 1?`,
      fixes: kinds.map((each) => ({
        title: `Write \`${each}\` in column 1`,
        safe: false,
        edits: [{ span: { ...span, start: 0 }, text: each }],
      })),
    };
  return {
    message: `${capitalised(withArticle(kind))} has no fact \`${word}\`: it takes ${allOf(here)}.`,
  };
}

/** Of a word that stands within one fact only: which, of this kind where it has one. */
function onlyFactWithin(word: string, kind: EntryKind): string | undefined {
  const all = factsWithin(word);
  const own = all.filter((each) => each.kind === kind);
  const [first, second] = own.length === 0 ? all : own;
  if (first === undefined || second !== undefined) return undefined;
  const where = first.kind === kind ? "" : `, which stands under ${first.kind}`;
  return `\`${word}\` begins no line: it is a word of \`${first.fact.word}\`${where}, written \`${first.fact.form}\`.`;
}

/** The words that were perhaps meant: the trade's other names first, since they say the same, then those that look like it. */
function meant(word: string, fitting: readonly string[]): readonly string[] {
  const alike = nearest(word, fitting);
  const isSure = alike.some(
    (each) => each.toLowerCase() === word.toLowerCase(),
  );
  const named = isSure ? [] : otherNames(word, fitting);
  return [...new Set([...named, ...alike])].slice(0, 3);
}

/** Fixes that write another word; one that differs in capitals only is sure. */
function replaced(
  word: string,
  span: Span,
  words: readonly string[],
): readonly DraftFix[] {
  return writeInstead(span, words).map((fix, index) => ({
    ...fix,
    safe: words[index] === word.toLowerCase(),
  }));
}

/** "a part", "a part or a line" */
function anOneOf(kinds: readonly string[]): string {
  return eitherOf(kinds.map(withArticle));
}
