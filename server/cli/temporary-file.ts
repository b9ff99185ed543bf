// A file for what is wanted again and need not be held: in a folder that no one else may open, gone with the process at the latest.
import {
  closeSync,
  mkdtempSync,
  openSync,
  readSync,
  rmSync,
  writeSync,
} from "node:fs";
import path from "node:path";

export interface TemporaryFile {
  /** Puts the bytes at the end, all of them, and says where they begin; or an error, and nothing. */
  append(bytes: Uint8Array): number;
  /** Fills `into` with what begins there. */
  read(into: Uint8Array, at: number): void;
  /** How many bytes it has. */
  length(): number;
  remove(): void;
}

/** @param folder where it may lie; throws where there is no room for it */
export function createTemporaryFile(folder: string): TemporaryFile {
  // a folder of our own, which no one else may open
  const own = mkdtempSync(path.join(folder, "thou-"));
  const remove = (): void => {
    rmSync(own, { recursive: true, force: true });
  };
  const file = openSync(path.join(own, "kept"), "wx+", 0o600);
  try {
    // most systems let it be read until it is closed: then it is gone even where the process is killed
    remove();
  } catch {
    // the others remove it at the end
  }
  let length = 0;
  return {
    append(bytes) {
      for (let at = 0; at < bytes.length;)
        at += writeSync(file, bytes, at, bytes.length - at, length + at);
      length += bytes.length;
      return length - bytes.length;
    },
    read(into, from) {
      for (let at = 0; at < into.length;) {
        const count = readSync(file, into, at, into.length - at, from + at);
        if (count === 0) throw new Error("a temporary file was cut short");
        at += count;
      }
    },
    length: () => length,
    remove() {
      closeSync(file);
      remove();
    },
  };
}
