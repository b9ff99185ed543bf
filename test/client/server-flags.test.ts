// What Node is told when the extension starts its server. A flag that a Node does not know ends it at once, and with it the extension's server.
import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import flags from "../../client/server-flags.json" with { type: "json" };

const SPACES = "JSON.stringify(v8.getHeapSpaceStatistics())";

/** MB that the young generation has grown to, after much that is let go of at once. */
function young(flags: readonly string[]): number {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [
      ...flags,
      "-p",
      `let kept = []; for (let n = 0; n < 3e6; n++) { kept.push({ n }); if (5e5 < kept.length) kept = []; } ${SPACES}`,
    ],
    { encoding: "utf8" },
  );
  expect(stderr).toBe("");
  expect(status).toBe(0);
  const spaces = JSON.parse(stdout) as {
    space_name: string;
    space_size: number;
  }[];
  const size = spaces.find(({ space_name }) => space_name === "new_space");
  return (size?.space_size ?? 0) / 2 ** 20;
}

test("this Node takes them, and keeps its young generation small", () => {
  expect(flags).not.toEqual([]);
  expect(young(flags)).toBeLessThan(young([]));
});
