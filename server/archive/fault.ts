// How work on an archive ends when the world does not allow it: one sentence for the user, with the way out.
import { shown } from "../model/plain-text.ts";

/** Its message is a sentence for the user. */
export class ArchiveFault extends Error {
  override readonly name = "ArchiveFault";
}

const BY_CODE: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is used up",
  EACCES: "its permissions do not allow it",
  EPERM: "its permissions do not allow it",
  EROFS: "the disk can only be read",
  ENOENT: "it is not there",
  EEXIST: "a file of that name is there already",
  ENOTDIR: "a part of its path is a file, not a folder",
  EISDIR: "it is a folder",
  EFBIG: "no file may be that large here",
  EMFILE: "too many files are open",
  EIO: "the disk reports a fault",
};

/** What the engine says in its own words of a disk that does not take what is written. */
const BY_WORDS: readonly (readonly [RegExp, string])[] = [
  [/no space left|disk full|ENOSPC/i, "the disk is full"],
  [/file too large/i, "no file may be that large here"],
  [/quota/i, "your share of the disk is used up"],
  [/permission denied/i, "its permissions do not allow it"],
  [/read-only file system/i, "the disk can only be read"],
  [/out of memory|failed to (?:allocate|pin)/i, "there is not enough memory"],
];

/** The reason for a failure, as the end of a sentence; the system's own words where there are none of ours. */
export function reasonOf(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  const code = codeOf(error);
  const known = code === undefined ? undefined : BY_CODE[code];
  return (
    known ??
    BY_WORDS.find(([words]) => words.test(message))?.[1] ??
    shown(message.split("\n")[0] ?? "").replace(/\.$/, "")
  );
}

export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && "code" in error
    ? String(error.code)
    : undefined;
}
