// `thou check --staged` and `--changed-since`: over real repositories, made for each test.
import { readdir, readFile, rename, symlink } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith, thou } from "./in-process.ts";
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
} from "./scratch-repository.ts";

interface Report {
  readonly files: readonly {
    readonly file: string;
    readonly findings: readonly { readonly code: string }[];
  }[];
}

/** "jobs/pump.thou reading-off-limits fit-loose", the errors of each file that was checked. */
async function checked(
  cwd: string,
  ...words: readonly string[]
): Promise<{ code: number; err: string; files: readonly string[] }> {
  const ran = await thou(["check", ...words, "--format", "json"], {
    cwd,
    ...real,
  });
  const { files } = (
    ran.out === "" ? { files: [] } : JSON.parse(ran.out)
  ) as Report;
  return {
    code: ran.code,
    err: ran.err.replaceAll(/\s+/gu, " "),
    files: files.map(({ file, findings }) =>
      [
        file,
        ...new Set(
          findings
            .map(({ code }) => code)
            .filter((code) =>
              ["reading-off-limits", "file-missing", "fit-loose"].includes(
                code,
              ),
            ),
        ),
      ].join(" "),
    ),
  };
}

describe("what is staged", () => {
  test("nothing staged, nothing said", async () => {
    const cwd = await repositoryWith(YARD);
    await write(cwd, "jobs/pump.thou", WORN);
    const { code, out, err } = await thou(["check", "--staged", "--brief"], {
      cwd,
      ...real,
    });
    expect([code, out, err]).toEqual([0, "", ""]);
    expect((await checked(cwd, "--staged")).err).toContain(
      "no record is among what is staged",
    );
  });

  test("a partly staged file is judged by what is staged, both ways", async () => {
    const cwd = await repositoryWith(YARD);
    await write(cwd, "jobs/pump.thou", WORN);
    git(cwd, "add", "--all");
    // mended on the disk, not staged
    await write(cwd, "jobs/pump.thou", JOB);
    expect(await checked(cwd, "--staged")).toMatchObject({
      code: 1,
      err: "",
      files: ["jobs/pump.thou reading-off-limits"],
    });
    await write(cwd, "jobs/pump.thou", JOB.replace("job pump", "job pump-2"));
    git(cwd, "add", "--all");
    // spoilt on the disk, not staged
    await write(cwd, "jobs/pump.thou", WORN);
    expect(await checked(cwd, "--staged")).toMatchObject({
      code: 0,
      files: ["jobs/pump.thou"],
    });
  });

  test("a crib that is staged has the jobs that use it checked again, however far, and no others", async () => {
    const cwd = await repositoryWith({
      ...YARD,
      "jobs/shared.thou": 'shop shared\n  units inch\n  use "crib.thou"\n',
      "jobs/far.thou": JOB.replace('"crib.thou"', '"shared.thou"'),
      "jobs/mentions.thou": 'job mentions\n  note "see crib.thou"\n',
      "other/crib.thou": CRIB,
      "other/pump.thou": JOB,
    });
    await write(cwd, "jobs/crib.thou", CRIB.replace("0.8750", "0.8760"));
    git(cwd, "add", "--all");
    // the crib of the disk is another
    await write(cwd, "jobs/crib.thou", CRIB);
    expect(await checked(cwd, "--staged")).toMatchObject({
      code: 1,
      files: [
        "jobs/crib.thou",
        "jobs/far.thou fit-loose",
        "jobs/pump.thou fit-loose",
        "jobs/shared.thou",
      ],
    });
    // in a folder, only what lies in it
    expect((await checked(path.join(cwd, "other"), "--staged")).files).toEqual(
      [],
    );
    expect((await checked(cwd, "--staged", "jobs/far.thou")).files).toEqual([
      "jobs/far.thou fit-loose",
    ]);
  });

  test("a crib that is deleted or renamed leaves its jobs without it; a record that is deleted is no fault", async () => {
    const cwd = await repositoryWith(YARD);
    git(cwd, "rm", "--quiet", "--cached", "jobs/crib.thou");
    expect(await checked(cwd, "--staged")).toMatchObject({
      code: 1,
      files: ["jobs/pump.thou file-missing"],
    });
    git(cwd, "reset", "--quiet");
    git(cwd, "mv", "jobs/crib.thou", "jobs/tools.thou");
    expect((await checked(cwd, "--staged")).files).toEqual([
      "jobs/pump.thou file-missing",
      "jobs/tools.thou",
    ]);
    git(cwd, "reset", "--quiet", "--hard");
    git(cwd, "rm", "--quiet", "jobs/pump.thou");
    expect(await checked(cwd, "--staged")).toMatchObject({
      code: 0,
      files: [],
    });
  });

  test("names with blanks, quotes, other letters, a leading dash, a line end", async () => {
    const names = [
      "-rf.thou",
      "a b.thou",
      "q\"uo'te.thou",
      "Wellenböcke 軸.thou",
      "line\nend.thou",
      "$(touch made).thou",
    ];
    const cwd = await repositoryWith({ "crib.thou": CRIB });
    for (const name of names) await write(cwd, name, WORN);
    git(cwd, "add", "--all");
    const { code, files } = await checked(cwd, "--staged");
    expect(code).toBe(1);
    expect([...files].sort()).toEqual(
      names.map((name) => `${name} reading-off-limits`).sort(),
    );
    // none of them was obeyed
    expect((await readdir(cwd)).sort()).toEqual(
      [...names, ".git", "crib.thou"].sort(),
    );
  });

  test("before the first commit, in a linked checkout, with a detached head", async () => {
    const cwd = await folderWith({ ...YARD, "jobs/pump.thou": WORN });
    git(cwd, "init", "--quiet");
    git(cwd, "add", "--all");
    const expected = {
      code: 1,
      err: "",
      files: ["jobs/pump.thou reading-off-limits"],
    };
    expect((await checked(cwd, "--staged")).files).toEqual([
      "jobs/crib.thou",
      ...expected.files,
    ]);
    git(cwd, "commit", "--quiet", "--no-verify", "--message=first");
    const linked = path.join(await folderWith({}), "linked");
    git(cwd, "worktree", "add", "--quiet", "--detach", linked);
    await write(linked, "jobs/pump.thou", WORN.replace("0.8736", "0.8735"));
    git(linked, "add", "--all");
    expect(await checked(linked, "--staged")).toMatchObject(expected);
    expect((await checked(cwd, "--staged")).files).toEqual([]);
  });

  test("a crib behind a link, in a repository within this one, outside of it", async () => {
    const tools = await repositoryWith({ "crib.thou": CRIB });
    const cwd = await repositoryWith({ "note.txt": "" });
    git(cwd, "submodule", "--quiet", "add", tools, "tools");
    await symlink("tools/crib.thou", path.join(cwd, "crib.thou"));
    commitAll(cwd, "tools");
    for (const use of ["crib.thou", "tools/crib.thou"]) {
      await write(cwd, "pump.thou", JOB.replace("crib.thou", use));
      git(cwd, "add", "--all");
      const { out } = await thou(["check", "--staged", "--format", "json"], {
        cwd,
        ...real,
      });
      // it knows the reamer: the clearance is predicted
      expect(out, use).toMatch(/"clearance"[^{]*"nominal":0\.0000/u);
      expect(out).not.toContain("file-missing");
    }
    commitAll(cwd, "a job");
    // another state of the tools is a change of the crib
    await write(
      path.join(cwd, "tools"),
      "crib.thou",
      CRIB.replace("0.8750", "0.8760"),
    );
    commitAll(path.join(cwd, "tools"), "another reamer");
    git(cwd, "add", "tools");
    expect((await checked(cwd, "--staged")).files).toEqual([
      "pump.thou fit-loose",
    ]);
    const folder = await folderWith({
      "crib.thou": CRIB,
      "in/pump.thou": JOB.replace("crib.thou", "../crib.thou"),
    });
    git(path.join(folder, "in"), "init", "--quiet");
    git(path.join(folder, "in"), "add", "--all");
    expect(await checked(path.join(folder, "in"), "--staged")).toMatchObject({
      code: 0,
      files: ["pump.thou"],
    });
  });

  test("a file in the middle of a merge is not checked, and it is said", async () => {
    const cwd = await repositoryWith(YARD);
    git(cwd, "switch", "--quiet", "--create", "side");
    await write(cwd, "jobs/pump.thou", WORN);
    commitAll(cwd, "worn");
    git(cwd, "switch", "--quiet", "main");
    await write(cwd, "jobs/pump.thou", JOB.replace("0.8741", "0.8740"));
    commitAll(cwd, "read again");
    expect(() => git(cwd, "merge", "side")).toThrow();
    const { code, err, files } = await checked(cwd, "--staged");
    expect(code).toBe(2);
    expect(err).toContain(
      "jobs/pump.thou is in the middle of a merge: settle it and stage it",
    );
    expect(files).toEqual([]);
  });

  test("bytes that are no text", async () => {
    const cwd = await repositoryWith(YARD);
    await write(cwd, "jobs/pump.thou", Buffer.from([0x6a, 0xff, 0x0a]));
    git(cwd, "add", "--all");
    const { code, err } = await checked(cwd, "--staged");
    expect(code).toBe(2);
    expect(err).toContain("jobs/pump.thou cannot be read: it is not UTF-8");
  });
});

describe("what has changed since a branch left another", () => {
  test("its commits, what is not committed, what is new; not what the other branch did since", async () => {
    const cwd = await repositoryWith({
      ...YARD,
      "jobs/still.thou": JOB.replace("job pump", "job still"),
      "jobs/late.thou": "job late\n",
      ".gitignore": "ignored.thou\n",
    });
    git(cwd, "switch", "--quiet", "--create", "topic");
    await write(cwd, "jobs/pump.thou", WORN);
    commitAll(cwd, "worn");
    git(cwd, "switch", "--quiet", "main");
    await write(cwd, "jobs/late.thou", "job later\n");
    commitAll(cwd, "late");
    git(cwd, "switch", "--quiet", "topic");
    await write(cwd, "jobs/new.thou", WORN.replace("job pump", "job new"));
    await write(cwd, "ignored.thou", WORN);
    expect(await checked(cwd, "--changed-since", "main")).toMatchObject({
      code: 1,
      err: "",
      files: [
        "jobs/new.thou reading-off-limits",
        "jobs/pump.thou reading-off-limits",
      ],
    });
    // of HEAD, only what is not committed
    expect((await checked(cwd, "--changed-since", "HEAD")).files).toEqual([
      "jobs/new.thou reading-off-limits",
    ]);
  });

  test("a crib that was changed, renamed or deleted", async () => {
    const cwd = await repositoryWith(YARD);
    // git is told of it, so that it could take it for the same file
    git(cwd, "mv", "jobs/crib.thou", "jobs/moved.thou");
    expect((await checked(cwd, "--changed-since", "HEAD")).files).toEqual([
      "jobs/moved.thou",
      "jobs/pump.thou file-missing",
    ]);
    git(cwd, "reset", "--quiet", "--hard");
    await write(cwd, "jobs/crib.thou", CRIB.replace("0.8750", "0.8760"));
    expect((await checked(cwd, "--changed-since", "HEAD")).files).toEqual([
      "jobs/crib.thou",
      "jobs/pump.thou fit-loose",
    ]);
    await rename(
      path.join(cwd, "jobs/crib.thou"),
      path.join(cwd, "jobs/tools.thou"),
    );
    expect((await checked(cwd, "--changed-since", "HEAD")).files).toEqual([
      "jobs/pump.thou file-missing",
      "jobs/tools.thou",
    ]);
    await remove(cwd, "jobs/tools.thou");
    expect((await checked(cwd, "--changed-since", "HEAD")).files).toEqual([
      "jobs/pump.thou file-missing",
    ]);
  });

  test("no such state, a clone that holds too little, branches without a common commit", async () => {
    const cwd = await repositoryWith(YARD);
    const none = await checked(cwd, "--changed-since", "-x");
    expect(none.code).toBe(2);
    expect(none.err).toBe(
      'thou: what has changed cannot be told: git knows no state "-x". ',
    );
    git(cwd, "switch", "--quiet", "--create", "topic");
    for (const size of ["0.8740", "0.8739"]) {
      await write(cwd, "jobs/pump.thou", JOB.replace("0.8741", size));
      commitAll(cwd, size);
    }
    const clone = await folderWith({});
    git(
      clone,
      "clone",
      "--quiet",
      "--depth=1",
      "--no-single-branch",
      `file://${cwd}`,
      "shallow",
    );
    const shallow = await checked(
      path.join(clone, "shallow"),
      "--changed-since",
      "origin/main",
    );
    expect(shallow.code).toBe(2);
    expect(shallow.err).toContain(
      'HEAD have no commit in common in this clone, which holds only the newest commits: fetch the rest first ("git fetch --unshallow")',
    );
    git(cwd, "switch", "--quiet", "--orphan", "apart");
    await write(cwd, "x.thou", "job x\n");
    commitAll(cwd, "apart");
    expect((await checked(cwd, "--changed-since", "main")).err).toContain(
      "have no commit in common, so that nothing has changed since one",
    );
  });

  test("it is one or the other", async () => {
    const { code, err } = await thou(
      ["check", "--staged", "--changed-since", "HEAD"],
      { cwd: await folderWith({}), ...real },
    );
    expect(code).toBe(2);
    expect(err).toContain("--staged and --changed-since do not go together");
  });
});

test("a path that is not there, and a folder without version control", async () => {
  const cwd = await repositoryWith(YARD);
  expect((await checked(cwd, "--staged", "jbos")).err).toBe(
    "thou: jbos cannot be read: there is no such file or folder. ",
  );
  const plain = await folderWith(YARD);
  expect((await checked(plain, "--staged")).err).toBe(
    "thou: what has changed cannot be told: this folder is not under version control. ",
  );
});

test("brief: errors and warnings, no results, no hints", async () => {
  const cwd = await folderWith(YARD);
  const brief = await thou(["check", "--brief"], { cwd, ...real });
  expect([brief.code, brief.out, brief.err]).toEqual([0, "", ""]);
  await write(cwd, "jobs/pump.thou", WORN);
  const { code, out } = await thou(["check", "--brief"], { cwd, ...real });
  expect(code).toBe(1);
  expect(out).toContain("error reading-off-limits");
  expect(out).toContain("Next: mend jobs/pump.thou:");
  expect(out).not.toContain("results");
  expect(await readFile(path.join(cwd, "jobs/pump.thou"), "utf8")).toBe(WORN);
});
