// What git can't or won't give: each is a sentence with the way out, and exit code 2. Real git, a repository of its own for each.
import { rmSync } from "node:fs";
import { readdir, rm, symlink } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { git as runGit, withoutRepository } from "../../server/history/git.ts";
import { openRevision } from "../../server/history/revision.ts";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou } from "../cli/in-process.ts";
import {
  commitAll,
  CRIB,
  git,
  JOB,
  real,
  remove,
  repositoryWith,
  WORN,
  write,
  YARD,
} from "../cli/scratch-repository.ts";

/** What a command that can't run says. */
async function saidBy(
  cwd: string,
  words: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<string> {
  const ran = await thou(words, {
    cwd,
    parts: real.parts,
    env: { ...real.env, ...env },
  });
  expect(ran.code, words.join(" ")).toBe(2);
  expect(ran.err).not.toContain("fault of thou");
  return ran.err.replaceAll(/\s+/gu, " ");
}

const ASKING = [
  ["compare", "HEAD"],
  ["check", "--staged"],
  ["check", "--changed-since", "HEAD"],
] as const;

describe.each(ASKING.map((words) => [words]))("thou %s", (words) => {
  test("no git on the PATH", async () => {
    const cwd = await repositoryWith(YARD);
    const said = await saidBy(cwd, words, { PATH: await folderWith({}) });
    expect(said).toContain(
      "git is not installed, so that no state in version control can be read",
    );
  });

  test("a repository that belongs to someone else", async () => {
    const cwd = await repositoryWith(YARD);
    // git's own tests have it take everyone for another by this
    const said = await saidBy(cwd, words, {
      GIT_TEST_ASSUME_DIFFERENT_OWNER: "1",
    });
    expect(said).toContain("it belongs to another user of the machine");
    expect(said).toContain("safe.directory");
  });

  test("a bare repository", async () => {
    const cwd = await repositoryWith(YARD);
    const to = path.join(await folderWith({}), "yard.git");
    git(cwd, "clone", "--quiet", "--bare", ".", to);
    expect(await saidBy(to, words)).toContain(
      "a repository without files of its own (a bare one): clone it",
    );
  });

  test("a repository whose objects are gone", async () => {
    const cwd = await repositoryWith(YARD);
    await write(cwd, "jobs/pump.thou", WORN);
    git(cwd, "add", "--all");
    const objects = path.join(cwd, ".git/objects");
    for (const each of await readdir(objects))
      if (each.length === 2)
        await rm(path.join(objects, each), { recursive: true });
    expect(await saidBy(cwd, words)).toMatch(
      /git does not give .*: .*\. Try "git fsck"|git knows no state|no commit/u,
    );
  });
});

describe("compare", () => {
  const compare = async (
    cwd: string,
    ...words: readonly string[]
  ): Promise<{ code: number; err: string; out: string }> =>
    thou(["compare", ...words, "--format", "json"], { cwd, ...real });

  test("in a linked checkout, in a repository within another, with a detached head", async () => {
    const cwd = await repositoryWith(YARD);
    const places = await folderWith({});
    git(
      cwd,
      "worktree",
      "add",
      "--quiet",
      "--detach",
      path.join(places, "linked"),
    );
    const outer = await repositoryWith({ "note.txt": "" });
    git(outer, "submodule", "--quiet", "add", cwd, "within");
    for (const at of [
      path.join(places, "linked"),
      path.join(outer, "within"),
    ]) {
      const same = await compare(at, "HEAD");
      expect([same.code, same.err], at).toEqual([0, ""]);
      await write(at, "jobs/pump.thou", WORN);
      const worn = await compare(at, "HEAD");
      expect([worn.code, worn.err], at).toEqual([1, ""]);
      expect(worn.out).toContain('"file":"jobs/pump.thou"');
    }
  });

  test("a crib behind a link, and one outside of the repository", async () => {
    const folder = await folderWith({
      "shared/crib.thou": CRIB,
      "yard/tools.thou": CRIB,
      "yard/pump.thou": JOB,
      "yard/lever.thou": JOB.replace(
        "crib.thou",
        "../shared/crib.thou",
      ).replace("job pump", "job lever"),
    });
    const cwd = path.join(folder, "yard");
    await symlink("tools.thou", path.join(cwd, "crib.thou"));
    git(cwd, "init", "--quiet");
    commitAll(cwd, "as received");
    const { code, err, out } = await compare(cwd, "HEAD");
    expect([code, err]).toEqual([0, ""]);
    expect(out).not.toMatch(/"changes":\[\{/u);
  });

  test("revisions that begin with a dash, and other words that are none", async () => {
    const cwd = await repositoryWith(YARD);
    for (const name of ["-x", "--output=made", "--", "HEAD --all", "a..b", ""])
      expect(await saidBy(cwd, ["compare", "--", name, "jobs"])).toMatch(
        /git knows no state|an empty word names no state/u,
      );
    expect((await readdir(cwd)).sort()).toEqual([".git", "jobs"]);
  });

  test("an answer longer than it may be, or than one waits for", async () => {
    const cwd = await repositoryWith({ "long.thou": "#\n".repeat(100_000) });
    const answer = await runGit(
      cwd,
      ["show", "HEAD:long.thou"],
      real.env,
      1024,
    );
    expect(answer).toMatchObject({
      ok: false,
      said: "its answer is longer than 1 MB",
    });
  });

  test("the surroundings of a hook do not lead to its repository", async () => {
    const [one, two] = [await repositoryWith(YARD), await repositoryWith(YARD)];
    await write(two, "jobs/pump.thou", WORN);
    commitAll(two, "worn");
    const env = {
      ...real.env,
      GIT_DIR: path.join(one, ".git"),
      GIT_INDEX_FILE: "x",
    };
    const opened = await openRevision(two, "HEAD", withoutRepository(env));
    expect(opened.ok && opened.revision.repository.root).toBe(two);
    expect(withoutRepository(env)).toMatchObject(real.env);
  });
});

describe("files that go while they are read", () => {
  /** A project that takes a file away as soon as it has been given another. */
  const removing = (cwd: string, first: string, then: string) => ({
    createProject: () => {
      const project = createProject({ root: "" });
      return {
        ...project,
        setFile(...[at, lines]: Parameters<typeof project.setFile>) {
          if (at.endsWith(first)) rmSync(path.join(cwd, then), { force: true });
          project.setFile(at, lines);
        },
      };
    },
  });

  test.each([
    ["check", []],
    ["check", ["--changed-since", "HEAD"]],
    ["compare", ["HEAD"]],
  ])("thou %s %j", async (command, words) => {
    const cwd = await repositoryWith({
      "a.thou": "job a\n",
      "b.thou": "job b\n",
      "c.thou": "job c\n",
    });
    for (const name of ["a", "b", "c"])
      await write(cwd, `${name}.thou`, `job ${name}\n  units inch\n`);
    const ran = await thou([command, ...words, "--format", "json"], {
      cwd,
      env: real.env,
      parts: removing(cwd, "a.thou", "c.thou"),
    });
    expect(ran.code).toBe(2);
    expect(ran.err.replaceAll(/\s+/gu, " ")).toBe(
      "thou: c.thou cannot be read: there is no such file or folder. ",
    );
    expect(ran.out).toContain('"b.thou"');
  });

  test("staged files are there whatever lies on the disk", async () => {
    const cwd = await repositoryWith(YARD);
    await write(cwd, "jobs/pump.thou", WORN);
    git(cwd, "add", "--all");
    await remove(cwd, "jobs");
    const { code, err } = await thou(["check", "--staged"], { cwd, ...real });
    expect([code, err]).toEqual([1, ""]);
  });
});
