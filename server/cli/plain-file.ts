// Whether there is a file to read. Anything but a plain one counts as not there: a `use` must not make the tool wait on a device.
import { stat } from "node:fs/promises";

export async function isPlainFile(path: string): Promise<boolean> {
  return stat(path).then(
    (what) => what.isFile(),
    () => false,
  );
}
