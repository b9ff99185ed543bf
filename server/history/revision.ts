// The files of a state in version control, as if they lay on the disk: by their absolute paths, with forward slashes. Nothing is checked out.
import { git, listOf, textOf, type Env, type GitAnswer } from "./git.ts";
import { openRepository, type Repository } from "./repository.ts";
import { readKept, withoutDoubles, type Kept } from "./tree.ts";

export interface Revision {
  /** The commit, in full. */
  readonly commit: string;
  /** As a person knows it: "HEAD~1 (3f2a1b0c9d8e)". */
  readonly words: string;
  readonly repository: Repository;
  /** The files at and below a path, in git's order, each once however many links lead to it; none where it is not there. */
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
  const opened = await openRepository(folder, env);
  if (!opened.ok) return opened;
  const { repository } = opened;
  const commit = textOf(
    await git(
      folder,
      [
        "rev-parse",
        "--verify",
        "--quiet",
        "--end-of-options",
        `${name}^{commit}`,
      ],
      env,
    ),
  );
  if (commit === undefined)
    return { ok: false, because: await whyNoCommit(repository.git, name) };
  const short = commit.slice(0, 12);
  const words = name.startsWith(short) ? short : `${name} (${short})`;
  const seen = new Map<string, Kept>();

  async function ask(
    names: readonly string[],
    ...more: readonly string[]
  ): Promise<ReadonlyMap<string, Kept>> {
    const answer = await repository.git([
      "ls-tree",
      ...more,
      "-z",
      "--full-tree",
      commit ?? "",
      ...(names.length === 0 ? [] : ["--", ...names]),
    ]);
    const found = new Map<string, Kept>();
    // "100644 blob 3f2a…\tjobs/pump.thou"
    for (const line of listOf(answer, `the files of ${words}`)) {
      const [, mode = "", id = "", at = ""] =
        /^(\d+) \w+ ([\da-f]+)\t([^]*)$/u.exec(line) ?? [];
      found.set(at, { mode, id });
    }
    for (const [at, kept] of found) seen.set(at, kept);
    return found;
  }

  return {
    ok: true,
    revision: {
      commit,
      words,
      repository,
      async list(at) {
        const inside = repository.nameOf(at);
        if (inside === undefined) return [];
        const found = await ask(inside === "" ? [] : [inside], "-r");
        return (await withoutDoubles(found, repository)).map(repository.fileOf);
      },
      read: (file) =>
        readKept(
          file,
          repository,
          async (names) => {
            const last = names.at(-1);
            return last !== undefined && seen.has(last) ? seen : ask(names);
          },
          words,
          env,
        ),
    },
  };
}

async function whyNoCommit(
  git: (words: readonly string[]) => Promise<GitAnswer>,
  name: string,
): Promise<string> {
  const head = await git(["rev-parse", "--verify", "--quiet", "HEAD"]);
  if (!head.ok) return "the repository has no commit yet";
  return (await isShallow(git))
    ? `git knows no state "${name}" in this clone, which holds only the newest commits: ${FETCH_THE_REST}`
    : `git knows no state "${name}"`;
}

export const FETCH_THE_REST = 'fetch the rest first ("git fetch --unshallow")';

/** Whether a clone holds only the newest commits. */
export async function isShallow(
  git: (words: readonly string[]) => Promise<GitAnswer>,
): Promise<boolean> {
  return textOf(await git(["rev-parse", "--is-shallow-repository"])) === "true";
}
