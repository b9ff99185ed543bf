// What a path that is not there was perhaps meant to be: a record or a folder beside it.
import { readdir } from "node:fs/promises";
import path from "node:path";
import { isLeftOut, isRecordName } from "../record-names.ts";
import { nearestFiles } from "../rules/text/near.ts";
import { shown } from "./terminal-text.ts";

/** The names of the records in the folder of a file, sorted. */
export async function recordsBeside(file: string): Promise<readonly string[]> {
  const inside = await readdir(path.dirname(file), {
    withFileTypes: true,
  }).catch(() => []);
  return inside
    .filter((entry) => entry.isFile() && isRecordName(entry.name))
    .map(({ name }) => name)
    .sort();
}

/**
 * The end of a sentence that said it is not there: "; did you mean pump.thou?", or its full stop.
 * @param nameOf a file as the user knows it
 */
export async function endWithNear(
  at: string,
  nameOf: (file: string) => string,
): Promise<string> {
  const folder = path.dirname(at);
  const inside = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = inside
    .filter(
      (entry) =>
        // a link that leads nowhere is there by its name
        entry.name === path.basename(at) ||
        (!isLeftOut(entry.name) &&
          (entry.isDirectory() || isRecordName(entry.name))),
    )
    .map(({ name }) => name);
  const [near] = nearestFiles(path.basename(at), names);
  return near === undefined
    ? "."
    : `; did you mean ${shown(nameOf(path.join(folder, near)))}?`;
}
