// The server as it ships, one bundle in a process of its own, with an editor at the other end of its standard streams.
import { spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { createEditor } from "./editor.ts";

export interface Bundle {
  readonly file: string;
  remove(): Promise<void>;
}

/** Bundles an entry file as .config/build.mjs does. */
export async function bundle(
  entry = "../../server/main.node.ts",
): Promise<Bundle> {
  const folder = await mkdtemp(join(tmpdir(), "thou-server-"));
  const file = join(folder, "server.cjs");
  await build({
    entryPoints: [fileURLToPath(new URL(entry, import.meta.url))],
    outfile: file,
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    logLevel: "warning",
  });
  return { file, remove: () => rm(folder, { recursive: true }) };
}

/** Starts a bundle; the editor's `start` is the caller's. */
export function spawnServer({ file }: Bundle) {
  const child = spawn(process.execPath, [file, "--stdio"], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  const ended = new Promise<number | null>((resolve) => {
    child.on("exit", resolve);
  });
  return { editor: createEditor(child.stdout, child.stdin), child, ended };
}
