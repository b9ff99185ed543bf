// Where two gauges of a record read the same place of the same part at the same stage on the same day: what one shows over the other.
import { allOf, valueIn, type Fact } from "../model/entry.ts";
import { readingsAt } from "../model/evaluate/readings.ts";
import { settings } from "../model/evaluate/settings.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import { groupedBy } from "../model/groups.ts";
import type { System } from "../core/quantity/show.ts";
import type { OpenFile } from "../model/project.ts";
import { entryOf, refOf, type Shop } from "../model/shop.ts";
import type { Stage } from "../model/values.ts";
import {
  hasStray,
  homeOf,
  meanOf,
  stepOf,
  type Evidence,
  type LeftOut,
} from "./evidence.ts";

/** What one gauge showed over another on one day in one record: the mean over all places that both read. */
export interface GaugeDatum {
  readonly gauge: string;
  readonly against: string;
  /** Only the second is set on a ring, so that the first is the one that is off. */
  readonly isTied: boolean;
  /** Path of the crib that has the first. */
  readonly crib: string;
  readonly file: string;
  readonly date: string;
  /** m, with what each gauge adds taken in. */
  readonly difference: number;
  /** Of the coarsest reading, m. */
  readonly step: number;
  /** The first entry that was read. */
  readonly entry: string;
  readonly system: System;
}

type ReadFact = Fact<"ReadFact" | "BushReadFact">;

export function pairsIn({ shop, path, file }: OpenFile): Evidence<GaugeDatum> {
  const leftOut: LeftOut[] = [];
  const found: GaugeDatum[] = [];
  for (const entry of file.entries) {
    if (!READ.has(entry.kind ?? "") || homeOf(shop, entry.ref) !== path)
      continue;
    const facts: readonly ReadFact[] = [
      ...allOf(entry, "ReadFact"),
      ...allOf(entry, "BushReadFact"),
    ];
    const unwritten = entry.kind === "bush" ? "bought" : "finished";
    const groups = groupedBy(facts, ({ value }) =>
      value === undefined
        ? undefined
        : JSON.stringify([
            "side" in value ? value.side : "",
            value.place ?? "",
            value.stage ?? unwritten,
            value.signature.date ?? "",
          ]),
    );
    for (const group of groups.values()) {
      const byGauge = groupedBy(group, ({ value }) =>
        refOf(shop, value?.gauge),
      );
      const gauges = [...byGauge.keys()].sort();
      for (const [index, one] of gauges.entries())
        for (const other of gauges.slice(index + 1)) {
          const pair = pairOf(shop, one, other);
          const lines = [
            ...(byGauge.get(one) ?? []),
            ...(byGauge.get(other) ?? []),
          ];
          const unsigned = lines.some(
            ({ value }) => value?.signature.who === undefined,
          );
          const date = lines[0]?.value?.signature.date;
          const why = unsigned
            ? "unsigned"
            : date === undefined
              ? "undated"
              : entry.kind !== "bush" && hasStray(shop, entry.ref)
                ? "stray"
                : undefined;
          const shownBy = (gauge: string): Shown | undefined =>
            shown(shop, entry.ref, byGauge.get(gauge) ?? [], unwritten);
          const [high, low] = [shownBy(pair.gauge), shownBy(pair.against)];
          if (
            why !== undefined ||
            date === undefined ||
            high === undefined ||
            low === undefined
          )
            leftOut.push({
              about: "gauge",
              subject: pair.gauge,
              file: path,
              entry: entry.ref,
              why: why ?? "damaged",
            });
          else
            found.push({
              ...pair,
              crib: homeOf(shop, pair.gauge),
              file: path,
              date,
              difference: high.mean - low.mean,
              step: Math.max(high.step, low.step),
              entry: entry.ref,
              system: settings(shop).system,
            });
        }
    }
  }
  return { data: byDay(found), leftOut };
}

const READ: ReadonlySet<string> = new Set(["journal", "hole", "bush", "bore"]);

/** What was set at one time is off at all of its places alike, so that they count as one. */
function byDay(all: readonly GaugeDatum[]): readonly GaugeDatum[] {
  const days = groupedBy(all, ({ gauge, against, date }) =>
    JSON.stringify([gauge, against, date]),
  );
  return [...days.values()].flatMap((same) => {
    const [first] = same;
    return first === undefined
      ? []
      : [
          {
            ...first,
            difference:
              same.reduce((sum, { difference }) => sum + difference, 0) /
              same.length,
          },
        ];
  });
}

/** The one that is set on a ring stands second; else they are in the order of their names. */
function pairOf(
  shop: Shop,
  one: string,
  other: string,
): Pick<GaugeDatum, "gauge" | "against" | "isTied"> {
  const [first, second] = [one, other].map((gauge) => isOnRing(shop, gauge));
  if (first === true && second !== true)
    return { gauge: other, against: one, isTied: true };
  if (second === true && first !== true)
    return { gauge: one, against: other, isTied: true };
  // of mic-1 and mic-2 the question is what mic-2 shows over mic-1
  return { gauge: other, against: one, isTied: false };
}

function isOnRing(shop: Shop, gauge: string): boolean {
  const set = valueIn(entryOf(shop, gauge), "SetFact");
  return set !== undefined && "ring" in set;
}

interface Shown {
  readonly mean: number;
  readonly step: number;
}

function shown(
  shop: Shop,
  ref: string,
  facts: readonly ReadFact[],
  unwritten: Stage,
): Shown | undefined {
  const stage = facts[0]?.value?.stage ?? unwritten;
  const places = readingsAt(shop, facts, unwritten, [stage], () =>
    materialOfFeature(shop, ref),
  );
  return places.known && 0 < places.value.length
    ? { mean: meanOf(places.value), step: stepOf(places.value) }
    : undefined;
}
