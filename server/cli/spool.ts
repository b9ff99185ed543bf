// Lines that are wanted again, in their order, once all of them have come: the first megabyte is held, the rest lies in a temporary file of
// its own, so that memory stays flat however many there are. Where there is no room for such a file they are held after all.
import {
  closeSync,
  mkdtempSync,
  openSync,
  readSync,
  rmSync,
  writeSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

export interface Spool {
  /** A line has no line break in it. */
  add(line: string): void;
  /** All that were added, once: what lay in the file is gone then. */
  lines(): Iterable<string>;
}

/** UTF-16 units that are held before they are written, and bytes that are read at a time. */
const PIECE = 1 << 20;

/** @param folder where the temporary file may lie */
export function createSpool(folder = tmpdir()): Spool {
  let held: string[] = [];
  let size = 0;
  let file: TemporaryFile | undefined;
  let isRoom = true;

  const write = (): void => {
    const text = Buffer.from(held.map((line) => `${line}\n`).join(""));
    try {
      file ??= createFile(folder);
      file.append(text);
      held = [];
      size = 0;
    } catch {
      isRoom = false;
    }
  };

  return {
    add(line) {
      held.push(line);
      size += line.length;
      if (isRoom && PIECE < size) write();
    },
    *lines() {
      try {
        if (file !== undefined) yield* file.lines();
      } finally {
        file?.remove();
        file = undefined;
      }
      yield* held;
    },
  };
}

interface TemporaryFile {
  /** All of it, or an error and nothing. */
  append(bytes: Buffer): void;
  lines(): Iterable<string>;
  remove(): void;
}

function createFile(folder: string): TemporaryFile {
  // a folder of our own, which no one else may open
  const own = mkdtempSync(path.join(folder, "thou-"));
  const remove = (): void => {
    rmSync(own, { recursive: true, force: true });
  };
  const file = openSync(path.join(own, "lines"), "wx+", 0o600);
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
    },
    *lines() {
      const piece = Buffer.alloc(PIECE);
      let rest = Buffer.alloc(0);
      for (let at = 0; at < length;) {
        const count = readSync(
          file,
          piece,
          0,
          Math.min(PIECE, length - at),
          at,
        );
        if (count === 0) throw new Error("a temporary file was cut short");
        at += count;
        const bytes = Buffer.concat([rest, piece.subarray(0, count)]);
        const end = bytes.lastIndexOf("\n") + 1;
        rest = bytes.subarray(end);
        if (0 < end) yield* bytes.toString("utf8", 0, end - 1).split("\n");
      }
    },
    remove() {
      closeSync(file);
      remove();
    },
  };
}
