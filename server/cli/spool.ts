// Lines that are wanted again, in their order, once all of them have come: the first megabyte is held, the rest lies in a temporary file of
// its own, so that memory stays flat however many there are. Where there is no room for such a file they are held after all.
import { tmpdir } from "node:os";
import { createTemporaryFile, type TemporaryFile } from "./temporary-file.ts";

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
      file ??= createTemporaryFile(folder);
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
        if (file !== undefined) yield* linesIn(file);
      } finally {
        file?.remove();
        file = undefined;
      }
      yield* held;
    },
  };
}

function* linesIn(file: TemporaryFile): Iterable<string> {
  let rest = Buffer.alloc(0);
  for (let at = 0; at < file.length();) {
    const piece = Buffer.alloc(Math.min(PIECE, file.length() - at));
    file.read(piece, at);
    at += piece.length;
    const bytes = Buffer.concat([rest, piece]);
    const end = bytes.lastIndexOf("\n") + 1;
    rest = bytes.subarray(end);
    if (0 < end) yield* bytes.toString("utf8", 0, end - 1).split("\n");
  }
}
