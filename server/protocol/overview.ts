// What the server answers to `thou/overview`: a record at a glance, as plain data. The server has chosen the words; the extension adds
// icons and colours, and both stand beside a word that says the same.
import type { Verdict } from "../model/result.ts";

/** How an entry stands. Each has its own word in the item's detail. */
export type OverviewState =
  | Exclude<Verdict, "none">
  /** A reading is missing. */
  | "to-measure"
  /** A bore that its line has still to cut. */
  | "to-cut"
  /** Out or unsure, and a signed concession accepts it. */
  | "accepted"
  /** An error that is no verdict. */
  | "fault"
  /** A line of it can't be read. */
  | "unread"
  // of steps
  | "done"
  | "ready"
  /** Ready, while a warning or an error stands about what it works on. */
  | "look-first"
  | "blocked"
  | "waits"
  | "failed"
  /** Nothing to judge. */
  | "plain";

export interface OverviewItem {
  /** Its own among all items of the record, and the same after an edit elsewhere. */
  readonly id: string;
  /** "fit front", "Running fits" */
  readonly label: string;
  /** How it stands, in words, and by what number. */
  readonly detail: string;
  /** Undefined for a group. */
  readonly state?: OverviewState;
  /** Where it is written; undefined where it is written nowhere. */
  readonly place?: OverviewPlace;
  readonly children: readonly OverviewItem[];
}

export interface OverviewPlace {
  readonly uri: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export interface OverviewCounts {
  readonly in: number;
  readonly out: number;
  readonly unsure: number;
  readonly toMeasure: number;
  /** Entries with an error that is no verdict, or that can't be read. */
  readonly faults: number;
}

export interface Overview {
  /** "job winch-layshaft"; "" where the record does not say. */
  readonly name: string;
  /** The job's title; "" for none. */
  readonly title: string;
  readonly counts: OverviewCounts;
  /** The counts in words: "9 in, 1 unsure, 1 to measure". */
  readonly summary: string;
  /** What is next and what is in its way, in words; "" where the record has no steps. */
  readonly next: string;
  readonly groups: readonly OverviewItem[];
}
