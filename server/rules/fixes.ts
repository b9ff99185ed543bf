// Pieces of fixes that several rules bring: a fact written under an entry, a line made a comment, another name in a place.
import { nameOf } from "../model/reference.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import type { RefSite, Span } from "../model/values.ts";
import type { DraftEdit, DraftFix } from "./rule.ts";

/** How many choices a fix offers at the most. */
export const MOST_OFFERED = 3;

/** Writes a fact after the last one of an entry, which may lie in another file; undefined where the entry is not there. */
export function factUnder(
  shop: Shop,
  ref: string,
  fact: string,
): DraftEdit | undefined {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return undefined;
  const { lines } = entry.block;
  const last = lines.findLastIndex(({ body }) => body !== "");
  const line = lines[last];
  if (line === undefined) return undefined;
  const end = line.text.length;
  return {
    ref,
    span: { line: last, start: end, end },
    text: `\n  ${fact}`,
  };
}

/** Makes a line a comment, so that what it said can still be read. */
export function lineAsComment(span: Span): DraftEdit {
  return { span: { ...span, end: span.start }, text: "# " };
}

/** The same as a whole fix. @param safe nothing is lost by it */
export function commentOut(
  span: Span,
  title = "Make this line a comment",
  safe = false,
): DraftFix {
  return { title, safe, edits: [lineAsComment(span)] };
}

/** Names another entry in a place that takes one kind; the kind stays where it is written. */
export function nameInstead(
  { nameSpan }: RefSite,
  ref: string,
  title: string,
): DraftFix {
  return {
    title,
    safe: false,
    edits: [{ span: nameSpan, text: nameOf(ref) }],
  };
}
