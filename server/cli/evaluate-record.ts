// One record, from its file to what a check says of it: the one way that all commands over many records take.
import type { FoundFile } from "./find-files.ts";
import type { CheckedProject } from "./io.ts";
import { createLoader, type ReadBytes } from "./load-files.ts";
import type { CheckedFile } from "./report.ts";
import { shown } from "./terminal-text.ts";

export interface Evaluator {
  /** Reads a record with all that it uses, and checks it; undefined where it can't be: the sentence has then gone to `tell`. */
  evaluate(file: FoundFile): Promise<CheckedFile | undefined>;
  /** Lets go of a record that no other uses, so that memory stays flat. */
  release(file: FoundFile): void;
  /** Files that others used so far, and that are there. */
  used(): readonly string[];
}

/** @param from the state that files are read in; the disk where none is given */
export function createEvaluator(
  project: CheckedProject,
  cwd: string,
  tell: (sentence: string) => void,
  from?: ReadBytes,
): Evaluator {
  const loader = createLoader(project, cwd, tell, from);
  const judge = (
    path: string,
    name: string,
  ): CheckedFile["check"] | undefined => {
    try {
      return project.check(path);
    } catch (error) {
      tell(
        `${shown(name)} could not be checked, by a fault of thou itself: ${shown(String(error))}. Please report it with the file.`,
      );
      return undefined;
    }
  };
  return {
    async evaluate(file) {
      const lines = await loader.load(file);
      const check =
        lines === undefined ? undefined : judge(file.path, file.name);
      return lines === undefined || check === undefined
        ? undefined
        : { ...file, lines, check };
    },
    release(file) {
      loader.release(file);
    },
    used: () => loader.used(),
  };
}
