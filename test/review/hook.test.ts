// The hook of docs/review.md, put in place as the page says and run by git itself on real commits, with the command line as it ships.
import { execFile } from "node:child_process";
import { readFile, readdir } from "node:fs/promises";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { folderWith } from "../cli/in-process.ts";
import {
  CRIB,
  git,
  JOB,
  real,
  repositoryWith,
  script,
  WORN,
  write,
} from "../cli/scratch-repository.ts";
import { commandFolder, pageBlock, root } from "./page.ts";

let bin = "";
beforeAll(async () => {
  bin = await commandFolder();
});

interface Ended {
  readonly code: number;
  readonly said: string;
}

/** Runs a command line of a shell, with `thou` on the PATH. */
function shell(
  cwd: string,
  line: string,
  PATH = `${bin}${path.delimiter}${process.env.PATH ?? ""}`,
): Promise<Ended> {
  return new Promise((resolve) => {
    execFile(
      "/bin/sh",
      ["-c", line],
      {
        cwd,
        env: {
          ...real.env,
          PATH,
          GIT_AUTHOR_NAME: "Yard",
          GIT_AUTHOR_EMAIL: "yard@example.org",
          GIT_COMMITTER_NAME: "Yard",
          GIT_COMMITTER_EMAIL: "yard@example.org",
        },
      },
      (error, stdout, stderr) => {
        resolve({
          code:
            error === null
              ? 0
              : typeof error.code === "number"
                ? error.code
                : 2,
          said: stdout + stderr,
        });
      },
    );
  });
}

/** A repository with the hook in it. */
async function hooked(
  files: Readonly<Record<string, string>> = {
    "jobs/pump.thou": JOB,
    "jobs/crib.thou": CRIB,
  },
): Promise<string> {
  const cwd = await repositoryWith(files);
  const steps = (await pageBlock("A hook that stops")).replaceAll(
    "../thou/",
    `${root}/`,
  );
  expect(await shell(cwd, steps)).toEqual({ code: 0, said: "" });
  return cwd;
}

const count = (cwd: string): number =>
  Number(git(cwd, "rev-list", "--count", "HEAD"));

