// Where a finding about one bore of a line stands in the line's text, and the entries that stand under it as its other halves.
import { allOf, given, type Entry } from "../../model/entry.ts";
import { reamerOfLine } from "../../model/evaluate/line-bores.ts";
import { entryOf, refOf, type Shop } from "../../model/shop.ts";
import type { FactRule, Span } from "../../model/values.ts";
import type { DraftRelated } from "../rule.ts";

/** The place of a bore's name in its line, else the line's own name. */
export function boreSpan(shop: Shop, entry: Entry, bore: string): Span {
  const fact = allOf(entry, "LineBoreFact").find(
    ({ value }) => refOf(shop, value?.bore) === bore,
  );
  return fact?.value?.bore.span ?? entry.nameSpan;
}

/** The reamer of a line, to stand under a finding; nothing where it names none. */
export function relatedReamer(
  shop: Shop,
  line: string,
  message: (reamer: string) => string,
): readonly DraftRelated[] {
  const reamer = reamerOfLine(shop, line);
  return reamer.known && reamer.value !== undefined
    ? [{ ref: reamer.value, message: message(reamer.value) }]
    : [];
}

/** A fact of another entry, to stand under a finding; its entry's name where it can't be found. */
export function relatedFact(
  shop: Shop,
  ref: string,
  rule: FactRule,
  message: string,
): DraftRelated {
  const entry = entryOf(shop, ref);
  const fact = entry === undefined ? undefined : given(entry, rule);
  return fact?.state === "given"
    ? { ref, span: fact.span, message }
    : { ref, message };
}
