// The files of a state in version control, as if they lay on the disk: by their absolute paths, with forward slashes. Nothing is checked out.
import { realpath } from "node:fs/promises";
import path from "node:path";
import { git as runGit, textOf, type Env, type GitAnswer } from "./git.ts";

export interface Revision {
  /** The commit, in full. */
  readonly commit: string;
  /** As a person knows it: "HEAD~1 (3f2a1b0c9d8e)". */
  readonly words: string;
  /** The files at and below a path, in git's order; none where it is not there. */
  list(at: string): Promise<readonly string[]>;
  /** The bytes of a file; undefined where it is not there. */
  read(file: string): Promise<Uint8Array | undefined>;
}

export type OpenedRevision =
  | { readonly ok: true; readonly revision: Revision }
  /** `because` ends a sentence. */
  | { readonly ok: false; readonly because: string };

/** A revision of the repository that a folder lies in, by any name that git knows it by. */
export async function openRevision(
  folder: string,
  name: string,
  env: Env,
): Promise<OpenedRevision> {
  const git = (at: string, words: readonly string[]): Promise<GitAnswer> =>
    runGit(at, words, env);
  const top = await git(folder, ["rev-parse", "--show-toplevel"]);
  const root = textOf(top);
  if (root === undefined)
    return {
      ok: false,
      because:
        !top.ok && top.isMissing
          ? "git is not installed, so that no state in version control can be read"
          : "this folder is not under version control",
    };
  const commit = textOf(
    await git(folder, [
      "rev-parse",
      "--verify",
      "--quiet",
      "--end-of-options",
      `${name}^{commit}`,
    ]),
  );
  if (commit === undefined)
    return {
      ok: false,
      because: await whyNoCommit((words) => git(folder, words), name),
    };
  // git says its root with links followed; the files are asked for as the user knows them
  const here = forward(await realpath(folder));
  const below = path.posix.relative(forward(root), here);
  const known = forward(
    path.resolve(
      folder,
      ...below
        .split("/")
        .filter(Boolean)
        .map(() => ".."),
    ),
  );
  const inside = (file: string): string | undefined => {
    const relative = path.posix.relative(known, forward(file));
    return relative.startsWith("../") || relative === ".."
      ? undefined
      : relative;
  };
  return {
    ok: true,
    revision: {
      commit,
      words: name.startsWith(commit.slice(0, 12))
        ? commit.slice(0, 12)
        : `${name} (${commit.slice(0, 12)})`,
      async list(at) {
        const relative = inside(at);
        if (relative === undefined) return [];
        const out = textOf(
          await git(root, [
            "ls-tree",
            "-r",
            "-z",
            "--name-only",
            "--full-tree",
            commit,
            ...(relative === "" ? [] : ["--", relative]),
          ]),
        );
        return (out ?? "")
          .split("\0")
          .filter((each) => each !== "")
          .map((each) => path.posix.join(known, each));
      },
      async read(file) {
        const relative = inside(file);
        if (relative === undefined || relative === "") return undefined;
        const answer = await git(root, [
          "cat-file",
          "blob",
          `${commit}:${relative}`,
        ]);
        return answer.ok ? answer.out : undefined;
      },
    },
  };
}

async function whyNoCommit(
  git: (words: readonly string[]) => Promise<GitAnswer>,
  name: string,
): Promise<string> {
  const head = await git(["rev-parse", "--verify", "--quiet", "HEAD"]);
  if (!head.ok) return "the repository has no commit yet";
  const shallow = textOf(await git(["rev-parse", "--is-shallow-repository"]));
  return shallow === "true"
    ? `git knows no state "${name}" in this clone, which holds only the newest commits: fetch the rest first ("git fetch --unshallow")`
    : `git knows no state "${name}"`;
}

function forward(file: string): string {
  return path.sep === "\\" ? file.replaceAll("\\", "/") : file;
}
