// The shell steps of docs/review.md, word for word, and the command that they run: built as it ships, in a folder of its own.
import { build } from "esbuild";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { restOnNode } from "../../.config/bundles.mjs";
import { folderWith } from "../cli/in-process.ts";
import { script } from "../cli/scratch-repository.ts";

export const root = path.resolve(import.meta.dirname, "../..");

/** The first block of shell below the heading that begins so. */
export async function pageBlock(heading: string): Promise<string> {
  const page = await readFile(path.join(root, "docs/review.md"), "utf8");
  const below = page.split(/^## /mu).find((each) => each.startsWith(heading));
  const [, block] =
    /^( *)```sh\n([^]*?)^\1```/mu.exec(below ?? "")?.slice(1) ?? [];
  if (block === undefined) throw new Error(`no shell below ${heading}`);
  return block;
}

/** A folder with `thou` in it and nothing else that is run. */
export async function commandFolder(): Promise<string> {
  const built = await folderWith({});
  await build(restOnNode(built));
  const bin = await folderWith({});
  await script(
    path.join(bin, "thou"),
    `#!/bin/sh\nexec '${process.execPath}' '${built}/cli.cjs' "$@"\n`,
  );
  return bin;
}
