// The command as it ships, bundled into a folder of its own: for tests that start it as a process.
import path from "node:path";
import { build } from "esbuild";
import { folderWith } from "./in-process.ts";

/** The bundle, and the folder that it lies in. */
export async function bundledCommand(): Promise<{
  readonly folder: string;
  readonly command: string;
}> {
  const folder = await folderWith({});
  const command = path.join(folder, "cli.cjs");
  await build({
    entryPoints: ["server/cli/main.ts"],
    outfile: command,
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    external: ["@duckdb/node-api"],
    minify: true,
    logLevel: "silent",
  });
  return { folder, command };
}
