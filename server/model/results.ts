// The results of each entry, in the order that a person reads them.
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { Result } from "./result.ts";
import { featureResults } from "./results/feature.ts";
import { fitResults } from "./results/fit.ts";
import { gaugeResults } from "./results/gauge.ts";
import { inLineResults } from "./results/in-line.ts";
import { lineResults } from "./results/line.ts";
import { pressResults } from "./results/press.ts";
import { runningResults } from "./results/running.ts";
import { stackResults } from "./results/stack.ts";
import { stepResults } from "./results/step.ts";
import { isWaiting, waitingFor } from "./make-result.ts";
import { query, waitsFor, type Shop } from "./shop.ts";

const OF_KIND: Readonly<
  Partial<Record<EntryKind, (shop: Shop, ref: string) => readonly Result[]>>
> = {
  journal: featureResults,
  hole: featureResults,
  bore: featureResults,
  press: pressResults,
  fit: (shop, ref) => [...fitResults(shop, ref), ...runningResults(shop, ref)],
  line: (shop, ref) => [...lineResults(shop, ref), ...inLineResults(shop, ref)],
  stack: stackResults,
  gauge: gaugeResults,
  step: stepResults,
};

/** All results of an entry; none for kinds that compute nothing. */
export const resultsOf = query<readonly Result[]>("results", (shop, ref) => {
  // a reference begins with its kind
  const kind = ref.slice(0, ref.indexOf(" ")) as EntryKind;
  const results = OF_KIND[kind]?.(shop, ref) ?? [];
  if (!results.some(isWaiting)) return results;
  const causes = waitsFor(shop);
  return results.map((each) =>
    isWaiting(each) ? waitingFor(each, causes) : each,
  );
});
