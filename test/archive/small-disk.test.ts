// A disk that takes no more: the system's own limit on the size of a file stands for it, since it makes writes fail anywhere. The bundled
// command, as a process of its own.
import { spawnSync } from "node:child_process";
import { readdir, symlink, writeFile } from "node:fs/promises";
import path from "node:path";
import { beforeAll, expect, test } from "vitest";
import { bundledCommand } from "../cli/bundled-command.ts";
import { folderWith } from "../cli/in-process.ts";
import { CRIB, job } from "./shop.ts";

let command = "";

beforeAll(async () => {
  const made = await bundledCommand();
  command = made.command;
  await symlink(
    path.resolve("node_modules"),
    path.join(made.folder, "node_modules"),
    "dir",
  );
});

/** @param kilobytes that a file may have */
function limited(
  kilobytes: number | "unlimited",
  cwd: string,
  ...words: readonly string[]
): {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
} {
  const { status, stdout, stderr } = spawnSync(
    "bash",
    [
      "-c",
      `ulimit -f ${String(kilobytes)}; exec "$@"`,
      "bash",
      ...[process.execPath, command, ...words],
    ],
    {
      cwd,
      encoding: "utf8",
      env: { ...process.env, FORCE_COLOR: "0", NODE_OPTIONS: "" },
    },
  );
  return { code: status, out: stdout, err: stderr.replaceAll(/\s+/gu, " ") };
}

const SHOP = {
  "jobs/crib.thou": CRIB,
  "jobs/a.thou": job("a", "2025-03-01"),
  "jobs/b.thou": job("b", "2026-03-01"),
};

test("an export says so, the archive holds what it held, and the next export is as if nothing had been", async () => {
  const cwd = await folderWith({ ...SHOP, "jobs/z.thou": "job z\n" });
  const exported = ["export", "jobs", "--out", "archive"];
  const ask = (): unknown =>
    limited(
      "unlimited",
      cwd,
      "ask",
      "open-concessions",
      "--archive",
      "archive",
    );
  expect(limited("unlimited", cwd, ...exported, "jobs/z.thou").code).toBe(0);
  const before = ask();
  expect(before).toMatchObject({ code: 0 });
  await writeFile(path.join(cwd, "jobs/c.thou"), job("c", "2026-04-01"));
  const full = limited(8, cwd, ...exported);
  expect(full.code).toBe(2);
  expect(full.err).toBe(
    "thou: the archive in archive cannot be written: no file may be that large here. What it held before, it still holds; put that right and export again. ",
  );
  expect(ask()).toEqual(before);
  expect(await readdir(path.join(cwd, "archive"))).not.toContain("work");
  expect(limited("unlimited", cwd, ...exported).out).toContain(
    "the archive in archive holds 5 records",
  );
}, 60_000);

test("a check that can't keep its answers says so once and is the same", async () => {
  const cwd = await folderWith(SHOP);
  const plain = limited("unlimited", cwd, "check");
  const full = limited(1, cwd, "check", "--cache", ".answers");
  expect([full.code, full.out]).toEqual([plain.code, plain.out]);
  expect(full.err).toBe(
    "thou: answers cannot be kept for the next check: no file may be that large here. This check is not affected. ",
  );
  expect(await readdir(path.join(cwd, ".answers/writing"))).toEqual([]);
  const after = limited("unlimited", cwd, "check", "--cache", ".answers");
  expect([after.out, after.err]).toEqual([plain.out, ""]);
}, 60_000);
