// A check of the engineering against something outside the project, as data: the test runs it, and the page
// docs/checks.md is generated from it. Files beside this one named *.checks.ts export a list of them.

export interface Check {
  /** The result kinds of the language that it bears on, e.g. ["out-of-round"]. */
  readonly kinds: readonly string[];
  /** What is compared, e.g. "mean of NIST StRD NumAcc3". */
  readonly what: string;
  /** How the tool computes it, in a few words, e.g. "two-pass mean". */
  readonly method: string;
  /** "published": a value from a text that was seen. "independent": another computation that shares no code or constants. */
  readonly against: "published" | "independent";
  /** Published: author, title, edition, page or table. Independent: which library or method. */
  readonly source: string;
  /** Unit of both numbers, "1" for a plain number. */
  readonly unit: string;
  readonly ours: () => number;
  readonly theirs: () => number;
  /** The largest difference that passes: absolute in `unit`, or relative to `theirs`. */
  readonly within:
    { readonly absolute: number } | { readonly relative: number };
  /** How many values it stands for, where it is the largest difference over many; else one. */
  readonly points?: number | undefined;
  /** Why more is allowed than beside the other values of that source, as the page says it after the source. */
  readonly because?: string | undefined;
}

/** The difference as `within` states it: absolute, or relative to the other's value. */
export function difference(check: Check): number {
  const theirs = check.theirs();
  const absolute = Math.abs(check.ours() - theirs);
  return "relative" in check.within ? absolute / Math.abs(theirs) : absolute;
}

export function allowed(check: Check): number {
  return "relative" in check.within
    ? check.within.relative
    : check.within.absolute;
}
