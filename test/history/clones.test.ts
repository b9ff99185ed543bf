// A clone that holds only the newest commits, a head that is on no branch, a record that was renamed: real git, a repository for each.
import { rename } from "node:fs/promises";
import path from "node:path";
import { expect, test } from "vitest";
import { folderWith, thou } from "../cli/in-process.ts";
import {
  commitAll,
  CRIB,
  git,
  real,
  repositoryWith,
  WORN,
  write,
  YARD,
} from "../cli/scratch-repository.ts";

async function ran(
  cwd: string,
  ...words: readonly string[]
): Promise<{
  readonly code: number;
  readonly out: string;
  readonly err: string;
}> {
  const { code, out, err } = await thou(words, { cwd, ...real });
  return { code, out, err: err.replaceAll(/\s+/gu, " ") };
}

test("a shallow clone: what it lacks is said, with the way to get it; what it has is answered", async () => {
  const from = await repositoryWith(YARD);
  git(from, "branch", "base");
  await write(from, "jobs/pump.thou", WORN);
  commitAll(from, "worn");
  await write(from, "jobs/crib.thou", `${CRIB}# counted\n`);
  commitAll(from, "counted");
  const cwd = path.join(await folderWith({}), "clone");
  git(from, "clone", "--quiet", "--depth", "1", `file://${from}`, cwd);
  git(cwd, "fetch", "--quiet", "--depth", "1", "origin", "base:base");
  for (const words of [
    ["compare", "HEAD~1"],
    ["check", "--changed-since", "base"],
  ]) {
    const { code, err } = await ran(cwd, ...words);
    expect([code, err], words.join(" ")).toEqual([
      2,
      expect.stringMatching(
        /only the newest commits: fetch the rest first \("git fetch --unshallow"\)/u,
      ),
    ]);
  }
  expect(await ran(cwd, "check", "--staged")).toMatchObject({ code: 0 });
  expect((await ran(cwd, "compare", "base")).out).toContain("journal drive");
  git(cwd, "fetch", "--quiet", "--unshallow");
  expect((await ran(cwd, "check", "--changed-since", "base")).code).toBe(1);
});

test("a head on no branch, and a record that was renamed on it", async () => {
  const cwd = await repositoryWith(YARD);
  git(cwd, "branch", "base");
  git(cwd, "checkout", "--quiet", "--detach");
  git(cwd, "mv", "jobs/pump.thou", "jobs/lift.thou");
  const staged = await ran(cwd, "check", "--staged", "--format", "json");
  expect([staged.code, staged.err]).toEqual([0, ""]);
  // what the branch would have changed, and no more
  expect(
    (JSON.parse(staged.out) as { files: { file: string }[] }).files.map(
      ({ file }) => file,
    ),
  ).toEqual(["jobs/lift.thou"]);
  const moved = await ran(cwd, "compare", "HEAD");
  expect([moved.code, moved.err]).toEqual([0, ""]);
  expect(moved.out).toContain("jobs/lift.thou, moved from jobs/pump.thou");
  commitAll(cwd, "renamed");
  const since = await ran(
    cwd,
    "check",
    "--changed-since",
    "base",
    "--format",
    "json",
  );
  expect(since.out).toContain('"jobs/lift.thou"');
});

test("an archive follows a rename: the record is there once, by its new name", async () => {
  const cwd = await folderWith(YARD);
  const exported = (): ReturnType<typeof ran> =>
    ran(cwd, "export", "jobs", "--out", "archive");
  await exported();
  await rename(
    path.join(cwd, "jobs/pump.thou"),
    path.join(cwd, "jobs/lift.thou"),
  );
  expect(await exported()).toEqual({
    code: 0,
    out: "1 record worked out, 1 left as they were, 1 taken out; the archive in archive holds 2 records.\n",
    err: "",
  });
});
