// What is offered at the caret, in the editor's words, and the order it stands in.
import type { Range } from "./position.ts";

export type CompletionKind =
  | "entry"
  | "template"
  | "fact"
  | "word"
  | "reference"
  | "material"
  | "unit"
  | "class"
  | "code"
  | "caution"
  | "date"
  | "file"
  | "name"
  | "value";

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly insertText: string;
  /** `insertText` has tab stops. */
  readonly isSnippet: boolean;
  /** One line beside the label. */
  readonly detail: string;
  /** Markdown, safe to render; "" for none. */
  readonly documentation: string;
  readonly sortText: string;
  readonly filterText: string;
  /** The word that it takes the place of, what stands of it after the caret as well. */
  readonly replaceRange: Range;
}

/** An offer before it has its place among the others. */
export interface Offer {
  readonly label: string;
  readonly kind: CompletionKind;
  /** The label where left off. */
  readonly insertText?: string;
  readonly isSnippet?: boolean;
  readonly detail?: string;
  readonly documentation?: string;
  readonly filterText?: string;
  /** Offers of a lower one stand first; those of one rank stand in the order given. */
  readonly rank: number;
}

/** Offers in order, each label once. */
export function completions(
  offers: readonly Offer[],
  range: Range,
): readonly Completion[] {
  const seen = new Set<string>();
  return offers
    .map((offer, index) => ({ offer, index }))
    .sort((a, b) => a.offer.rank - b.offer.rank || a.index - b.index)
    .filter(({ offer }) => {
      if (seen.has(offer.label)) return false;
      seen.add(offer.label);
      return true;
    })
    .map(({ offer }, place) => ({
      label: offer.label,
      kind: offer.kind,
      insertText: offer.insertText ?? offer.label,
      isSnippet: offer.isSnippet ?? false,
      detail: offer.detail ?? "",
      documentation: offer.documentation ?? "",
      sortText: String(place).padStart(5, "0"),
      filterText: offer.filterText ?? offer.label,
      replaceRange: range,
    }));
}