describe("the hook", () => {
  test("a commit is stopped, mended, and goes in without a word", async () => {
    const cwd = await hooked();
    await write(cwd, "jobs/pump.thou", WORN);
    const stopped = await shell(cwd, "git commit --quiet --all --message=worn");
    expect(stopped.code).not.toBe(0);
    expect(stopped.said).toMatch(
      /jobs\/pump\.thou:\d+:\d+ error reading-off-limits/,
    );
    expect(stopped.said).toContain("Not committed: mend what is said above");
    expect(count(cwd)).toBe(1);
    await write(cwd, "jobs/pump.thou", JOB.replace("0.8741", "0.8740"));
    expect(
      await shell(cwd, "git commit --quiet --all --message=read-again"),
    ).toEqual({ code: 0, said: "" });
    expect(count(cwd)).toBe(2);
  });

  test("in part: what is staged counts, whatever lies on the disk", async () => {
    const cwd = await hooked();
    await write(cwd, "jobs/pump.thou", WORN);
    git(cwd, "add", "--all");
    await write(cwd, "jobs/pump.thou", JOB);
    expect((await shell(cwd, "git commit --message=worn")).code).not.toBe(0);
    await write(cwd, "jobs/new.thou", "job new\n");
    git(cwd, "add", "--all");
    await write(cwd, "jobs/pump.thou", WORN);
    expect((await shell(cwd, "git commit --message=good")).code).toBe(0);
    // a commit of one file has a stage of its own
    await write(cwd, "jobs/new.thou", "job new\n  units inch\n");
    expect((await shell(cwd, "git commit -m one jobs/new.thou")).code).toBe(0);
    expect(
      (await shell(cwd, "cd jobs && git commit -m two pump.thou")).code,
    ).not.toBe(0);
  });

  test("a crib has its jobs checked; a deleted crib too; names that need care", async () => {
    const odd = '-a b \'ö "x".thou';
    const cwd = await hooked({ [odd]: JOB, "crib.thou": CRIB });
    await write(cwd, "crib.thou", CRIB.replace("0.8750", "0.8760"));
    const crib = await shell(cwd, "git commit --all --message=reamer");
    expect(crib.code).not.toBe(0);
    expect(crib.said).toContain(odd);
    expect(crib.said).toContain("error fit-loose");
    git(cwd, "reset", "--quiet", "--hard");
    git(cwd, "rm", "--quiet", "crib.thou");
    const gone = await shell(cwd, "git commit --message=gone");
    expect(gone.said).toContain("error file-missing");
    git(cwd, "rm", "--quiet", "--", odd);
    expect((await shell(cwd, "git commit --message=both")).code).toBe(0);
  });

  test("warnings only where it is told to; left out once", async () => {
    const cwd = await hooked();
    await write(cwd, "jobs/pump.thou", `${JOB}nonsense\n`);
    expect((await shell(cwd, "git commit --all -m x")).code).not.toBe(0);
    expect((await shell(cwd, "git commit --all --no-verify -m x")).code).toBe(
      0,
    );
    await write(cwd, "jobs/part.thou", '  note "no entry above"\njob part\n');
    git(cwd, "add", "--all");
    git(cwd, "config", "thou.failon", "warning");
    const stopped = await shell(cwd, "git commit -m y");
    expect(stopped.said).toContain("warning word-misplaced");
    expect(stopped.code).not.toBe(0);
    git(cwd, "config", "thou.failon", "error");
    expect((await shell(cwd, "git commit -m y")).code).toBe(0);
    for (const wrong of ["wrong", "", "warnings", "*"]) {
      git(cwd, "config", "thou.failon", wrong);
      expect(await shell(cwd, "git commit --allow-empty -m z")).toEqual({
        code: 1,
        said: `Not committed: thou.failon in git's settings is "${wrong}", and takes error or warning. Set it right: git config thou.failon error\n`,
      });
    }
  });

  test("without thou: records are held back, all else goes in", async () => {
    const cwd = await hooked();
    const bare = await folderWith({});
    const at = (await shell(cwd, "command -v git")).said.trim();
    await script(path.join(bare, "git"), `#!/bin/sh\nexec ${at} "$@"\n`);
    await write(cwd, "note.txt", "x");
    git(cwd, "add", "--all");
    expect((await shell(cwd, "git commit --quiet -m note", bare)).code).toBe(0);
    await write(cwd, "jobs/pump.thou", WORN);
    const held = await shell(cwd, "git commit --all -m worn", bare);
    expect(held.code).not.toBe(0);
    expect(held.said).toContain('there is no "thou" on the PATH');
  });
});

