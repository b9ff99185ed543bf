// The language server under Node: over the standard streams or the channel of the process that started it, with the disk.
import { opendir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import manifest from "../package.json" with { type: "json" };
import { lastCommitOf } from "./history/last-commit.ts";
import { pastStatesOf } from "./history/past-states.ts";
import { systemClock } from "./lsp/clock.ts";
import type { FileAccess } from "./lsp/files.ts";
import { serve } from "./lsp/server.ts";
import { readerOf, writerOf } from "./main.stdio.ts";
import { readPlainFile } from "./plain-file.ts";
import { isLeftOut, isRecordName } from "./record-names.ts";

const disk: FileAccess = {
  async read(uri) {
    if (!uri.startsWith("file:")) return undefined;
    try {
      const bytes = await readPlainFile(fileURLToPath(uri));
      return bytes === undefined
        ? undefined
        : new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    } catch {
      return undefined;
    }
  },
  async *records(folder, here = false) {
    if (!folder.startsWith("file:")) return;
    for await (const path of recordsBelow(fileURLToPath(folder), here))
      yield pathToFileURL(path).href;
  },
};

async function* recordsBelow(
  folder: string,
  here: boolean,
): AsyncGenerator<string> {
  const entries = await opendir(folder).catch(() => undefined);
  if (entries === undefined) return;
  for await (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isFile() && isRecordName(entry.name)) yield path;
    else if (entry.isDirectory() && !here && !isLeftOut(entry.name))
      yield* recordsBelow(path, here);
  }
}

const connection = process.argv.includes("--stdio")
  ? standardStreams()
  : createConnection(ProposedFeatures.all);

/** The server ends with the streams: with 1 where the editor has not asked for it. */
function standardStreams() {
  const { stdin, stdout } = process;
  const made = createConnection(
    ProposedFeatures.all,
    readerOf(stdin),
    writerOf(stdout),
  );
  let isAsked = false;
  made.onShutdown(() => {
    isAsked = true;
  });
  for (const event of ["end", "close"])
    stdin.on(event, () => process.exit(isAsked ? 0 : 1));
  return made;
}

// every handler is guarded; this is for what none of them foresaw
for (const event of ["uncaughtException", "unhandledRejection"] as const)
  process.on(event, (error: unknown) => {
    const told =
      error instanceof Error ? (error.stack ?? error.message) : error;
    connection.console.error(`Unforeseen: ${String(told)}`);
  });

serve(connection, {
  files: disk,
  clock: systemClock,
  load: () => import("./lsp/session.ts"),
  version: manifest.version,
  lastCommit: (uri) => lastCommitOf(uri, process.env),
  pastStates: (uri) => pastStatesOf(uri, process.env),
});
