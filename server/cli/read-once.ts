// Files that are read from version control once and wanted again: their bytes wait in a temporary file, so that memory stays flat however many
// and long they are. The first megabyte is held, and so is all where there is no room for such a file.
import { tmpdir } from "node:os";
import type { ReadBytes } from "./load-files.ts";
import { createTemporaryFile, type TemporaryFile } from "./temporary-file.ts";

export interface ReadOnce {
  readonly read: ReadBytes;
  /** Lets go of all; nothing is read after it. */
  close(): void;
}

/** Bytes that are held before any are put aside. */
const HELD = 1 << 20;

interface Aside {
  readonly at: number;
  readonly length: number;
}

/** @param folder where the temporary file may lie */
export function createReadOnce(read: ReadBytes, folder = tmpdir()): ReadOnce {
  const known = new Map<string, Uint8Array | Aside | undefined>();
  let held = 0;
  let file: TemporaryFile | undefined;
  let isRoom = true;

  function kept(bytes: Uint8Array): Uint8Array | Aside {
    if (held + bytes.length <= HELD || !isRoom) {
      held += bytes.length;
      return bytes;
    }
    try {
      file ??= createTemporaryFile(folder);
      return { at: file.append(bytes), length: bytes.length };
    } catch {
      isRoom = false;
      return kept(bytes);
    }
  }

  function again(
    found: Uint8Array | Aside | undefined,
  ): Uint8Array | undefined {
    if (found === undefined || found instanceof Uint8Array) return found;
    const bytes = new Uint8Array(found.length);
    file?.read(bytes, found.at);
    return bytes;
  }

  return {
    async read(path, isUsed) {
      if (known.has(path)) return again(known.get(path));
      const bytes = await read(path, isUsed);
      known.set(path, bytes === undefined ? undefined : kept(bytes));
      return bytes;
    },
    close() {
      known.clear();
      file?.remove();
      file = undefined;
    },
  };
}
