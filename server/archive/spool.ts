// The rows of the records of one part that is still to be written: on the disk, table by table, so that memory holds what few records come to
// and not all that an export has. The file is one of an export's own; nobody else reads it.
import { closeSync, openSync, readSync } from "node:fs";
import type { Disk } from "./disk.ts";
import { TABLE_NAMES, type Row, type Rows, type TableName } from "./schema.ts";

export interface Spool {
  /** Puts the rows of one record after those that are there, and says how many these are. */
  add(rows: Rows): Promise<number>;
  /** The rows of one table in the order that they came, some at a time. */
  read(table: TableName): Promise<Iterable<readonly Row[]>>;
}

/** Rows that are written, and read back, together. */
const PIECE = 1000;
/** Characters that wait before they go to the disk. */
const WAITING = 200_000;

/** @param file is made with the first rows that go to the disk */
export function openSpool(file: string, disk: Disk): Spool {
  const pieces = new Map<TableName, { at: number; length: number }[]>(
    TABLE_NAMES.map((table) => [table, []]),
  );
  let waiting: string[] = [];
  let characters = 0;
  let end = 0; // bytes, with those that wait

  async function flush(): Promise<void> {
    if (characters === 0) return;
    const text = waiting.join("");
    [waiting, characters] = [[], 0];
    await disk.append(file, text);
  }

  return {
    async add(rows) {
      let count = 0;
      for (const [table, places] of pieces)
        for (let from = 0; from < rows[table].length; from += PIECE) {
          const some = rows[table].slice(from, from + PIECE);
          const text = JSON.stringify(some);
          const length = Buffer.byteLength(text);
          places.push({ at: end, length });
          end += length;
          waiting.push(text);
          characters += text.length;
          count += some.length;
          if (WAITING < characters) await flush();
        }
      return count;
    },
    async read(table) {
      await flush();
      return piecesOf(file, pieces.get(table) ?? []);
    },
  };
}

function* piecesOf(
  file: string,
  places: readonly { readonly at: number; readonly length: number }[],
): Iterable<readonly Row[]> {
  if (places.length === 0) return;
  const handle = openSync(file, "r");
  // one for all: memory beside the heap is given back late
  const bytes = Buffer.allocUnsafe(
    Math.max(...places.map(({ length }) => length)),
  );
  try {
    for (const { at, length } of places) {
      if (readSync(handle, bytes, 0, length, at) !== length)
        throw new Error("what an export had put aside is cut short");
      yield JSON.parse(bytes.toString("utf8", 0, length)) as readonly Row[]; // as it was written above
    }
  } finally {
    closeSync(handle);
  }
}
