#!/usr/bin/env node
// The process behind `thou`: its streams, its folder, its exit code. Everything else is run.ts's.
import { realpathSync, writeSync } from "node:fs";
import path from "node:path";
import { availableParallelism } from "node:os";
import { isatty } from "node:tty";
import { parentPort, Worker } from "node:worker_threads";
import { createProject } from "../rules/check.ts";
import { pages } from "../rules/pages.ts";
import type { Thread } from "./crew.ts";
import { serveChecks } from "./evaluate-many.ts";
import type { Io, Output } from "./io.ts";
import { run } from "./run.ts";
import { codeOf, whyNot } from "../why-not.ts";

/** A job may use a crib that lies anywhere: what it comes to must not hang on the folder that the check is started from. */
const parts = { createProject: () => createProject({ root: "" }), pages };

/** The bundles lie in one folder; the command may be reached through a link. */
const serverFile = path.join(
  path.dirname(realpathSync(process.argv[1] ?? ".")),
  "server.cjs",
);

/** Something that was written did not get where it was to go. */
let isLost = false;

const io: Io = {
  stdin: process.stdin,
  stdout: outputOf(process.stdout, isatty(1)),
  stderr: outputOf(process.stderr, isatty(2)),
  cwd: process.cwd(),
  env: process.env,
};

// no process.exit: what was written must first get out, and the language server goes on
if (parentPort === null) {
  process.on("exit", endedEarly);
  void run(process.argv.slice(2), io, {
    ...parts,
    serverFile,
    commandFile: __filename,
    startThread: () => threadOf(new Worker(__filename)),
    cores: availableParallelism(),
  }).then((code) => {
    process.off("exit", endedEarly);
    process.exitCode = isLost ? 2 : code;
  });
} else serveChecks(parts.createProject, parentPort);

/** A process ends as soon as nothing is left to wait for, its work done or not: then it has failed. */
function endedEarly(code: number): void {
  if (code !== 0) return;
  writeSync(2, "thou: it ended before its work was done: run it again.\n");
  process.exitCode = 2;
}

function threadOf(worker: Worker): Thread {
  return {
    post(batch) {
      worker.postMessage(batch);
    },
    listen(answer, ended) {
      let why = "it gave no reason";
      worker.on("message", answer);
      worker.on("error", (error) => {
        why = String(error);
      });
      worker.on("exit", () => {
        ended(why);
      });
    },
    stop() {
      worker.removeAllListeners();
      void worker.terminate();
    },
  };
}

/** What is written to a disk may not get there: that is said, and is no whole answer. */
function lost(stream: NodeJS.WriteStream, error: unknown): void {
  if (stream !== process.stdout || isLost || !isOfDisk(error)) return;
  isLost = true;
  process.exitCode = 2;
  process.stderr.write(
    `thou: standard output cannot be written: ${whyNot(error)}. What was said is not whole; run it again where there is room.\n`,
  );
}

function isOfDisk(error: unknown): boolean {
  return ["ENOSPC", "EDQUOT", "EFBIG", "EIO"].includes(codeOf(error) ?? "");
}

/** Whoever reads may leave early, as `head` does: then the rest goes nowhere and the exit code stays true. */
function outputOf(stream: NodeJS.WriteStream, isTerminal: boolean): Output {
  let isClosed = false;
  stream.on("error", (error) => {
    isClosed = true;
    lost(stream, error);
  });
  return {
    write(text) {
      if (!isClosed) stream.write(text);
    },
    drained: () =>
      new Promise((resolve) => {
        if (isClosed || !stream.writableNeedDrain) {
          resolve();
          return;
        }
        const events = ["drain", "close", "error"] as const;
        const go = (): void => {
          for (const each of events) stream.off(each, go);
          resolve();
        };
        for (const each of events) stream.on(each, go);
      }),
    isTerminal,
    get columns() {
      return stream.columns;
    },
    get isClosed() {
      return isClosed;
    },
  };
}
