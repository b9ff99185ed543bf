// One datum of what a record teaches, and why another one was left out. How they are found in a record is cuts.ts's, closures.ts's and
// pairs.ts's; what they come to, lessons.ts's.
import { valueIn, type Entry, type Fact } from "../model/entry.ts";
import { strayOf, type PlaceReadings } from "../model/evaluate/readings.ts";
import { repeatsOf } from "../model/evaluate/size.ts";
import { openingEntry, type Shop } from "../model/shop.ts";

/** Why a datum was left out, in words for a person. */
export const LEFT_OUT = {
  damaged: "a line that it rests on can't be read",
  unread:
    "a reading that it takes is not there: of a cut the bore after it, of a press the bush as bought, the hole and the bore as pressed",
  early: "it was read before the cut, or the step that cuts it is not done",
  unsigned: "a reading of it is not signed",
  undated: "a reading of it has no date",
  stray: "its repeats have a stray",
  unknown: "a fact that it takes is not written",
  yields: "the press is past where Lamé's rings hold",
  stiffer:
    "its boss is blind or longer than the bush, no plain ring, so Lamé gives a range and no one closure",
  overhangs:
    "the bush stands out of its hole, so that its free end does not close, and Lamé gives a range and no one closure",
  split: "its boss is split along its axis and is no closed ring",
  coarse:
    "the closure is under ten steps of its readings: too coarse to learn from",
  wild: "it stands farther from the others of its kind than chance explains (generalized ESD test, 1 %): look whether it was misread",
} as const;
export type Why = keyof typeof LEFT_OUT;

export interface LeftOut {
  readonly about: "reamer" | "bush" | "gauge";
  /** The reamer, the bush, or the first of the gauges, as a full reference. */
  readonly subject: string;
  readonly file: string;
  /** The entry that was read. */
  readonly entry: string;
  readonly why: Why;
}

/** What a record gave. */
export interface Evidence<T> {
  readonly data: readonly T[];
  readonly leftOut: readonly LeftOut[];
}

type ReadFacts = readonly Fact<"ReadFact" | "BushReadFact">[];

/** Why readings don't count; undefined where each of them that is used is signed and dated. */
export function unsignedIn(
  facts: ReadFacts,
  places: readonly PlaceReadings[],
): Why | undefined {
  const used = places.flatMap(({ readings }) =>
    readings.map(
      ({ span }) =>
        facts.find((fact) => fact.span.line === span.line)?.value?.signature,
    ),
  );
  if (used.some((signature) => signature?.who === undefined)) return "unsigned";
  return used.some((signature) => signature?.date === undefined)
    ? "undated"
    : undefined;
}

/** Any repeat of a feature is a stray, as the finding `reading-stray` says. */
export function hasStray(shop: Shop, ref: string): boolean {
  return repeatsOf(shop, ref).some((repeats) => strayOf(repeats) !== undefined);
}

export function meanOf(places: readonly PlaceReadings[]): number {
  const values = places.flatMap(({ readings }) =>
    readings.flatMap((reading) => reading.values),
  );
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The coarsest step of readings, m; 0 where none is written. */
export function stepOf(places: readonly PlaceReadings[]): number {
  return Math.max(
    0,
    ...places.flatMap(({ readings }) => readings.map(({ step }) => step ?? 0)),
  );
}

/** The latest day of the readings used. */
export function lastDay(places: readonly PlaceReadings[]): string {
  return places
    .flatMap(({ readings }) => readings.map(({ date }) => date ?? ""))
    .reduce((a, b) => (a < b ? b : a), "");
}

/** Path of the file that an entry stands in. */
export function homeOf(shop: Shop, ref: string): string {
  const place = shop.places.get(ref);
  return place === undefined ? "" : (shop.files[place.file]?.path ?? "");
}

/** The day that a record was opened, where it says so. */
export function openedOn(shop: Shop): string | undefined {
  return valueIn(openingEntry(shop), "OpenedFact")?.date;
}

export function damagedIn(entry: Entry, facts: ReadFacts): boolean {
  return entry.damaged || facts.some(({ value }) => value === undefined);
}
