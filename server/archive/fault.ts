// How work on an archive ends when the world does not allow it: one sentence for the user, with the way out.
import { messageOf, reasonByCode, whyNot } from "../why-not.ts";

/** Its message is a sentence for the user. */
export class ArchiveFault extends Error {
  override readonly name = "ArchiveFault";
}

/** What the engine says in its own words of a disk that does not take what is written. */
const BY_WORDS: readonly (readonly [RegExp, string])[] = [
  [/no space left|disk full|ENOSPC/i, "the disk is full"],
  [/file too large/i, "no file may be that large here"],
  [/quota/i, "your share of the disk is used up"],
  [/permission denied/i, "its permissions do not allow it"],
  [/read-only file system/i, "the disk can only be read"],
  [/out of memory|failed to (?:allocate|pin)/i, "there is not enough memory"],
];

/** The reason for a failure, as the end of a sentence. */
export function reasonOf(error: unknown): string {
  const message = messageOf(error);
  return (
    reasonByCode(error) ??
    BY_WORDS.find(([words]) => words.test(message))?.[1] ??
    whyNot(error)
  );
}
