// Two members of Ohm that its types leave out: the function that its own generated grammars call, and the failures of a match
// (documented in its API reference).
import "ohm-js";

declare module "ohm-js" {
  /** A grammar from what `toRecipe()` of the same release wrote. */
  export function makeRecipe(recipe: readonly unknown[]): Grammar;

  interface FailedMatchResult {
    /** What could have stood where reading stopped. */
    getRightmostFailures(): readonly {
      readonly type: "description" | "string" | "code";
      toString(): string;
    }[];
  }
}
