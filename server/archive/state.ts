// How one state of an archive takes the place of another. archive.json names the state that holds, and is replaced in one go; `tables` leads to
// it; what is in no list goes. What is in a state is make-state.ts's.
import { readdir, readlink } from "node:fs/promises";
import path from "node:path";
import { shown } from "../model/plain-text.ts";
import { codeOf } from "../why-not.ts";
import type { Disk } from "./disk.ts";
import { ArchiveFault, reasonOf } from "./fault.ts";
import {
  LINK,
  MANIFEST,
  readManifest,
  STATES,
  type Manifest,
} from "./layout.ts";

/** Finishes or takes back what an export that was killed had begun: only the state that archive.json names stays. */
export async function settle(
  folder: string,
  manifest: Manifest | undefined,
  disk: Disk,
): Promise<void> {
  if (manifest !== undefined) await pointAt(folder, manifest.state, disk);
  for (const state of await statesIn(folder))
    if (state !== manifest?.state)
      await disk.remove(path.join(folder, STATES, state));
}

/** The same once a new state holds: then what goes wrong here costs nothing but room. */
export async function tidy(
  folder: string,
  name: string,
  manifest: Manifest,
  disk: Disk,
): Promise<void> {
  try {
    await settle(folder, manifest, disk);
  } catch (error) {
    throw untidied(name, error);
  }
}

export function untidied(name: string, error: unknown): ArchiveFault {
  return new ArchiveFault(
    `the archive in ${shown(name)} is written, but what it held before could not be cleared away: ${reasonOf(error)}. Make room or set the permissions right, and export again: that clears it away.`,
  );
}

async function statesIn(folder: string): Promise<readonly string[]> {
  return readdir(path.join(folder, STATES)).catch(() => []);
}

/** Makes `tables` lead to a state. Where the system has no such links there is none, and archive.json alone says where the state is. */
async function pointAt(
  folder: string,
  state: string,
  disk: Disk,
): Promise<void> {
  const at = path.join(folder, LINK);
  const target = `${STATES}/${state}`;
  if ((await readlink(at).catch(() => undefined)) === target) return;
  const next = `${at}.next`;
  try {
    await disk.remove(next);
    await disk.point(target, next);
    await disk.rename(next, at);
    await disk.sync(folder);
  } catch (error) {
    if (
      !["EPERM", "ENOSYS", "ENOTSUP", "EOPNOTSUPP", "EEXIST"].includes(
        codeOf(error) ?? "",
      )
    )
      throw error;
    // one that leads to what goes away now is worse than none
    await disk.remove(next);
    await disk.remove(at);
  }
}

export async function nextState(
  folder: string,
  manifest: Manifest | undefined,
): Promise<string> {
  const numbers = [...(await statesIn(folder)), manifest?.state ?? "0"].map(
    Number,
  );
  const last = Math.max(0, ...numbers.filter(Number.isInteger));
  return String(last + 1).padStart(6, "0");
}

export async function replaceManifest(
  folder: string,
  manifest: Manifest,
  disk: Disk,
): Promise<void> {
  const at = path.join(folder, MANIFEST);
  const next = `${at}.next`;
  await disk.write(next, `${JSON.stringify(manifest, undefined, 1)}\n`);
  await disk.rename(next, at);
  await disk.sync(folder);
}

/** Takes away a state that did not become whole. False where archive.json names it already: then it holds, and nothing is taken away. */
export async function takeBack(
  folder: string,
  state: string,
  disk: Disk,
): Promise<boolean> {
  const now = await readManifest(folder, folder).catch(() => undefined);
  if (now?.state === state) return false;
  // what can't be taken away now is by the next export
  for (const left of [path.join(STATES, state), `${MANIFEST}.next`])
    await disk.remove(path.join(folder, left)).catch(() => undefined);
  return true;
}
