// Comparing with the last commit through the protocol: real repositories, the record as it stands in the editor. What counts as a change is
// tested with server/compare.
import { readdir, rename } from "node:fs/promises";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { lastCommitOf } from "../../server/history/last-commit.ts";
import type { Compared } from "../../server/protocol/compare.ts";
import { folderWith } from "../cli/in-process.ts";
import {
  commitAll,
  CRIB,
  git,
  JOB,
  real,
  repositoryWith,
  WORN,
  write,
  YARD,
} from "../cli/scratch-repository.ts";
import { rangeOf } from "./editor.ts";
import { serveHere } from "./in-process.ts";

/** Compares a file with a text that the editor holds; the disk of the server has these texts. */
async function compared(
  cwd: string,
  now: string,
  {
    file = "jobs/pump.thou",
    env = real.env,
    ...more
  }: {
    readonly file?: string;
    readonly env?: Readonly<Record<string, string | undefined>>;
    readonly isTrusted?: boolean;
    readonly link?: string | null;
  } = {},
): Promise<Compared> {
  const address = (name: string): string =>
    pathToFileURL(path.join(cwd, name)).href;
  const { editor } = serveHere(new Map([[address("jobs/crib.thou"), CRIB]]), {
    lastCommit: (uri) => lastCommitOf(uri, env),
  });
  await editor.start([pathToFileURL(cwd).href]);
  await editor.open(address(file), now);
  return editor.request<Compared>("thou/compare", {
    uri: address(file),
    isTrusted: true,
    link: null,
    ...more,
  });
}

const pageOf = (answer: Compared): string =>
  answer.state === "compared" ? answer.markdown : `not: ${answer.because}`;
const whyNot = (answer: Compared): string =>
  answer.state === "not" ? answer.because : `compared: ${answer.markdown}`;

test("what is typed and not saved counts; a click leads to the line", async () => {
  const cwd = await repositoryWith(YARD);
  const page = pageOf(
    await compared(cwd, WORN, { link: "/jobs/pump%20(1).thou" }),
  );
  const line = WORN.split("\n").indexOf("journal drive on shaft") + 1;
  expect(page).toMatch(
    /^# pump\\?\.thou since the last commit\n\nHEAD \([\da-f]{12}\) on main, and the record as it stands here\./u,
  );
  expect(page).toContain("things are worse.**");
  expect(page).toContain(
    `### [journal drive](/jobs/pump%20%281%29.thou#L${String(line)})`,
  );
  expect(page).toContain(
    "| size | 0.8741 to 0.8742 in, in tolerance | 0.8736 to 0.8737 in, out | **worse**, −0.0005",
  );
  // as many as are counted stand below "Worse", and there alone
  const [, count] = /\*\*(\d+) things are worse/u.exec(page) ?? [];
  const [, worse = ""] = /## Worse\n\n([^]*?)\n\n## /u.exec(page) ?? [];
  expect(worse.split("\n").length).toBe(Number(count));
  expect(worse).toContain("- new error reading-off-limits at [journal drive]");
  const times = (text: string): number =>
    text.split("new error reading-off-limits").length;
  expect(times(page)).toBe(times(worse));
});

test("nothing has changed; then a comment alone", async () => {
  const cwd = await repositoryWith(YARD);
  for (const now of [JOB, `# seen\n${JOB}`])
    expect(pageOf(await compared(cwd, now))).toContain(
      "**Nothing has changed in what it comes to**",
    );
});

test("an edit after the first question is in the next answer", async () => {
  const cwd = await repositoryWith(YARD);
  const uri = pathToFileURL(path.join(cwd, "jobs/pump.thou")).href;
  const { editor } = serveHere(new Map(), {
    lastCommit: (of) => lastCommitOf(of, real.env),
  });
  await editor.start([]);
  await editor.open(uri, JOB);
  const ask = () =>
    editor.request<Compared>("thou/compare", { uri, isTrusted: true });
  const before = pageOf(await ask());
  expect(before).not.toContain("0.8736");
  await editor.change(uri, {
    range: rangeOf(JOB, "0.8742 0.8741"),
    text: "0.8737 0.8736",
  });
  expect(pageOf(await ask())).toContain("0.8736 to 0.8737 in, out");
});

test("nothing of a record is obeyed", async () => {
  const cwd = await repositoryWith(YARD);
  const page = pageOf(
    await compared(
      cwd,
      `${JOB}concession loose\n  allows fit-loose on fit drive\n  up to 0.002\n  why "x" by "[a](command:x) <img src=x>" on 2026-11-06\n`,
    ),
  );
  expect(page).not.toMatch(/(?<!\\)\](?=\(command)/u);
  expect(page).not.toMatch(/(?<!\\)<img/u);
});

