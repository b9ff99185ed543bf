// What is asked when the trend of a record's sizes is shown, and what comes back.

export interface TrendParams {
  readonly uri: string;
  /** Whether the person trusts the folder: git, which settings of a repository can have run other programs, is not run in any other. */
  readonly isTrusted: boolean;
}

export interface TrendShown {
  /** "part layshaft, serial W-17: journal front" */
  readonly title: string;
  /** What it is held against, "over the years" or "over running hours", and what it comes to. */
  readonly along: string;
  readonly says: string;
  /** The chart and its sentences as HTML in which nothing runs. */
  readonly html: string;
}

export type Trended =
  /** One at least. */
  | { readonly state: "found"; readonly series: readonly TrendShown[] }
  /** One or two sentences, with the way out. */
  | { readonly state: "not"; readonly because: string };
