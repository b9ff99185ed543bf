// The hash of each file that an export or a check with a cache reads, taken from the very bytes that are read: what is kept under a hash was worked out from them.
import { createHash } from "node:crypto";
import { readFile, stat } from "node:fs/promises";
import type { ReadBytes } from "./load-files.ts";

export interface Hashes {
  /** The hash of a record, read where it was not yet; `read` gives the same bytes once more. Null where the state that is read has none. Throws what the system says. */
  take(path: string): Promise<string | null>;
  /** Reads a file, whatever it is for; undefined where no plain file is there: a `use` must not make the tool wait on a device. */
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
    | { readonly path: string; readonly bytes: Uint8Array | undefined }
    | undefined;
  const read = async (path: string): Promise<Uint8Array | undefined> => {
    if (last?.path === path) return last.bytes;
    known.set(path, null);
    unreadable.delete(path);
    if (from === undefined && !(await isPlainFile(path))) return undefined;
    try {
      const bytes = await (from ?? readFile)(path);
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
      const bytes = await (from ?? readFile)(path);
      last = { path, bytes };
      return bytes === undefined ? null : hashOf(bytes);
    },
    read,
    async of(path) {
      const before = known.get(path);
      if (before !== undefined) return before;
      await read(path).catch(() => undefined);
      const now = known.get(path) ?? null;
      known.set(path, now);
      return now;
    },
    taken: (path) => known.get(path) ?? null,
    isUnreadable: (path) => unreadable.has(path),
  };
}

async function isPlainFile(path: string): Promise<boolean> {
  return stat(path).then(
    (what) => what.isFile(),
    () => false,
  );
}

/** SHA-256, in hexadecimal digits; of a text, that of its UTF-8. */
export function hashOf(bytes: Uint8Array | string): string {
  return createHash("sha256").update(bytes).digest("hex");
}
