// The results of each entry, in the order that a person reads them.
import type { EntryKind } from "../../grammar/vocabulary.ts";
import { FEW_TOLERANCES, tolerancesRead } from "./evaluate/gauge-ratio.ts";
import type { Result } from "./result.ts";
import { featureSketches } from "./results/feature.ts";
import { fitSketches } from "./results/fit.ts";
import { gaugeSketches, narrowestRatios } from "./results/gauge.ts";
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
  return withCauses(
    shop,
    sketchesOf(shop, ref).flatMap((each) => each.results()),
  );
});

function withCauses(shop: Shop, results: readonly Result[]): readonly Result[] {
  if (!results.some(isWaiting)) return results;
  const causes = waitsFor(shop);
  return results.map((each) =>
    isWaiting(each) ? waitingFor(each, causes) : each,
  );
}

/** The results of one kind alone, as they are among all: the others are not made for them. */
export function resultsOfKind(
  shop: Shop,
  ref: string,
  kind: string,
): readonly Result[] {
  return ofKind(shop, `${kind} ${ref}`);
}

// a kind is one word
const ofKind = query<readonly Result[]>("results-of-kind", (shop, of) => {
  const kind = of.slice(0, of.indexOf(" "));
  const ref = of.slice(kind.length + 1);
  const own = sketchesOf(shop, ref).filter((each) => each.kind === kind);
  // it may stand among those of another kind
  const results =
    own.length === 0
      ? resultsOf(shop, ref)
      : withCauses(
          shop,
          own.flatMap((each) => each.results()),
        );
  return results.filter((each) => each.kind === kind);
});

/**
 * The results of an entry for who has room for a few, and how many there are beside them: a gauge may be read with everywhere, and matters
 * most where it is the least fine. Those that are left out are not made.
 */
export function fewResultsOf(
  shop: Shop,
  ref: string,
): { readonly results: readonly Result[]; readonly more: number } {
  const all = kindOf(ref) === "gauge" ? tolerancesRead(shop, ref).length : 0;
  return all <= FEW_TOLERANCES
    ? { results: resultsOf(shop, ref), more: 0 }
    : {
        results: withCauses(shop, narrowestRatios(shop, ref)),
        more: all - FEW_TOLERANCES,
      };
}

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
