// What can be wrong with the text of one line, as data. The sentence, the level and the fix are the rule's of that code.
//
// One code has no rule: "units-unwritten", a bare length in a file that does not say its unit. It is said once, of the file.
import type { Span } from "./values.ts";

export interface Problem {
  readonly code: string;
  readonly span: Span;
  /** What the sentence needs, by names that the rule of the code knows. */
  readonly data: Readonly<Record<string, string | readonly string[]>>;
}
