// What comes on standard input: all of it, or a record that another program has open.
import path from "node:path";
import { forward, isFolder, nameFrom, type FoundFile } from "./find-files.ts";
import { CannotRun, STANDARD_INPUT, type Io } from "./io.ts";
import { plainFromDisk, type ReadBytes } from "./load-files.ts";
import { shown } from "./terminal-text.ts";

export const AS_MEANS =
  "where the record on standard input belongs: from there it uses others";

export async function allOf(stdin: Io["stdin"]): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of stdin) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks);
}

/** One record, which another program writes: it is taken to lie where it belongs, and uses the files that lie there. */
export async function recordOnStandardInput(
  as: string | undefined,
  { stdin, cwd }: Pick<Io, "stdin" | "cwd">,
): Promise<{ readonly file: FoundFile; readonly read: ReadBytes }> {
  const at = forward(path.resolve(cwd, as ?? STANDARD_INPUT));
  // an empty word is this folder
  if (as !== undefined && (await isFolder(at)))
    throw new CannotRun(
      `--as takes the file that the record stands for, such as ${shown(nameFrom(cwd, path.join(at, "winch.thou")))}, and not a folder.`,
    );
  const bytes = await allOf(stdin);
  return {
    file: { path: at, name: nameFrom(cwd, at) },
    read: async (file) => (file === at ? bytes : plainFromDisk(file)),
  };
}

/** `--as` beside a path that is not standard input says nothing. */
export function refuseAs(as: string | undefined): void {
  if (as !== undefined)
    throw new CannotRun(
      "--as says where the record on standard input belongs: give - as the only path.",
    );
}
