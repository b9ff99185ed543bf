// Makes a folder on the disk, and those above it that are not there.
import { mkdir, stat } from "node:fs/promises";
import path from "node:path";
import { codeOf } from "./why-not.ts";

/**
 * Throws what the system says where it can't; one that is there already is no fault. Node's own `recursive` never ends on a file system that makes
 * no folders and answers that there is none such (`/proc`).
 */
export async function makeFolder(folder: string): Promise<void> {
  try {
    await makeOne(folder);
  } catch (error) {
    const above = path.dirname(folder);
    // what is above it is missing, or nothing can be made there
    if (codeOf(error) !== "ENOENT" || (await isFolder(above))) throw error;
    await makeFolder(above);
    await makeOne(folder);
  }
}

/** It may be there already, or another may make it at this moment. */
async function makeOne(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (error) {
    if (!(await isFolder(folder))) throw error;
  }
}

async function isFolder(at: string): Promise<boolean> {
  return stat(at).then(
    (what) => what.isDirectory(),
    () => false,
  );
}
