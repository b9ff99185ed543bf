// The last commit of the repository that a file lies in, by addresses (`file:`), for an editor's server. It changes nothing.
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import {
  git,
  HistoryFault,
  textOf,
  withoutRepository,
  type Env,
} from "./git.ts";
import { openRevision } from "./revision.ts";

export interface LastCommit {
  /** "HEAD (3f2a1b0c9d8e) on main" */
  readonly words: string;
  /** Whole sentences on what is unusual about it. */
  readonly notes: readonly string[];
  /** Addresses of the files in it that end so. */
  list(ending: string): Promise<readonly string[]>;
  /** Undefined where the file is not in it; a HistoryFault where it can't be read. */
  read(uri: string): Promise<string | undefined>;
}

export type OpenedLastCommit =
  | { readonly ok: true; readonly commit: LastCommit }
  /** `because` ends a sentence. */
  | { readonly ok: false; readonly because: string };

/** @param uri of a file that lies on the disk, or lay there when it was opened */
export async function lastCommitOf(
  uri: string,
  surroundings: Env,
): Promise<OpenedLastCommit> {
  const env = withoutRepository(surroundings);
  let folder: string;
  try {
    folder = path.dirname(fileURLToPath(uri));
  } catch {
    return { ok: false, because: "its address is none of this machine's disk" };
  }
  const opened = await openRevision(folder, "HEAD", env);
  if (!opened.ok) return opened;
  const { revision } = opened;
  const { root } = revision.repository;
  const branch = textOf(
    await git(root, ["symbolic-ref", "--quiet", "--short", "HEAD"], env),
  );
  const merging = await git(
    root,
    ["rev-parse", "--verify", "--quiet", "MERGE_HEAD"],
    env,
  );
  return {
    ok: true,
    commit: {
      words: `${revision.words}${branch === undefined ? "" : ` on ${branch}`}`,
      notes: [
        ...(branch === undefined
          ? [
              "No branch is checked out (a detached head): HEAD is the commit that is.",
            ]
          : []),
        ...(merging.ok
          ? [
              "A merge is in progress: the last commit is that of the branch that is merged into, so what comes from the other counts as changed.",
            ]
          : []),
      ],
      list: async (ending) =>
        (await revision.list(revision.repository.fileOf("")))
          .filter((file) => file.endsWith(ending))
          .map((file) => pathToFileURL(file).href),
      async read(file) {
        const at = fileURLToPath(file);
        const bytes = await revision.read(at);
        if (bytes === undefined) return undefined;
        try {
          return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
        } catch {
          throw new HistoryFault(
            `${path.basename(at)} at ${revision.words} is not UTF-8, so it can't be compared with.`,
          );
        }
      },
    },
  };
}
