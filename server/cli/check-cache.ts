// Whether a check keeps its answers, and where. How they are kept is answer-cache.ts's.
import { randomUUID } from "node:crypto";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { prepareCache, type CacheOptions } from "./answer-cache.ts";
import { hashOf } from "./hashes.ts";
import type { Context } from "./io.ts";
import { version } from "./version.ts";

/**
 * Undefined where there is to be none, or where the folder can't be used: `note` has then been told why.
 * @param asked the folder of --cache; false for --no-cache; undefined for neither
 */
export async function cacheFor(
  asked: string | false | undefined,
  { io, parts }: Context,
  note: (sentence: string) => void,
): Promise<CacheOptions | undefined> {
  const name = asked === false ? "" : (asked ?? io.env.THOU_CACHE ?? "");
  if (name === "") return undefined;
  const folder = path.resolve(io.cwd, name);
  const why = await prepareCache(folder, name);
  if (why === undefined)
    return { folder, build: await buildOf(parts.commandFile) };
  note(why);
  return undefined;
}

/** The version, and the very bytes of the tool: a build of the same version may answer otherwise. */
async function buildOf(commandFile: string | undefined): Promise<string> {
  if (commandFile === undefined) return version;
  const bytes = await readFile(commandFile).catch(
    // what can not be told apart from others is never taken
    () => randomUUID(),
  );
  return `${version} ${hashOf(bytes)}`;
}
