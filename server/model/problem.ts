// What can be wrong with the text of one line, as data. The sentence, the level and the fix are the rule's of that code.
import type { Span } from "./values.ts";

export interface Problem {
  readonly code: string;
  readonly span: Span;
  /** What the sentence needs, by names that the rule of the code knows. */
  readonly data: Readonly<Record<string, string | readonly string[]>>;
}
