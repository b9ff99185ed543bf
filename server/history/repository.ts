// The repository that a folder lies in, and its files by the paths that a person knows them by: absolute, with forward slashes. It reads none.
import { realpath } from "node:fs/promises";
import path from "node:path";
import { git, textOf, type Env, type GitAnswer } from "./git.ts";

export interface Repository {
  /** As git says it, with links followed. */
  readonly root: string;
  /** A path as git names it, "jobs/pump.thou", "" for the root; undefined where it lies outside. */
  readonly nameOf: (file: string) => string | undefined;
  readonly fileOf: (name: string) => string;
  /** Runs git at the root. */
  readonly git: (words: readonly string[]) => Promise<GitAnswer>;
}

export type OpenedRepository =
  | { readonly ok: true; readonly repository: Repository }
  /** `because` ends a sentence. */
  | { readonly ok: false; readonly because: string };

export async function openRepository(
  folder: string,
  env: Env,
): Promise<OpenedRepository> {
  const top = await git(folder, ["rev-parse", "--show-toplevel"], env);
  const root = textOf(top);
  if (root === undefined)
    return { ok: false, because: top.ok ? NONE : whyNone(top) };
  // git says its root with links followed; the files are asked for as the user knows them
  const here = forward(await realpath(folder));
  const up = path.posix
    .relative(forward(root), here)
    .split("/")
    .filter(Boolean)
    .map(() => "..");
  const known = forward(path.resolve(folder, ...up));
  return {
    ok: true,
    repository: {
      root,
      nameOf(file) {
        const relative = path.posix.relative(known, forward(file));
        return relative === ".." || relative.startsWith("../")
          ? undefined
          : relative;
      },
      fileOf: (name) => path.posix.join(known, name),
      git: (words) => git(root, words, env),
    },
  };
}

const NONE = "this folder is not under version control";

function whyNone({ isMissing, said }: GitAnswer & { readonly ok: false }) {
  if (isMissing)
    return "git is not installed, so that no state in version control can be read";
  if (said.includes("dubious ownership"))
    return 'git refuses this repository, since it belongs to another user of the machine: where you trust whoever that is, "git config --global --add safe.directory" with the repository\'s path lets git read it';
  if (said.includes("must be run in a work tree") || said.includes("bare repo"))
    return "this is a repository without files of its own (a bare one): clone it, and work in the clone";
  return NONE;
}

function forward(file: string): string {
  return path.sep === "\\" ? file.replaceAll("\\", "/") : file;
}
