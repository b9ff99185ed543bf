// Our own requests, beside those that the protocol of language servers has words for: what the extension asks and what the server
// answers, as types, and their names. Both sides read this file and neither any other of the other's.
import type { BenchParams, BenchView } from "./protocol/bench.ts";
import type { Compared, CompareParams } from "./protocol/compare.ts";
import type {
  NewJobAnswer,
  NewJobParams,
  TakingPrompt,
  TakingSetup,
  TakingSetupParams,
  TakingStepParams,
} from "./protocol/guide.ts";
import type { Overview } from "./protocol/overview.ts";
import type { SheetParams } from "./protocol/sheet.ts";
import type { TrendParams, Trended } from "./protocol/trend.ts";

/** A position in a record: line and character from 0, in UTF-16 units. */
export interface OwnPosition {
  readonly line: number;
  readonly character: number;
}

export interface OwnRequests {
  /** The page of a finding, as Markdown; null where there is none of that code. */
  "thou/page": {
    readonly params: { readonly code: string };
    readonly result: { readonly markdown: string } | null;
  };
  /** A record at a glance; null where it is not there. */
  "thou/overview": {
    readonly params: { readonly uri: string };
    readonly result: Overview | null;
  };
  /** What more there is to say of one entry of it, a line each; null where the record is not there. */
  "thou/overviewMore": {
    readonly params: { readonly uri: string; readonly ref: string };
    readonly result: { readonly lines: readonly string[] } | null;
  };
  /** What a new job is, one question at a time, and then its files. */
  "thou/newJob": {
    readonly params: NewJobParams;
    readonly result: NewJobAnswer;
  };
  /** The job in pictures, with what stands at a line; null where the record is not there. */
  "thou/bench": {
    readonly params: BenchParams;
    readonly result: BenchView | null;
  };
  /** What has to be known before readings are taken, one question at a time. */
  "thou/takingSetup": {
    readonly params: TakingSetupParams;
    readonly result: TakingSetup;
  };
  /** Where the taking of readings stands after all that was typed; null for a plan that is none. */
  "thou/takingStep": {
    readonly params: TakingStepParams;
    readonly result: TakingPrompt | null;
  };
  /** A record as a page of HTML to print; null where it is not there. */
  "thou/sheet": {
    readonly params: SheetParams;
    readonly result: { readonly html: string } | null;
  };
  /** What changed in a record since the last commit, as a page; or why that can't be said. */
  "thou/compare": {
    readonly params: CompareParams;
    readonly result: Compared;
  };
  /** How the sizes of a record changed over its versions, each as a chart; or why there is none. */
  "thou/trend": {
    readonly params: TrendParams;
    readonly result: Trended;
  };
}

export type OwnRequest = keyof OwnRequests;
export type ParamsOf<N extends OwnRequest> = OwnRequests[N]["params"];
export type ResultOf<N extends OwnRequest> = OwnRequests[N]["result"];

// A table, so that the compiler misses none.
const NAMES: Readonly<Record<OwnRequest, true>> = {
  "thou/page": true,
  "thou/overview": true,
  "thou/overviewMore": true,
  "thou/newJob": true,
  "thou/bench": true,
  "thou/takingSetup": true,
  "thou/takingStep": true,
  "thou/sheet": true,
  "thou/compare": true,
  "thou/trend": true,
};

export const OWN_REQUESTS: readonly OwnRequest[] = Object.keys(
  NAMES,
) as OwnRequest[];

/** What the server asks and an editor answers that says so by FILES_OFFERED: files where the server has no disk of its own, or another. */
export interface FileRequests {
  /** The text of a file; null where there is none, or none that can be read. */
  "thou/readFile": {
    readonly params: { readonly uri: string };
    readonly result: { readonly text: string } | null;
  };
  /** The records below a folder, in any order; `here`: those that lie in it alone will do. */
  "thou/findRecords": {
    readonly params: { readonly folder: string; readonly here: boolean };
    readonly result: { readonly uris: readonly string[] };
  };
}

/** Among the experimental capabilities of an editor: it answers the requests for files. */
export const FILES_OFFERED = "thouFiles";

/** The commands that a click on the line above an entry runs, each with an address and a position. */
export const LENS_COMMANDS = {
  finding: "thou.showFinding",
  uses: "thou.showUses",
} as const;

/** Among the experimental capabilities of an editor: it has those commands. */
export const COMMANDS_OFFERED = "thouCommands";
