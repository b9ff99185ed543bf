// A check that waits for threads of which nothing comes, and nothing else: the engine then ends the process as if all were well.
import { execFile } from "node:child_process";
import path from "node:path";
import { expect, test } from "vitest";
import { bundledCommand } from "./bundled-command.ts";
import { folderWith } from "./in-process.ts";

/** Threads that are never heard of. */
const MUTE = `require("node:worker_threads").Worker = class {
  postMessage() {}
  on() {}
  removeAllListeners() {}
  terminate() {}
};
`;

test("a check that ends before it is done says so, and its exit code is 2", async () => {
  const { command } = await bundledCommand();
  const records = Array.from(
    { length: 64 },
    (_, at) => [`r${at}.thou`, `job r-${at}\n  units mm\n`] as const,
  );
  const cwd = await folderWith({
    ...Object.fromEntries(records),
    "mute.cjs": MUTE,
  });
  const { code, err } = await new Promise<{
    readonly code: unknown;
    readonly err: string;
  }>((resolve) => {
    execFile(
      process.execPath,
      [
        "--require",
        path.join(cwd, "mute.cjs"),
        command,
        "check",
        "--jobs",
        "2",
      ],
      { cwd },
      (error, _, stderr) => {
        resolve({ code: error === null ? 0 : error.code, err: stderr });
      },
    );
  });
  expect(code).toBe(2);
  expect(err).toBe("thou: it ended before its work was done: run it again.\n");
}, 60_000);