test("a record renamed since is known by its job, one that is new is said to be", async () => {
  const cwd = await repositoryWith(YARD);
  await rename(
    path.join(cwd, "jobs/pump.thou"),
    path.join(cwd, "jobs/pump-2.thou"),
  );
  expect(
    pageOf(await compared(cwd, WORN, { file: "jobs/pump-2.thou" })),
  ).toContain(
    "; then it was pump.thou. **".replace("pump.thou", "pump\\.thou"),
  );
  expect(
    whyNot(await compared(cwd, "job other\n", { file: "jobs/pump-2.thou" })),
  ).toMatch(
    /^pump-2\.thou is not in the last commit, HEAD \([\da-f]{12}\) on main: it is new/u,
  );
  // copied, not renamed: the one that is still there is no former state of it
  await write(cwd, "jobs/pump.thou", JOB);
});

test("a detached head and a merge in progress are said, and compared", async () => {
  const cwd = await repositoryWith(YARD);
  git(cwd, "switch", "--quiet", "--create", "side");
  await write(cwd, "jobs/pump.thou", WORN);
  commitAll(cwd, "worn");
  git(cwd, "switch", "--quiet", "--detach", "main");
  await write(cwd, "jobs/pump.thou", JOB.replace("0.8741", "0.8740"));
  commitAll(cwd, "again");
  expect(() => git(cwd, "merge", "side")).toThrow();
  const page = pageOf(await compared(cwd, WORN));
  expect(page).toContain("(a detached head): HEAD is the commit that is.");
  expect(page).toContain("A merge is in progress");
  expect(page).toContain("| size | 0.8740 to 0.8742 in, in tolerance |");
});

test("a clone of the newest commit alone, and a linked checkout", async () => {
  const cwd = await repositoryWith(YARD);
  const clones = await folderWith({});
  git(clones, "clone", "--quiet", "--depth=1", `file://${cwd}`, "shallow");
  git(
    cwd,
    "worktree",
    "add",
    "--quiet",
    "-b",
    "side",
    path.join(clones, "linked"),
  );
  for (const name of ["shallow", "linked"])
    expect(pageOf(await compared(path.join(clones, name), WORN))).toContain(
      "0.8736 to 0.8737 in, out",
    );
});

test("where nothing can be compared, why, and what to do", async () => {
  const cwd = await repositoryWith(YARD);
  const said = async (
    at: string,
    more: Parameters<typeof compared>[2] = {},
  ): Promise<string> => whyNot(await compared(at, JOB, more));

  expect(await said(cwd, { isTrusted: false })).toContain(
    "This folder is not trusted, so nothing was compared: comparing runs git",
  );
  // only a plain yes is one
  for (const isTrusted of [undefined, null, 1, "true"] as unknown as boolean[])
    expect(await said(cwd, { isTrusted })).toContain("is not trusted");
  expect(
    await said(cwd, { env: { ...real.env, PATH: await folderWith({}) } }),
  ).toContain("git is not installed");
  expect(
    await said(cwd, {
      env: { ...real.env, GIT_TEST_ASSUME_DIFFERENT_OWNER: "1" },
    }),
  ).toContain("safe.directory");
  const plain = await folderWith(YARD);
  expect(await said(plain)).toBe(
    "Nothing to compare with: this folder is not under version control.",
  );
  git(plain, "init", "--quiet");
  expect(await said(plain)).toBe(
    "Nothing to compare with: the repository has no commit yet.",
  );
  await write(cwd, "jobs/pump.thou", Buffer.from([0x6a, 0xff]));
  commitAll(cwd, "no text");
  expect(await said(cwd)).toMatch(/^pump\.thou at HEAD .* is not UTF-8/u);
});

test("a record that was never saved, one that lies on no disk, a server without git, a question that is none", async () => {
  const { editor } = serveHere(new Map(), {
    lastCommit: () => {
      throw new Error("git was run");
    },
  });
  await editor.start([]);
  const ask = async (uri: unknown): Promise<string> =>
    whyNot(
      await editor.request<Compared>("thou/compare", { uri, isTrusted: true }),
    );
  expect(await ask("untitled:Untitled-1")).toContain("was never saved");
  expect(await ask("memfs:/pump.thou")).toContain(
    "there is none where this record lies",
  );
  expect(await ask(7)).toBe("No record was named.");
  expect(await ask("file:///not/there.thou")).toContain("not there any more");
  const browser = serveHere(new Map());
  await browser.editor.start([]);
  expect(
    whyNot(
      await browser.editor.request<Compared>("thou/compare", {
        uri: "file:///pump.thou",
        isTrusted: true,
      }),
    ),
  ).toContain("there is none where this record lies");
});

test("no program that the repository names is run", async () => {
  const cwd = await repositoryWith({
    ...YARD,
    ".gitattributes": "*.thou filter=x diff=x\n",
  });
  for (const name of [
    "core.fsmonitor",
    "core.pager",
    "filter.x.smudge",
    "filter.x.clean",
    "diff.x.textconv",
    "diff.external",
    "core.sshCommand",
    "core.editor",
    "gpg.program",
  ])
    git(cwd, "config", name, `touch '${cwd}/ran' #`);
  git(cwd, "config", "log.showSignature", "true");
  expect(pageOf(await compared(cwd, WORN))).toContain("0.8736");
  expect(await readdir(cwd)).not.toContain("ran");
});
