// Pieces of the sentences of text findings.
import type { DraftFix } from "../rule.ts";
import type { Span } from "../../model/values.ts";

/** "`a`", "`a` or `b`", "`a`, `b` or `c`" */
export function oneOf(words: readonly string[]): string {
  return eitherOf(words.map((word) => `\`${word}\``));
}

/** "a", "a and b", "a, b and c" */
export function allOf(words: readonly string[]): string {
  return joined(words, "and");
}

/** "a", "a or b", "a, b or c" */
export function eitherOf(words: readonly string[]): string {
  return joined(words, "or");
}

function joined(words: readonly string[], last: string): string {
  return words.length < 2
    ? words.join("")
    : [words.slice(0, -1).join(", "), ...words.slice(-1)].join(` ${last} `);
}

/** "a journal", "an oil" */
export function withArticle(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? "an" : "a"} ${kind}`;
}

/** Fixes that put another word in a place, each a guess. */
export function writeInstead(
  span: Span,
  words: readonly string[],
): readonly DraftFix[] {
  return words.map((word) => ({
    title: `Write \`${word}\``,
    safe: false,
    edits: [{ span, text: word }],
  }));
}
