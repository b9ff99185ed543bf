// The command as it ships, bundled into a folder of its own: for tests that start it as a process.
import { execFile } from "node:child_process";
import path from "node:path";
import { build } from "esbuild";
import { commandLine } from "../../.config/bundles.mjs";
import { folderWith } from "./in-process.ts";

/** The bundle, and the folder that it lies in. */
export async function bundledCommand(): Promise<{
  readonly folder: string;
  readonly command: string;
}> {
  const folder = await folderWith({});
  await build(commandLine(folder));
  return { folder, command: path.join(folder, "cli.cjs") };
}

/** Runs the engine to its end; the code is the signal's name where one ended it. */
export function runEngine(
  args: readonly string[],
  cwd: string,
  env: Readonly<Record<string, string>> = {},
): Promise<{
  readonly code: unknown;
  readonly out: string;
  readonly err: string;
}> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      args,
      { cwd, maxBuffer: 100_000_000, env: { ...process.env, ...env } },
      (error, out, err) => {
        const code = error === null ? 0 : (error.code ?? error.signal);
        resolve({ code, out, err });
      },
    );
  });
}
