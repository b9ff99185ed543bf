// A line that can't be read. The grammar says why and what would mend it; the word that was meant is found here.
import { readsOnWith, wordBefore } from "../../../grammar/asked.ts";
import { isName } from "../../../grammar/names.ts";
import { entrySpec, lineSpec } from "../../../grammar/vocabulary.ts";
import { unitOf } from "../../core/quantity/units.ts";
import type { DraftFix, TextRule } from "../rule.ts";
import type { Entry } from "../../model/entry.ts";
import type { Span } from "../../model/values.ts";
import { howToWrite, nameFor, shippedAs } from "./designation.ts";
import { firstFound, nearest, otherNames } from "./near.ts";
import { dimensionsCalled } from "./unit-names.ts";
import { unitWrong } from "./unit-wrong.ts";
import { oneOf, writeInstead } from "./wording.ts";

export const lineDamaged: TextRule = {
  code: "line-damaged",
  level: "error",
  draft({ span, data }, entry) {
    const message = String(data.message);
    const mended = data.mended;
    const written = String(data.written ?? "");
    const choices = [data.choices ?? []].flat();
    // the word that is put in may stand there misspelt
    const put = typeof mended === "string" ? mended.split(" ", 1) : [];
    const before = takenAsUnit(span, entry, written, [...choices, ...put]);
    if (before !== undefined) return before;
    const meant = firstFound(
      () => nearest(written, choices),
      () => otherNames(written, choices),
    );
    if (0 < meant.length) return meantInstead(span, written, meant);
    if (data.isEnd === "yes" && isEndForWord(span, written, choices, entry))
      return { message: neitherUnitNorWord(written, choices) };
    if (typeof data.below === "string")
      return {
        message,
        fixes: [onLineBelow(entry, span, data.below, data.safe === "yes")],
      };
    const named = kindInstead(span, written, [data.kind ?? []].flat());
    if (named !== undefined) return named;
    if (typeof data.unit === "string")
      return unitInstead(span, written, data.unit, entry);
    const designated = designatedBy(span, entry);
    if (designated !== undefined) return designated;
    if (typeof mended !== "string") return { message };
    return {
      message,
      fixes: [
        {
          title: `Write \`${mended.trim()}\``,
          safe: data.safe === "yes",
          edits: [{ span, text: mended }],
        },
      ],
    };
  },
};

/** `finish 32 rms`: the line's last word, taken for the unit of a number, where a word of a choice belongs. */
function isEndForWord(
  span: Span,
  written: string,
  choices: readonly string[],
  entry: Entry,
): boolean {
  const { body, indent } = lineAt(entry, span);
  return (
    0 < choices.length &&
    isName(written) &&
    unitOf(written) === undefined &&
    /\d\s+$/u.test(body.slice(0, span.start - indent))
  );
}

/** `read 0.5 wiht mic-1`: behind a number a misspelt word was taken as its unit, and reading stopped at the word after it. */
function takenAsUnit(
  span: Span,
  entry: Entry,
  written: string,
  choices: readonly string[],
): ReturnType<TextRule["draft"]> | undefined {
  const { body, indent } = lineAt(entry, span);
  const before = wordBefore(body, span.start - indent);
  if (before === undefined || !/\d\s+$/u.test(body.slice(0, before.start)))
    return undefined;
  const word = body.slice(before.start, before.end);
  const first = /^\S+/u.exec(body)?.[0] ?? "";
  const rule = lineSpec(entry.kind, first, span.line === 0)?.rule;
  if (unitOf(word) !== undefined || rule === undefined) return undefined;
  const readsAs = (words: readonly string[]): readonly string[] =>
    words.filter(
      (text) =>
        text !== word &&
        readsOnWith(body, { ...before, text }, rule, span.start - indent),
    );
  const meant = firstFound(
    () => readsAs(nearest(word, choices)),
    () => readsAs(otherNames(word, choices)),
  );
  const place = {
    ...span,
    start: before.start + indent,
    end: before.end + indent,
  };
  if (0 < meant.length)
    return { span: place, ...meantInstead(place, word, meant) };
  // the kind of an entry may begin a clause, and a word of several be what reading stopped at
  return choices.length < 2 ||
    !isName(word) ||
    entrySpec(word) !== undefined ||
    0 < nearest(written, choices).length
    ? undefined
    : {
        span: place,
        message: neitherUnitNorWord(word, choices),
      };
}

