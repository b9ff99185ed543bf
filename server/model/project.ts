// Files in, results and findings out. It does no reading of its own: whoever holds it (the language server, the command line) gives it
// the files, asks which others they use, and gives it those too.
import type { FileLines } from "../../grammar/lines.ts";
import type { FileCheck } from "./result.ts";

export interface Project {
  /** Gives a file's lines, or `null` for one that is not there. Paths have forward slashes; a URI does as well. */
  setFile(path: string, lines: FileLines | null): void;
  /** Forgets a file: as if it had never been given. */
  dropFile(path: string): void;
  /** Files that this one uses, however far, and that have not been given yet. */
  missingUses(path: string): readonly string[];
  /** Results and findings of one file, as a job or a crib of its own. */
  check(path: string): FileCheck;
}
