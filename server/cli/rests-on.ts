// What a record was worked out from besides its own bytes, and whether all of that is still as it was: what is kept of a record holds no longer.
import { hashOf, type Hashes } from "./hashes.ts";
import type { CheckedProject } from "./io.ts";
import type { Beside } from "./load-files.ts";

/** A file that a record rests on, as it was then. With neither hash it could not be read, and is never the same: each time has to say so. */
export interface RestsOn {
  readonly path: string;
  /** SHA-256 of its bytes; null where it was not there. */
  readonly content: string | null;
  /** SHA-256 of the names of the records beside it, where it was not there: one of them may have been meant, and is then said. */
  readonly beside: string | null;
}

/** Every file that a record which was read rests on, however far. */
export async function restsOn(
  file: string,
  project: CheckedProject,
  hashes: Hashes,
  beside: Beside,
): Promise<readonly RestsOn[]> {
  const files: RestsOn[] = [];
  for (const { path, isText } of project.restsOn(file)) {
    const content = hashes.taken(path);
    if (hashes.isUnreadable(path) || isText !== (content !== null))
      files.push({ path, content: null, beside: null });
    else
      files.push({
        path,
        content,
        beside: content === null ? namesIn(await beside(path)) : null,
      });
  }
  return files;
}

export async function areSame(
  files: readonly RestsOn[],
  hashes: Hashes,
  beside: Beside,
): Promise<boolean> {
  for (const { path, content, beside: names } of files) {
    if ((await hashes.of(path)) !== content) return false;
    if (content === null && namesIn(await beside(path)) !== names) return false;
    // that it can't be read has to be said, and only who reads it says so
    if (hashes.isUnreadable(path)) return false;
  }
  return true;
}

/** Names have no slash. */
function namesIn(beside: readonly string[]): string {
  return hashOf(beside.join("/"));
}
