// The names of many files in the byte order of their UTF-8, as the bytes themselves: a name that waits for its turn costs these and four
// more. As strings, with the path that they stand for, a hundred thousand take the memory of ten times as many.

export interface NameList {
  readonly length: number;
  at(index: number): string;
}

export interface Names {
  add(name: string): void;
  /** All that were added, in order; nothing is added after it. */
  sorted(): NameList;
}

const FIRST_BYTES = 4096;

export function createNames(): Names {
  let bytes = Buffer.alloc(FIRST_BYTES);
  let end = 0;
  /** Where each begins. */
  const starts: number[] = [];
  return {
    add(name) {
      const size = Buffer.byteLength(name);
      if (bytes.length < end + size) {
        const larger = Buffer.alloc(Math.max(2 * bytes.length, end + size));
        bytes.copy(larger, 0, 0, end);
        bytes = larger;
      }
      starts.push(end);
      end += bytes.write(name, end);
    },
    sorted() {
      const from = Uint32Array.from([...starts, end]);
      const order = Uint32Array.from(starts.keys()).sort((a, b) =>
        bytes.compare(bytes, from[b], from[b + 1], from[a], from[a + 1]),
      );
      const packed = packedIn(order, bytes, from);
      bytes = Buffer.alloc(0);
      return listOf(packed);
    },
  };
}

interface Packed {
  readonly bytes: Buffer;
  /** Where each begins, and where the last ends. */
  readonly starts: Uint32Array;
}

/** The same names one behind the other in another order, and no byte more. */
function packedIn(
  order: Uint32Array,
  bytes: Buffer,
  from: Uint32Array,
): Packed {
  const packed = Buffer.alloc(from[order.length] ?? 0);
  const starts = new Uint32Array(order.length + 1);
  let end = 0;
  order.forEach((index, at) => {
    end += bytes.copy(packed, end, from[index], from[index + 1]);
    starts[at + 1] = end;
  });
  return { bytes: packed, starts };
}

/** By itself, so that nothing of how the names came in is held with it. */
function listOf({ bytes, starts }: Packed): NameList {
  return {
    length: starts.length - 1,
    at: (index) => bytes.toString("utf8", starts[index], starts[index + 1]),
  };
}
