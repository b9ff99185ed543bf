// Makes a folder on the disk, and those above it that are not there.
import { mkdir, stat } from "node:fs/promises";
import path from "node:path";
import { codeOf } from "./why-not.ts";

/**
 * Throws what the system says where it can't; one that is there already is no fault. Node's own `recursive` never ends on a file system that makes
 * no folders and answers that there is none such (`/proc`).
 */
export async function makeFolder(folder: string): Promise<void> {
  const fault = await faultOfMaking(folder);
  if (fault === undefined) return;
  const above = path.dirname(folder);
  // what is above it is missing, or nothing can be made there
  if (codeOf(fault) !== "ENOENT" || (await isFolder(above))) throw fault;
  await makeFolder(above);
  const again = await faultOfMaking(folder);
  if (again !== undefined) throw again;
}

/** What the system says of making one folder; nothing where it is there then, whoever made it. */
async function faultOfMaking(folder: string): Promise<unknown> {
  return mkdir(folder).then(
    () => undefined,
    async (error: unknown) => ((await isFolder(folder)) ? undefined : error),
  );
}

async function isFolder(at: string): Promise<boolean> {
  return stat(at).then(
    (what) => what.isDirectory(),
    () => false,
  );
}
