// What hover says at a caret, with the crib beside the text.
import { hoverAt } from "../../server/ide/hover.ts";
import { atCaret, CRIB, JOB, slice } from "./caret.ts";

/** What is said at the caret, and over which text. */
export function hover(marked: string): { markdown: string; over: string } {
  const { open, position, text } = atCaret(marked, { "crib.thou": CRIB });
  const found = hoverAt(open, position);
  return {
    markdown: found?.markdown ?? "",
    over: found === undefined ? "" : slice(text, found.range),
  };
}

/** What is said at the caret. */
export const said = (marked: string): string => hover(marked).markdown;

/** The job with the caret in the first place of these words. */
export function job(words: string): string {
  const plain = words.replace("|", "");
  if (!JOB.includes(plain)) throw new Error(`no ${plain}`);
  return JOB.replace(plain, words);
}

/** Rows of a table by their first cell. */
export function row(markdown: string, first: string): readonly string[] {
  const line = markdown
    .split("\n")
    .find((each) => each.startsWith(`| ${first} |`));
  return (
    line
      ?.split("|")
      .slice(1, -1)
      .map((cell) => cell.trim()) ?? []
  );
}
