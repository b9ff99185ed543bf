// The server as it ships, one bundle in a process of its own, with an editor at the other end of its standard streams.
import { spawn } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { serverOnNode, session } from "../../.config/bundles.mjs";
import { createEditor } from "./editor.ts";

export interface Bundle {
  readonly file: string;
  remove(): Promise<void>;
}

/** Bundles an entry file, and the session beside it, as .config/build.mjs does. */
export async function bundle(entry?: string): Promise<Bundle> {
  const folder = await mkdtemp(join(tmpdir(), "thou-server-"));
  const path =
    entry === undefined
      ? undefined
      : fileURLToPath(new URL(entry, import.meta.url));
  await Promise.all([
    build(serverOnNode(folder, path)),
    build(session(folder)),
    // as the package's own says
    writeFile(join(folder, "package.json"), '{"type":"module"}'),
  ]);
  return {
    file: join(folder, "server.cjs"),
    remove: () => rm(folder, { recursive: true }),
  };
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
