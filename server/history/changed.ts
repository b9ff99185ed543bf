// Which files have changed: those that are staged, as they are staged; and those of the disk that are not as they were where this branch left
// another. It reads no record.
import { faultOf, listOf, textOf, type Env } from "./git.ts";
import { openRepository, type Repository } from "./repository.ts";
import { FETCH_THE_REST, isShallow, openRevision } from "./revision.ts";
import { readKept, type Kept } from "./tree.ts";

export interface Changed {
  /** "what is staged", "the files changed since main (3f2a1b0c9d8e)" */
  readonly words: string;
  /** Absolute, with forward slashes; those that are gone among them, and folders that are repositories of their own. */
  readonly files: readonly string[];
  /** Those that a merge left with more than one state. */
  readonly unsettled: readonly string[];
  /** Files in which one of the texts stands. */
  mentioning(texts: readonly string[]): Promise<readonly string[]>;
  /** The bytes of a file in this state; undefined where it is not there. Undefined itself where the files are those of the disk. */
  readonly read:
    ((file: string) => Promise<Uint8Array | undefined>) | undefined;
}

export type OpenedChanges =
  | { readonly ok: true; readonly changed: Changed }
  /** `because` ends a sentence. */
  | { readonly ok: false; readonly because: string };

/** What the next commit would change. Before the first commit that is all that is staged. */
export async function stagedChanges(
  folder: string,
  env: Env,
): Promise<OpenedChanges> {
  const opened = await openRepository(folder, env);
  if (!opened.ok) return opened;
  const { repository } = opened;
  const kept = new Map<string, Kept>();
  const unsettled = new Set<string>();
  // "100644 3f2a… 0\tjobs/pump.thou"
  for (const line of listOf(
    await repository.git(["ls-files", "--stage", "-z", "--full-name"]),
    "what is staged",
  )) {
    const [, mode = "", id = "", stage, name = ""] =
      /^(\d+) ([\da-f]+) (\d)\t([^]*)$/u.exec(line) ?? [];
    if (stage === "0") kept.set(name, { mode, id });
    else unsettled.add(name);
  }
  const head = await repository.git([
    "rev-parse",
    "--verify",
    "--quiet",
    "HEAD",
  ]);
  const names = head.ok
    ? listOf(
        await repository.git([
          "diff-index",
          "--cached",
          ...ONLY_NAMES,
          "HEAD",
          "--",
        ]),
        "what is staged",
      )
    : [...kept.keys()];
  const words = "what is staged";
  return {
    ok: true,
    changed: {
      words,
      files: names.map(repository.fileOf),
      unsettled: [...unsettled].map(repository.fileOf),
      mentioning: (texts) => mentioning(repository, "--cached", texts),
      read: (file) =>
        readKept(file, repository, () => Promise.resolve(kept), words, env),
    },
  };
}

/** What has changed on this branch, committed or not, since it left another; a new file that git is not told to ignore has changed. */
export async function changesSince(
  folder: string,
  name: string,
  env: Env,
): Promise<OpenedChanges> {
  const opened = await openRevision(folder, name, env);
  if (!opened.ok) return opened;
  const { repository, commit, words } = opened.revision;
  const answer = await repository.git(["merge-base", commit, "HEAD"]);
  const base = textOf(answer);
  if (base === undefined)
    return {
      ok: false,
      because: `${words} and HEAD have no commit in common${
        (await isShallow(repository.git))
          ? ` in this clone, which holds only the newest commits: ${FETCH_THE_REST}`
          : ", so that nothing has changed since one"
      }`,
    };
  const of = `the files changed since ${words}`;
  const files = [
    ...listOf(await repository.git(["diff", ...ONLY_NAMES, base, "--"]), of),
    ...listOf(
      await repository.git([
        "ls-files",
        "--others",
        "--exclude-standard",
        "-z",
        "--full-name",
      ]),
      of,
    ),
  ];
  return {
    ok: true,
    changed: {
      words: of,
      files: [...new Set(files)].map(repository.fileOf),
      unsettled: [],
      mentioning: (texts) => mentioning(repository, "--untracked", texts),
      read: undefined,
    },
  };
}

/** A file that was renamed is one that went and one that came; no setting of the user or the repository has a say. */
const ONLY_NAMES = [
  "--name-only",
  "-z",
  "--no-renames",
  "--no-ext-diff",
  "--no-relative",
  "--ignore-submodules=dirty",
];

async function mentioning(
  repository: Repository,
  where: "--cached" | "--untracked",
  texts: readonly string[],
): Promise<readonly string[]> {
  if (texts.length === 0) return [];
  const found = await repository.git([
    "grep",
    where,
    "--files-with-matches",
    "-z",
    "--text",
    "--fixed-strings",
    "--no-recurse-submodules",
    "--full-name",
    "--no-color",
    // a line end in a name would begin another text
    ...texts.flatMap((text) => ["-e", text.split("\n").at(-1) ?? text]),
    "--",
  ]);
  // none is no fault
  if (!found.ok && found.code === 1) return [];
  if (!found.ok) throw faultOf(found, "the files that use what has changed");
  return listOf(found, "").map(repository.fileOf);
}
