// What a check gives back, as plain data: results and findings. The JSON of the command line is this, so a change here is a change
// of the contract in docs/language.md.

/** How sure a number is: read, foretold (any part is a limit or a tool), or not to be said. */
export type Status = "measured" | "predicted" | "unknown";
export type Verdict = "in" | "out" | "unsure" | "none";

/** One step of the working, to be shown as it is. */
export interface Working {
  /** The rule in words and signs, e.g. "clearance = bore − journal". */
  readonly formula: string;
  /** The same with this job's numbers, in the job's units. */
  readonly with: string;
  /** A standard with its clause, "common practice, no source", or "". */
  readonly source: string;
}

/** A fact that would settle what is unknown. */
export interface Need {
  /** Full reference of the entry, e.g. "bore rear". */
  readonly ref: string;
  /** The fact's word, e.g. "read". */
  readonly fact: string;
  /** A sentence part, e.g. "a reading of bore rear". */
  readonly text: string;
  /** It will do in place of the need before it. */
  readonly instead?: true;
}

export interface Result {
  /** Full reference, e.g. "fit front". */
  readonly entry: string;
  readonly kind: string;
  /** A reference or place where one entry has several of a kind. */
  readonly of: string | null;
  /** 1… for `hot` lines, in the order written. */
  readonly case: number | null;
  /** SI. Null where the status is unknown. Never -0. */
  readonly low: number | null;
  readonly nominal: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly status: Status;
  readonly verdict: Verdict;
  /** For a person, in the job's units, e.g. "0.0010 to 0.0013 in". */
  readonly text: string;
  /** The step, m, that a length in the text is shown to; undefined where it has the usual digits. It is no part of the JSON. */
  readonly step?: number | undefined;
  readonly working: readonly Working[];
  readonly needs: readonly Need[];
}

export type Level = "error" | "warning" | "information" | "hint";

/** A span in one file: lines and characters from 0, in UTF-16 units, end exclusive. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export interface Related {
  readonly place: Place;
  readonly message: string;
}

/** A change of text that mends a finding. */
export interface Fix {
  /** What it does, as a menu says it, e.g. "Write a point: 0.874". */
  readonly title: string;
  readonly edits: readonly { readonly place: Place; readonly text: string }[];
  /** Files that it makes, by path; never one that is there. */
  readonly creates?: readonly {
    readonly file: string;
    readonly text: string;
  }[];
  /** True where it can be taken without a look. */
  readonly safe: boolean;
}

export interface Finding {
  readonly code: string;
  readonly level: Level;
  readonly place: Place;
  readonly message: string;
  /** Full reference of the entry it is about; null where there is none. */
  readonly entry: string | null;
  /** Full reference of the step that it says is next, where only the crib's route has that. */
  readonly step?: string;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
  /** Name of the concession that accepts it; null for none. */
  readonly accepted: string | null;
}

/** All that a check says of one file. */
export interface FileCheck {
  readonly findings: readonly Finding[];
  readonly results: readonly Result[];
}
