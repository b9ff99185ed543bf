// The hash of each file that an export or a check with a cache reads, taken from the very bytes that are read: what is kept under a hash was worked out from them.
import { createHash } from "node:crypto";
import { isPlainFile } from "../plain-file.ts";
import { readFromDisk, type ReadBytes } from "./load-files.ts";

export interface Hashes {
  /** The hash of a record, read where it was not yet; `read` gives the same bytes once more. Null where the state that is read has none. Throws what the system says. */
  take(path: string): Promise<string | null>;
  /**
   * Reads a file; undefined where no plain file is there: a `use` must not make the tool wait on a device. Of a record that was just taken it
   * gives the same bytes. The hash of what a `use` leads to is known from then on, that of any other record is not: there are too many.
   */
  readonly read: ReadBytes;
  /** The hash of a file, read where it was not yet; null where it is not there, is no plain file or can't be read. */
  of(path: string): Promise<string | null>;
  /** The hash of the bytes that `read` gave last; null where it gave none. */
  taken(path: string): string | null;
  /** Whether a file is there that could not be read. */
  isUnreadable(path: string): boolean;
}

/** @param from the state that files are read in; the disk where none is given */
export function createHashes(from?: ReadBytes): Hashes {
  const known = new Map<string, string | null>();
  const unreadable = new Set<string>();
  let last:
    | {
        readonly path: string;
        readonly bytes: Uint8Array | undefined;
        readonly hash: string | null;
      }
    | undefined;
  const read: ReadBytes = async (path, isUsed) => {
    if (last?.path === path) {
      // files may use one another: the record before is now one that this one rests on
      if (isUsed === true) known.set(path, last.hash);
      return last.bytes;
    }
    known.set(path, null);
    unreadable.delete(path);
    if (from === undefined && !(await isPlainFile(path))) return undefined;
    try {
      const bytes = await (from ?? readFromDisk)(path, isUsed);
      if (bytes !== undefined) known.set(path, hashOf(bytes));
      return bytes;
    } catch (error) {
      unreadable.add(path);
      throw error;
    }
  };
  return {
    async take(path) {
      // what was read for another record is what this one is worked out from too
      const before = known.get(path);
      if (typeof before === "string") return before;
      last = undefined;
      const bytes = await (from ?? readFromDisk)(path);
      const hash = bytes === undefined ? null : hashOf(bytes);
      last = { path, bytes, hash };
      return hash;
    },
    read,
    async of(path) {
      const before = known.get(path);
      if (before !== undefined) return before;
      await read(path, true).catch(() => undefined);
      const now = known.get(path) ?? null;
      known.set(path, now);
      return now;
    },
    taken: (path) => known.get(path) ?? null,
    isUnreadable: (path) => unreadable.has(path),
  };
}

/** SHA-256, in hexadecimal digits; of a text, that of its UTF-8. */
export function hashOf(bytes: Uint8Array | string): string {
  return createHash("sha256").update(bytes).digest("hex");
}
