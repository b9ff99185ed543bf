// What a record has still to be measured, as the overview counts it and as readings are asked for.
import { given, type Entry } from "../model/entry.ts";
import { pressesOfBush } from "../model/evaluate/index-of.ts";
import { readingOf } from "../model/known.ts";
import type { Need } from "../model/result.ts";
import { resultsOf } from "../model/results.ts";
import type { Shop } from "../model/shop.ts";
import {
  isFeature,
  standingOf,
  withoutName,
  type Standing,
} from "./overview-standing.ts";

/**
 * Features without the reading that they should have, then what else a result waits for a reading of: each entry once, with what is wanted.
 * @param own the entries of the file, the first of each name
 */
export function toMeasure(
  shop: Shop,
  own: readonly Entry[],
): ReadonlyMap<string, string> {
  const standings = new Map<string, Standing>();
  for (const { ref } of own) {
    if (isFeature(ref)) standings.set(ref, standingOf(shop, ref, []));
  }
  const found = new Map<string, string>();
  for (const entry of own) {
    const { ref } = entry;
    const standing = standings.get(ref);
    if (standing?.state === "to-measure")
      found.set(ref, standing.expected ?? "no reading yet");
    if (entry.kind === "bush" && lacksSize(shop, entry))
      found.set(ref, "its od: no limits, no reading");
  }
  for (const [ref, need] of readingsNeeded(shop, own)) {
    const standing = standings.get(ref);
    // what is cut and read is past being read as roughed; what is to be cut is read as it is before
    if (
      !found.has(ref) &&
      (standing === undefined || standing.state === "to-cut")
    )
      found.set(ref, noReading(withoutName(need.text, ref)));
  }
  return found;
}

/** The readings that results wait for, by the entry that is to be read: the first that says more than that it be read, where one does. */
function readingsNeeded(
  shop: Shop,
  own: readonly Entry[],
): ReadonlyMap<string, Need> {
  const needed = new Map<string, Need>();
  for (const { ref } of own)
    for (const { kind, status, needs } of resultsOf(shop, ref)) {
      // an uncertainty waits for a gauge to be named and not for a reading
      if (status !== "unknown" || kind === "uncertainty") continue;
      for (const need of needs) {
        const before = needed.get(need.ref);
        if (need.fact === "read" && (before === undefined || isAny(before)))
          needed.set(need.ref, need);
      }
    }
  return needed;
}

/** "no reading as roughed yet" of "a reading as roughed" */
function noReading(text: string): string {
  return text.replace(/^a (reading.*)$/su, "no $1 yet");
}

/** Any reading of the entry will do, as it is now. */
function isAny({ ref, text }: Need): boolean {
  return text === readingOf(ref).text;
}

/** A press asks for the bush's od; a bush that no press names needs none. */
function lacksSize(shop: Shop, entry: Entry): boolean {
  return (
    !entry.damaged &&
    0 < pressesOfBush(shop, entry.ref).length &&
    given(entry, "OdFact").state === "absent" &&
    !entry.facts.some(({ rule }) => rule === "BushReadFact")
  );
}