function neitherUnitNorWord(
  written: string,
  choices: readonly string[],
): string {
  return `\`${written}\` is no unit, and no word that fits here: write ${oneOf(choices)}.`;
}

/** `fit a of shaft a in bore a`: the trade's word for what is named there. */
function kindInstead(
  span: Span,
  written: string,
  kinds: readonly string[],
): ReturnType<TextRule["draft"]> | undefined {
  const word = /^\S+/u.exec(written)?.[0] ?? "";
  const meant = otherNames(word, kinds);
  if (meant.length === 0) return undefined;
  const place = { ...span, end: span.start + word.length };
  return { span: place, ...meantInstead(place, word, meant) };
}

function meantInstead(
  span: Span,
  word: string,
  meant: readonly string[],
): ReturnType<TextRule["draft"]> {
  return {
    message: `\`${word}\` does not fit here: did you mean ${oneOf(meant)}?`,
    fixes: writeInstead(span, meant),
  };
}

/** `cooled case 150 m2, air 20 C`: where a unit stands in words or signs that no unit has. */
function unitInstead(
  span: Span,
  written: string,
  of: string,
  entry: Entry,
): ReturnType<TextRule["draft"]> {
  const unit = written.replace(/,$/u, "");
  const place = { ...span, end: span.start + unit.length };
  const wanted = dimensionsCalled(of);
  const said = unitWrong.draft(
    {
      code: unitWrong.code,
      span: place,
      data: { unit, measures: "", wanted },
    },
    entry,
  );
  return { span: place, ...said };
}

function onLineBelow(
  entry: Entry,
  span: Span,
  fact: string,
  safe: boolean,
): DraftFix {
  const { body } = lineAt(entry, span);
  // no blanks are left where the line then ends
  const start = body.slice(0, span.start).trimEnd().length;
  return {
    title: `Put \`${fact}\` on a line of its own`,
    safe,
    edits: [{ span: { ...span, start }, text: `\n  ${fact}` }],
  };
}

/** `material 4140`, `oil SAE 30`: what is shipped under a designation that is no name. */
function designatedBy(
  span: Span,
  entry: Entry,
): ReturnType<TextRule["draft"]> | undefined {
  const { body, indent } = lineAt(entry, span);
  const fact = body.slice(0, span.start - indent).trim();
  if (span.line === 0 || (fact !== "material" && fact !== "oil"))
    return undefined;
  const written = body.slice(span.start - indent, span.end - indent);
  const shipped = shippedAs(written, [fact]);
  const isNoName = `\`${written}\` is no name, since a name ${/^\p{L}/u.test(written) ? "is one word" : "begins with a letter"}`;
  // what is a name lacks something else
  if (shipped.includes(written)) return undefined;
  if (0 < shipped.length)
    return {
      message: `${isNoName}: did you mean ${oneOf(shipped)}?`,
      fixes: writeInstead(span, shipped),
    };
  const name = nameFor(fact, written);
  return name === undefined
    ? undefined
    : {
        message: `${isNoName}, and no ${fact} of that designation is shipped: ${howToWrite(fact, name)}, and name it here as \`${name}\`.`,
        fixes: writeInstead(span, [name]),
      };
}

function lineAt(
  entry: Entry,
  { line }: Span,
): { readonly body: string; readonly indent: number } {
  return entry.block.lines[line] ?? { body: "", indent: 0 };
}
