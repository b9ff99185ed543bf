// A check that waits for threads of which nothing comes, and nothing else: the engine then ends the process as if all were well.
import path from "node:path";
import { expect, test } from "vitest";
import { bundledCommand, runEngine } from "./bundled-command.ts";
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
  const { code, err } = await runEngine(
    ["--require", path.join(cwd, "mute.cjs"), command, "check", "--jobs", "2"],
    cwd,
  );
  expect(code).toBe(2);
  expect(err).toBe("thou: it ended before its work was done: run it again.\n");
}, 60_000);
