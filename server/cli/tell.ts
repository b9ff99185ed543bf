// Sentences about what could not be done, each said once on standard error; whoever says one could not run on all.
import { columnsOf, type Context, type Io } from "./io.ts";
import { wrapIndented } from "./terminal-text.ts";

export interface Tell {
  /** Says a sentence; the exit code is then 2. */
  readonly tell: (sentence: string) => void;
  /** What was said, in order. */
  readonly problems: ReadonlySet<string>;
}

export function createTell(context: Context): Tell {
  const note = createNote(context.io);
  const problems = new Set<string>();
  return {
    tell: (sentence) => {
      problems.add(sentence);
      note(sentence);
      context.exitWith(2);
    },
    problems,
  };
}

/** Says a sentence once on standard error, though nothing is the matter with what was asked. */
export function createNote({ stderr }: Io): (sentence: string) => void {
  const said = new Set<string>();
  return (sentence) => {
    if (said.has(sentence)) return;
    said.add(sentence);
    stderr.write(
      `${wrapIndented(`thou: ${sentence}`, columnsOf(stderr), "", "  ")}\n`,
    );
  };
}
