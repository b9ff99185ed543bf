// Where two gauges of a record read the same place of the same part at the same stage on the same day: what one shows over the other.
import type { System } from "../core/quantity/show.ts";
import { allOf, type Entry, type Fact } from "../model/entry.ts";
import { isSetOnRing } from "../model/evaluate/gauge.ts";
import { readingsAt } from "../model/evaluate/readings.ts";
import { settings } from "../model/evaluate/settings.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import { groupedBy } from "../model/groups.ts";
import type { OpenFile } from "../model/project.ts";
import { refOf, type Shop } from "../model/shop.ts";
import type { Stage } from "../model/values.ts";
import {
  hasStray,
  homeOf,
  meanOf,
  stepOf,
  type Evidence,
  type LeftOut,
  type Why,
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
    for (const pair of readPairs(shop, entry)) {
      const shows = shownOver(shop, entry, pair);
      if (typeof shows === "string")
        leftOut.push({
          about: "gauge",
          subject: pair.of.gauge,
          file: path,
          entry: entry.ref,
          why: shows,
        });
      else found.push({ ...shows, file: path });
    }
  }
  return { data: byDay(found), leftOut };
}

const READ: ReadonlySet<string> = new Set(["journal", "hole", "bush", "bore"]);

/** The stage of readings that write none. */
function unwrittenStage({ kind }: Entry): Stage {
  return kind === "bush" ? "bought" : "finished";
}

/** Two gauges that read one place at one stage on one day, with the lines of each. */
interface ReadPair {
  readonly of: Pair;
  readonly gauge: readonly ReadFact[];
  readonly against: readonly ReadFact[];
}

function readPairs(shop: Shop, entry: Entry): readonly ReadPair[] {
  const facts: readonly ReadFact[] = [
    ...allOf(entry, "ReadFact"),
    ...allOf(entry, "BushReadFact"),
  ];
  const alike = groupedBy(facts, ({ value }) =>
    value === undefined
      ? undefined
      : JSON.stringify([
          "side" in value ? value.side : "",
          value.place ?? "",
          value.stage ?? unwrittenStage(entry),
          value.signature.date ?? "",
        ]),
  );
  return [...alike.values()].flatMap((group) => {
    const byGauge = groupedBy(group, ({ value }) => refOf(shop, value?.gauge));
    const gauges = [...byGauge.keys()].sort();
    return gauges.flatMap((one, index) =>
      gauges.slice(index + 1).map((other): ReadPair => {
        const of = pairOf(shop, one, other);
        return {
          of,
          gauge: byGauge.get(of.gauge) ?? [],
          against: byGauge.get(of.against) ?? [],
        };
      }),
    );
  });
}

/** What the first of two gauges showed over the second; or why that does not count. */
function shownOver(
  shop: Shop,
  entry: Entry,
  { of, gauge, against }: ReadPair,
): Omit<GaugeDatum, "file"> | Why {
  const lines = [...gauge, ...against];
  if (lines.some(({ value }) => value?.signature.who === undefined))
    return "unsigned";
  // they are of one day
  const date = lines[0]?.value?.signature.date;
  if (date === undefined) return "undated";
  if (entry.kind !== "bush" && hasStray(shop, entry.ref)) return "stray";
  const high = shown(shop, entry, gauge);
  const low = shown(shop, entry, against);
  if (high === undefined || low === undefined) return "damaged";
  return {
    ...of,
    crib: homeOf(shop, of.gauge),
    date,
    difference: high.mean - low.mean,
    step: Math.max(high.step, low.step),
    entry: entry.ref,
    system: settings(shop).system,
  };
}

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

type Pair = Pick<GaugeDatum, "gauge" | "against" | "isTied">;

/** The one that is set on a ring stands second; else they are in the order of their names. */
function pairOf(shop: Shop, one: string, other: string): Pair {
  const [first, second] = [one, other].map((gauge) => isSetOnRing(shop, gauge));
  if (first === true && second !== true)
    return { gauge: other, against: one, isTied: true };
  if (second === true && first !== true)
    return { gauge: one, against: other, isTied: true };
  // of mic-1 and mic-2 the question is what mic-2 shows over mic-1
  return { gauge: other, against: one, isTied: false };
}

interface Shown {
  readonly mean: number;
  readonly step: number;
}

function shown(
  shop: Shop,
  entry: Entry,
  facts: readonly ReadFact[],
): Shown | undefined {
  const unwritten = unwrittenStage(entry);
  const stage = facts[0]?.value?.stage ?? unwritten;
  const places = readingsAt(shop, facts, unwritten, [stage], () =>
    materialOfFeature(shop, entry.ref),
  );
  return places.known && 0 < places.value.length
    ? { mean: meanOf(places.value), step: stepOf(places.value) }
    : undefined;
}
