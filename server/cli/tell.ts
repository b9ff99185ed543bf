// Sentences about what could not be done, each said once on standard error; whoever says one could not run on all.
import { columnsOf, type Context } from "./io.ts";
import { wrapIndented } from "./terminal-text.ts";

export interface Tell {
  /** Says a sentence; the exit code is then 2. */
  readonly tell: (sentence: string) => void;
  /** What was said, in order. */
  readonly problems: ReadonlySet<string>;
}

export function createTell(context: Context): Tell {
  const { stderr } = context.io;
  const problems = new Set<string>();
  return {
    tell: (sentence) => {
      if (problems.has(sentence)) return;
      problems.add(sentence);
      stderr.write(
        `${wrapIndented(`thou: ${sentence}`, columnsOf(stderr), "", "  ")}\n`,
      );
      context.exitWith(2);
    },
    problems,
  };
}
