// What the server answers to `thou/bench`: the job in pictures beside a record, as pieces of HTML that hold no script and no style, and where
// each entry that they name is written.
import type { OverviewPlace } from "./overview.ts";

export interface BenchParams {
  readonly uri: string;
  /** The caret's line, from 0. */
  readonly line: number;
  /** How wide a picture may be, in CSS pixels. */
  readonly width: number;
}

export interface BenchView {
  /** "Mooring winch 3, layshaft rebush" */
  readonly title: string;
  readonly sections: readonly BenchSection[];
  /** Where the entries are written that the sections name. */
  readonly places: Readonly<Record<string, OverviewPlace>>;
}

export interface BenchSection {
  /** The same after an edit elsewhere, so that a page replaces only what changed. */
  readonly key: string;
  /** "Fits"; for a list of the sections to jump to. */
  readonly name: string;
  readonly html: string;
  /** Something in it hangs on a line that can't be read: what was shown before says more. */
  readonly unread: boolean;
  /** Two of these stand side by side where there is room. */
  readonly half: boolean;
}
