// The results of each entry, in the order that a person reads them.
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { Result } from "./result.ts";
import { featureSketches } from "./results/feature.ts";
import { fitSketches } from "./results/fit.ts";
import { gaugeSketches } from "./results/gauge.ts";
import { inLineSketches } from "./results/in-line.ts";
import { lineSketches } from "./results/line.ts";
import { pressSketches } from "./results/press.ts";
import { runningSketches } from "./results/running.ts";
import { stackSketches } from "./results/stack.ts";
import { stepSketches } from "./results/step.ts";
import { isWaiting, waitingFor, type Sketch } from "./make-result.ts";
import { kindOf } from "./reference.ts";
import { query, waitsFor, type Shop } from "./shop.ts";

const OF_KIND: Readonly<
  Partial<Record<EntryKind, (shop: Shop, ref: string) => readonly Sketch[]>>
> = {
  journal: featureSketches,
  hole: featureSketches,
  bore: featureSketches,
  press: pressSketches,
  fit: (shop, ref) => [
    ...fitSketches(shop, ref),
    ...runningSketches(shop, ref),
  ],
  line: (shop, ref) => [
    ...lineSketches(shop, ref),
    ...inLineSketches(shop, ref),
  ],
  stack: stackSketches,
  gauge: gaugeSketches,
  step: stepSketches,
};

function sketchesOf(shop: Shop, ref: string): readonly Sketch[] {
  return OF_KIND[kindOf(ref)]?.(shop, ref) ?? [];
}

/** All results of an entry; none for kinds that compute nothing. */
export const resultsOf = query<readonly Result[]>("results", (shop, ref) => {
  const results = sketchesOf(shop, ref).flatMap((each) => each.results());
  if (!results.some(isWaiting)) return results;
  const causes = waitsFor(shop);
  return results.map((each) =>
    isWaiting(each) ? waitingFor(each, causes) : each,
  );
});

/** A kind of result that is not given, since its method does not hold here. */
export interface NotValid {
  readonly kind: string;
  readonly because: string;
}

/** Each kind and reason once, in the order of the results; none of the results is made for it. */
export const notValidOf = query<readonly NotValid[]>(
  "not-valid",
  (shop, ref) => {
    const once = new Map<string, NotValid>();
    for (const { kind, because } of sketchesOf(shop, ref))
      if (because !== undefined)
        once.set(`${kind} ${because}`, { kind, because });
    return [...once.values()];
  },
);
