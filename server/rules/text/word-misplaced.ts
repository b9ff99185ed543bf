// A known word in the wrong column, or a fact with no entry above it.
import { parseBody } from "../../../grammar/parse.ts";
import {
  entrySpec,
  kindsWithFact,
  type EntryKind,
} from "../../../grammar/vocabulary.ts";
import type { Entry } from "../../model/entry.ts";
import type { Span } from "../../model/values.ts";
import type { Draft, DraftFix, TextRule } from "../rule.ts";
import { allOf, oneOf, withArticle } from "./wording.ts";

type Said = Omit<Draft, "span">;

export const wordMisplaced: TextRule = {
  code: "word-misplaced",
  level: "warning",
  draft({ span, data }, entry) {
    const word = String(data.word);
    switch (data.place) {
      case "margin":
        return atMargin(word, entry, span);
      case "indent":
        return indented(word, entry, span);
      case "first":
        return {
          message: `\`${word}\` is a fact and stands under its entry, but none begins above it: begin one in column 1, as \`${formOf(word)}\`.`,
        };
      default:
        return {
          message: `\`${word}\` is a fact of ${allOf(kindsWithFact(word))}, and this ${entry.kind ?? "entry"} takes none: it stands indented under its own entry.`,
        };
    }
  },
};

/** `limits` or `material X` in column 1. */
function indented(word: string, entry: Entry, span: Span): Said {
  const isFact = span.line !== 0;
  const fix: DraftFix = {
    title: `Indent \`${word}\``,
    // a material in column 1 may be the fact of an entry that takes none
    safe: isFact,
    edits: [{ span: { ...span, end: span.start }, text: "  " }],
  };
  return {
    message: isFact
      ? `\`${word}\` is a fact of this ${entry.kind ?? "entry"}: indent it, since column 1 begins an entry.`
      : `\`${word}\` in column 1 begins an entry of the crib, and this one says nothing of its own: to say what a part or a bush is made of, or what oil a fit runs in, indent it under that.`,
    fixes: [fix],
  };
}

/** `  journal front on layshaft` */
function atMargin(word: string, entry: Entry, span: Span): Said {
  const head = entry.block.lines[0];
  const spec = entrySpec(word);
  const reads =
    head !== undefined &&
    spec !== undefined &&
    parseBody(head.body, spec.rule).damagedAt === undefined;
  const places = kindsWithFact(word);
  const fix: DraftFix = {
    title: `Bring \`${word}\` to column 1`,
    safe: reads && places.length === 0,
    edits: [
      {
        span: { ...span, end: span.start, start: blankStart(entry) },
        text: "",
      },
    ],
  };
  if (0 < places.length)
    return {
      message: `\`${word}\` as a fact stands under ${oneOf(places)}, not under the entry above; as an entry it begins in column 1.`,
      fixes: reads ? [fix] : [],
    };
  return {
    message: `\`${word}\` begins an entry: bring it to column 1.`,
    fixes: [fix],
  };
}

/** A byte order mark stays where it is. */
function blankStart(entry: Entry): number {
  return entry.block.lines[0]?.text.startsWith("\u{FEFF}") === true ? 1 : 0;
}

/** How an entry that takes the fact begins. */
function formOf(word: string): string {
  const [kind] = kindsWithFact(word) satisfies readonly EntryKind[];
  return kind === undefined
    ? "job NAME"
    : (entrySpec(kind)?.form ?? withArticle(kind));
}
