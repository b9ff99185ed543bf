// What is asked when a record is compared with the last commit, and what comes back.

export interface CompareParams {
  readonly uri: string;
  /** Whether the person trusts the folder: git, which settings of a repository can have run other programs, is not run in any other. */
  readonly isTrusted: boolean;
  /** What a link of the page that is shown leads to the record by, already fit for an address; null where none would. */
  readonly link: string | null;
}

export type Compared =
  /** A page of Markdown. */
  | { readonly state: "compared"; readonly markdown: string }
  /** One or two sentences, with the way out. */
  | { readonly state: "not"; readonly because: string };
