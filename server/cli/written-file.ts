// A file that a command writes: what is there before, and the whole text in one move. Whose file it is, each command says.
import type { Stats } from "node:fs";
import {
  access,
  constants,
  realpath,
  rename,
  stat,
  unlink,
  writeFile,
} from "node:fs/promises";
import path from "node:path";
import { readPlainFile } from "../plain-file.ts";
import { codeOf, whyNotWritten } from "../why-not.ts";
import { CannotRun } from "./io.ts";

/** The text that is there; undefined where there is no file yet. What is no file, a folder or a device, is refused and not read. */
export async function textThere(
  file: string,
  name: string,
): Promise<string | undefined> {
  try {
    const bytes = await readPlainFile(file);
    if (bytes !== undefined) return Buffer.from(bytes).toString("utf8");
  } catch (error) {
    if (codeOf(error) === "ENOENT") return undefined;
    throw cannotWrite(name, whyNotWritten(error));
  }
  throw noFile(name, await stat(file));
}

/** Of what is there and is no file. */
export function noFile(name: string, what: Stats): CannotRun {
  return cannotWrite(
    name,
    `it is ${what.isDirectory() ? "a folder" : "not a file"}`,
  );
}

/** In one move, so that no half file is ever seen, and what was there stays where the disk is full; a link stays a link. */
export async function writeWhole(
  file: string,
  text: string,
  name: string,
): Promise<void> {
  const target = await realpath(file).catch(() => file);
  const fresh = path.join(
    path.dirname(target),
    `.${path.basename(target)}.${process.pid}.tmp`,
  );
  try {
    await refuseReadOnly(target);
    await writeFile(fresh, text, { flag: "wx" });
    await rename(fresh, target);
  } catch (error) {
    await unlink(fresh).catch(() => undefined);
    throw cannotWrite(name, whyNotWritten(error));
  }
}

/** A move would put another in its place all the same. */
async function refuseReadOnly(target: string): Promise<void> {
  await access(target, constants.W_OK).catch((error: unknown) => {
    if (codeOf(error) !== "ENOENT") throw error;
  });
}

function cannotWrite(name: string, why: string): CannotRun {
  return new CannotRun(`${name} cannot be written: ${why}; name another file.`);
}
