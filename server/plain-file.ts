// Whether there is a file to read, and what is in it. Anything but a plain one counts as not there: a `use` must not make whoever reads it wait
// on a device.
import { readFile, stat } from "node:fs/promises";

export async function isPlainFile(path: string): Promise<boolean> {
  return stat(path).then(
    (what) => what.isFile(),
    () => false,
  );
}

/** The bytes of a plain file; undefined for what is there and is none. Throws what the system says of one that is not there or can't be read. */
export async function readPlainFile(
  path: string,
): Promise<Uint8Array | undefined> {
  return (await stat(path)).isFile() ? await readFile(path) : undefined;
}
