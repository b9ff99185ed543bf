// What is asked when a sheet is to be made of a record, and what comes back.

/** How the record's files stand in the editor's version control. */
export interface SheetVersioned {
  /** The commit, as the version control names it; null before the first one. */
  readonly revision: string | null;
  /** Addresses of files that are not as they were committed, or not saved. */
  readonly changed: readonly string[];
}

export interface SheetParams {
  readonly uri: string;
  /** True for a measuring sheet to fill in, else the job sheet. */
  readonly blank: boolean;
  /** Left off where the editor has no version control for the record. */
  readonly versioned?: SheetVersioned;
}