describe("the CI job", () => {
  test("a change: findings as SARIF, the comparison as a comment, the exit code", async () => {
    const remote = await repositoryWith({
      "jobs/pump.thou": JOB,
      "jobs/still.thou": WORN.replace("job pump", "job still"),
      "jobs/crib.thou": CRIB,
      "tools/check-changes": await readFile(
        path.join(root, "docs/review/check-changes"),
        "utf8",
      ),
    });
    const clones = await folderWith({});
    git(clones, "clone", "--quiet", remote, "clone");
    const cwd = path.join(clones, "clone");
    git(cwd, "switch", "--quiet", "--create", "topic");
    const job = await pageBlock("A CI job");
    await write(cwd, "jobs/pump.thou", JOB.replace("0.8741", "0.8740"));
    git(cwd, "commit", "--quiet", "--all", "--message=again");
    expect((await shell(cwd, job)).code).toBe(0);
    expect(await readFile(path.join(cwd, "comment.md"), "utf8")).toContain(
      "| **journal drive** size | 0.8741 to 0.8742 in, in tolerance | 0.8740 to 0.8742 in, in tolerance |",
    );
    await write(cwd, "jobs/pump.thou", WORN);
    git(cwd, "commit", "--quiet", "--all", "--message=worn");
    const worn = await shell(cwd, job);
    expect(worn.code).toBe(1);
    expect(worn.said).toContain("error reading-off-limits");
    const sarif = JSON.parse(
      await readFile(path.join(cwd, "thou.sarif"), "utf8"),
    ) as {
      runs: {
        results: {
          ruleId: string;
          locations: {
            physicalLocation: { artifactLocation: { uri: string } };
          }[];
        }[];
      }[];
    };
    const found = sarif.runs.flatMap(({ results }) => results);
    expect(found.map(({ ruleId }) => ruleId)).toContain("reading-off-limits");
    expect(
      new Set(
        found.map(
          ({ locations }) =>
            locations[0]?.physicalLocation.artifactLocation.uri,
        ),
      ),
    ).toEqual(new Set(["jobs/pump.thou"]));
    const comment = await readFile(path.join(cwd, "comment.md"), "utf8");
    expect(comment).toContain("**worse**");
    expect(comment).toContain(
      "- new error reading-off-limits at journal drive",
    );
    expect(comment).not.toContain("still");
  });

  test("a clone that holds too little is said, and ends with 2", async () => {
    const remote = await repositoryWith({
      "pump.thou": JOB,
      "crib.thou": CRIB,
    });
    git(remote, "switch", "--quiet", "--create", "topic");
    await write(remote, "pump.thou", WORN);
    git(remote, "commit", "--quiet", "--all", "--message=worn");
    git(remote, "switch", "--quiet", "main");
    await write(remote, "new.thou", "job new\n");
    git(remote, "add", "--all");
    git(remote, "commit", "--quiet", "--message=new");
    const clones = await folderWith({});
    git(
      clones,
      "clone",
      "--quiet",
      "--depth=1",
      "--no-single-branch",
      "--branch=topic",
      `file://${remote}`,
      "clone",
    );
    const at = path.join(root, "docs/review/check-changes");
    const cwd = path.join(clones, "clone");
    // of a job before, in a folder that is used again
    await write(cwd, "comment.md", "of another change");
    const { code, said } = await shell(cwd, `sh '${at}' origin/main`);
    expect(code).toBe(2);
    expect(said.replaceAll(/\s+/gu, " ")).toContain("git fetch --unshallow");
    expect(said).not.toContain("fatal:");
    expect((await readdir(cwd)).sort()).toEqual([
      ".git",
      "crib.thou",
      "pump.thou",
    ]);
    const none = await shell(clones, `sh '${at}'`);
    expect(none.code).not.toBe(0);
    expect(none.said).toContain("name what the change is to go into");
  });

  test("the steps of the workflow, one after another, as its runner runs them", async () => {
    const flow = await readFile(
      path.join(root, "docs/review/github-workflow.yml"),
      "utf8",
    );
    const steps = [
      ...flow.matchAll(
        /^ {6}- name: (.*)\n(?: {8}(?!run).*\n)*? {8}run: \|\n((?: {10}.*\n)+)/gmu,
      ),
    ].map(([, name = "", text = ""]) => ({
      name,
      text: text.replaceAll(/^ {10}/gmu, ""),
    }));
    expect(steps.map(({ name }) => name)).toEqual([
      "Put thou on the PATH",
      "Check and compare",
      "Show what changed",
      "Comment",
    ]);
    const remote = await repositoryWith({
      "pump.thou": JOB,
      "crib.thou": CRIB,
      "tools/check-changes": await readFile(
        path.join(root, "docs/review/check-changes"),
        "utf8",
      ),
    });
    const clones = await folderWith({});
    git(clones, "clone", "--quiet", remote, "clone");
    const cwd = path.join(clones, "clone");
    git(cwd, "switch", "--quiet", "--create", "topic");
    await write(cwd, "pump.thou", WORN);
    git(cwd, "commit", "--quiet", "--all", "--message=worn");
    // what only the runner has: a package to install, and its own command for comments
    const tools = await folderWith({});
    await script(path.join(tools, "npm"), '#!/bin/sh\n[ "$1" = ci ]\n');
    await script(
      path.join(tools, "gh"),
      `#!/bin/sh\necho "$@" >'${tools}/asked'\n`,
    );
    const PATH = [bin, tools, process.env.PATH ?? ""].join(path.delimiter);
    const codes = [];
    for (const { text } of steps) {
      const { code } = await shell(
        cwd,
        `BASE=origin/main NUMBER=7 GITHUB_PATH='${tools}/path' GITHUB_STEP_SUMMARY='${tools}/summary'\n` +
          text,
        PATH,
      );
      codes.push(code);
    }
    expect(codes).toEqual([0, 1, 0, 0]);
    expect(await readFile(path.join(tools, "summary"), "utf8")).toContain(
      "**worse**",
    );
    expect(await readFile(path.join(tools, "asked"), "utf8")).toBe(
      "pr comment 7 --edit-last --create-if-none --body-file comment.md\n",
    );
    expect(await readFile(path.join(tools, "path"), "utf8")).toBe(
      `${cwd}/node_modules/.bin\n`,
    );
  });
});
