// Runs the command line inside the test: a folder of its own, streams that are kept, and whatever project the test wants.
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll } from "vitest";
import type { ExitCode, Output, Parts } from "../../server/cli/io.ts";
import { run } from "../../server/cli/run.ts";
import { createFakeProject, type FakeWorld } from "./fake-project.ts";

export interface Ran {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

export interface World {
  readonly cwd: string;
  readonly project?: FakeWorld;
  readonly parts?: Partial<Parts>;
  readonly stdin?: string | Uint8Array | readonly (string | Uint8Array)[];
  readonly columns?: number;
  /** A terminal, for colours. */
  readonly terminal?: boolean;
  readonly env?: Readonly<Record<string, string>>;
}

export async function thou(
  words: readonly string[],
  world: World,
): Promise<Ran> {
  const out = keep(world);
  const err = keep(world);
  const io = {
    stdin: chunks(world.stdin),
    stdout: out,
    stderr: err,
    cwd: world.cwd,
    env: world.env ?? {},
  };
  const parts: Parts = {
    createProject: () => createFakeProject(world.project ?? { checks: {} }),
    pages: {},
    serverFile: path.join(world.cwd, "server.cjs"),
    ...world.parts,
  };
  const code = await run(words, io, parts);
  return { code, out: out.text(), err: err.text() };
}

async function* chunks(
  stdin: World["stdin"],
): AsyncGenerator<string | Uint8Array> {
  // a stream never gives its pieces at once
  await Promise.resolve();
  if (stdin === undefined) return;
  if (typeof stdin === "string" || stdin instanceof Uint8Array) yield stdin;
  else yield* stdin;
}

function keep(world: World): Output & { text(): string } {
  let kept = "";
  return {
    write(text) {
      kept += text;
    },
    drained: () => Promise.resolve(),
    isTerminal: world.terminal ?? false,
    columns: world.columns,
    isClosed: false,
    text: () => kept,
  };
}

const made: string[] = [];
afterAll(async () => {
  for (const folder of made.splice(0))
    await rm(folder, { recursive: true, force: true });
});

/** A folder with these files, gone after the tests of the file that asked for it. */
export async function folderWith(
  files: Readonly<Record<string, string | Uint8Array>>,
): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), "thou-cli-"));
  made.push(folder);
  for (const [name, content] of Object.entries(files)) {
    const at = path.join(folder, name);
    await mkdir(path.dirname(at), { recursive: true });
    await writeFile(at, content);
  }
  return folder;
}
