// A state of a record and the sizes that are taken from it, as types, and what all of them need of its parts. How they are taken is
// trend-points.ts's and trend-clearances.ts's.
import type { System } from "../core/quantity/show.ts";
import { allOf, valueIn } from "../model/entry.ts";
import { hostOf } from "../model/evaluate/size.ts";
import type { OpenFile } from "../model/project.ts";
import { kindOf } from "../model/reference.ts";
import { entryOf, openingEntry, type Shop } from "../model/shop.ts";
import type { Arrivals, CommitDay } from "./undated.ts";

/** One state of a record. */
export interface RecordState {
  readonly open: OpenFile;
  /** As the user names the record. */
  readonly file: string;
  /** Its commit; undefined for the file as it lies. */
  readonly committed: CommitDay | undefined;
  /** Of all states of this record that were looked at before, and added to. */
  readonly arrivals: Arrivals;
}

/** A size, or a clearance, on a day: what a trend takes of it. */
export interface DatedSize {
  readonly file: string;
  readonly commit: string | undefined;
  readonly entry: string;
  readonly part: string;
  readonly serial: string | undefined;
  readonly system: System;
  /** ISO 8601 */
  readonly date: string;
  readonly datedBy: "reading" | "commit";
  /** What the machine's hour meter showed that day, h; undefined where no one wrote it, or two different ones. */
  readonly hours: number | undefined;
  /** m at 20 °C: the mean of all that was read that day by one gauge. */
  readonly value: number;
  readonly count: number;
  /** Standard uncertainty of the gauge, m; undefined where it is not known. */
  readonly uncertainty: number | undefined;
  /** The last written digit, m. */
  readonly step: number | undefined;
  /** "" where none is named. */
  readonly gauge: string;
  readonly limit: number | undefined;
  readonly limitIs: "service limit" | "limit" | "wanted" | undefined;
  /** The limits that were written, to tell a part that was made anew. */
  readonly limits: string;
  /** What it is of where each record makes it anew, a pressed bush; "" for what stays. */
  readonly madeIn: string;
}

/** The same as one state of a record has it, with what tells it from that of another state. */
export interface StatePoint extends DatedSize {
  /** The day of the commit of this state, ISO 8601; undefined for the file as it lies. */
  readonly stateDay: string | undefined;
  /** Its readings as they are written but for their day, to tell one whose day was mended. */
  readonly lines: readonly string[];
}

export interface StatePoints {
  readonly points: readonly StatePoint[];
  /** Readings without a day, and lines that can't be read. */
  readonly undated: number;
  readonly damaged: number;
  /** Fits whose readings without a day came at several times. */
  readonly mixed: readonly string[];
}

/** The part that a feature is on or in, through its bush and hole. */
export function partOf(shop: Shop, ref: string): string | undefined {
  let at: string | undefined = ref;
  for (let step = 0; at !== undefined && step < 4; step++) {
    if (kindOf(at) === "part") return at;
    at = hostOf(shop, at);
  }
  return undefined;
}

export function serialOf(
  shop: Shop,
  part: string | undefined,
): string | undefined {
  return part === undefined
    ? undefined
    : valueIn(entryOf(shop, part), "SerialFact");
}

/** What the hour meter of the job's machine showed on a day, h; undefined where nothing is written of that day, or what differs. */
export function hoursOn(shop: Shop, date: string): number | undefined {
  const opening = openingEntry(shop);
  const opened = valueIn(opening, "OpenedFact")?.date;
  const shown = new Set(
    (opening === undefined ? [] : allOf(opening, "HoursFact")).flatMap(
      ({ value }) =>
        value !== undefined && (value.date ?? opened) === date
          ? [value.meter / 3600]
          : [],
    ),
  );
  const [hours] = shown;
  return shown.size === 1 ? hours : undefined;
}
