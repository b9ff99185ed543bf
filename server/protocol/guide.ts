// What passes between the extension and the server while a person is asked one thing after another: questions, the answers so far, and
// what comes of them. What is asked is the server's (server/ide); how it looks is the extension's.

/** One of the things to choose from. */
export interface Choice {
  readonly value: string;
  readonly label: string;
  /** Beside the label. */
  readonly beside: string;
  /** Below it. */
  readonly below: string;
  /** Taken by whoever only presses Enter. */
  readonly picked: boolean;
}

interface Asked {
  /** Names the question among all of one interview. */
  readonly key: string;
  readonly title: string;
  /** From 1. */
  readonly step: number;
  /** How many there are if all that is still open is answered as offered. */
  readonly of: number;
  /** What is asked, as a sentence. */
  readonly about: string;
  /** An answer holds for the rest of the session. */
  readonly isKept: boolean;
}

export interface PickQuestion extends Asked {
  readonly kind: "pick";
  readonly choices: readonly Choice[];
  /** Any number of them, none included. */
  readonly many: boolean;
}

export interface TextQuestion extends Asked {
  readonly kind: "text";
  /** What stands in the box to begin with. */
  readonly value: string;
  /** Why the last answer was not taken; null where there was none. */
  readonly fault: string | null;
}

export type Question = PickQuestion | TextQuestion;

export interface Answer {
  readonly key: string;
  /** What was typed, or the values of what was chosen. */
  readonly values: readonly string[];
}

/** The next question; `accepted` of the answers given held, and those after them are to be forgotten. */
export interface Next {
  readonly question: Question;
  readonly accepted: number;
}

/** What is to be read, and how: made by the setup, carried by the extension, checked again whenever it comes back. */
export interface TakingPlan {
  /** Full reference of the entry. */
  readonly ref: string;
  /** Which diameter of a bush; null for all else. */
  readonly side: "od" | "id" | null;
  readonly fact: "read" | "repeat" | "swing";
  /** How it is turned under a pointer, as a line writes it: "vee 60 deg, 3 lobes"; null for all but a swing. */
  readonly turned: string | null;
  /** Names of the places in order; null for one without a name. */
  readonly places: readonly (string | null)[];
  /** Readings at each place. */
  readonly each: number;
  readonly gauge: string | null;
  /** As it is written: "68 F". */
  readonly temperature: string | null;
  readonly stage: string | null;
  /** ISO 8601 */
  readonly date: string;
  readonly system: "inch" | "mm";
  /** Where a reading is not looked at twice, m; null where nothing says what to expect. */
  readonly expected: { readonly low: number; readonly high: number } | null;
  /** The least step that the gauge shows, m. */
  readonly resolution: number | null;
}

/** A word that may be typed in place of a reading, or pressed as a button. */
export interface Offer {
  readonly word: string;
  readonly label: string;
}

/** What a person may do once the readings stand in the record. */
export interface AfterTaking {
  /** Take readings of `target`, or see what all comes to. */
  readonly does: "take" | "see";
  /** The answer to what is read; null where nothing is. */
  readonly target: string | null;
  readonly label: string;
  readonly below: string;
}

/** Typed instead of a reading, it asks anew with what is read, how warm and where. */
export const OTHER_WORD = "g";

export interface TakingPrompt {
  readonly title: string;
  readonly step: number;
  readonly of: number;
  /** What has been read here and what it comes to. */
  readonly text: string;
  readonly placeholder: string;
  /** Why the reading just typed is asked about, or could not be read; null where all is well. */
  readonly doubt: string | null;
  readonly offers: readonly Offer[];
  /** How many readings will be written. */
  readonly taken: number;
  readonly isDone: boolean;
  /** The lines as they will be written, without indent. */
  readonly lines: readonly string[];
  /** What it comes to, for when it is over. */
  readonly summary: string;
  /** What may follow once all is taken, what is likely wanted first. */
  readonly after: readonly AfterTaking[];
  /** Where the lines go, in the document of that version; null while there are none. */
  readonly edit: {
    readonly version: number | null;
    readonly line: number;
    readonly character: number;
    readonly text: string;
  } | null;
  /** Why the lines can't be written now; null where they can. */
  readonly gone: string | null;
}

/** What the setup of a taking asks with. */
export interface TakingSetupParams {
  readonly uri: string;
  /** The entry, where it was pointed at. */
  readonly ref: string | null;
  /** The caret, where there is one. */
  readonly position: {
    readonly line: number;
    readonly character: number;
  } | null;
  readonly answers: readonly Answer[];
}

export type TakingSetup =
  Next | { readonly plan: TakingPlan } | { readonly sentence: string };

export interface TakingStepParams {
  readonly uri: string;
  readonly plan: TakingPlan;
  /** What was typed so far: readings, and the words of offers. */
  readonly inputs: readonly string[];
}

/** What a new job is asked with. */
export interface NewJobParams {
  readonly answers: readonly Answer[];
  /** The names of the files in the folder; null where there is no folder, so that all goes into one file. */
  readonly names: readonly string[] | null;
  /** The text of the folder's `crib.thou`; null where there is none. */
  readonly crib: string | null;
}

export interface NewJobFiles {
  /** The job first. None has the name of a file that is there. */
  readonly files: readonly { readonly name: string; readonly text: string }[];
  /** Where the first reading is wanted, in the job. */
  readonly caret: { readonly line: number; readonly character: number };
}

export type NewJobAnswer = Next | NewJobFiles;
