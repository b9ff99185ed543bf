// Which facts an entry may still take, each as a snippet; those that would settle something unknown stand first.
import {
  entrySpec,
  factSpec,
  type EntryKind,
} from "../../grammar/vocabulary.ts";
import type { Entry } from "../model/entry.ts";
import type { OpenFile } from "../model/project.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { resultsOf } from "../model/results.ts";
import type { Offer } from "./completion-item.ts";
import { fillingOf } from "./completion-names.ts";
import { EMPTY, inTurn, withForm } from "./completion-snippet.ts";

/** Facts of an entry that are not given yet, or that may stand again; `line` is the one being written, and doesn't count. */
export function factOffers(
  open: OpenFile,
  entry: Entry,
  kind: EntryKind,
  line: number | undefined,
  today: string | undefined,
): readonly Offer[] {
  const given = new Set(
    entry.facts
      .filter((fact) => fact.span.line !== line)
      .map((fact) => fact.word),
  );
  const needed = neededFacts(open, entry);
  const filling = fillingOf(open, entry.ref, today);
  return (entrySpec(kind)?.facts ?? [])
    .filter((spec) => spec.many || !given.has(spec.word))
    .map((spec): Offer => {
      const settles = needed.get(spec.word);
      return {
        label: spec.word,
        kind: "fact",
        insertText: withForm(EMPTY, spec.form, spec.rule, inTurn(filling)).text,
        isSnippet: true,
        detail: settles === undefined ? spec.form : `needed: ${settles}`,
        documentation: spec.means,
        rank: settles !== undefined ? 0 : given.has(spec.word) ? 2 : 1,
      };
    });
}

/** The facts that the entry's results lack, or that the next step waits for. */
function neededFacts(
  { shop }: OpenFile,
  { ref, kind }: Entry,
): ReadonlyMap<string, string> {
  if (ref === "" || kind === undefined) return new Map();
  return new Map(
    [ref, ...orderOf(shop).next]
      .flatMap((each) => resultsOf(shop, each))
      .flatMap((result) => result.needs)
      .filter(
        (need) => need.ref === ref && factSpec(kind, need.fact) !== undefined,
      )
      .map((need) => [need.fact, need.text]),
  );
}
