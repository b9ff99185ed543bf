// The states that a file stood in, commit by commit, under whatever name it had. It reads none of them.
import path from "node:path";
import { HistoryFault, textOf, type Env } from "./git.ts";
import { isShallow, openRevision, type Revision } from "./revision.ts";

export interface FileVersion {
  /** In full. */
  readonly commit: string;
  /** The day of the commit, as its author had it, ISO 8601. */
  readonly date: string;
  /** Absolute path that the file had then, forward slashes. */
  readonly file: string;
}

export type FileVersions =
  | {
      readonly ok: true;
      /** The oldest first. */
      readonly versions: readonly FileVersion[];
      /** The clone holds only the newest commits: older ones may be missing. */
      readonly isShallow: boolean;
      readonly openAt: (version: FileVersion) => Promise<Revision>;
    }
  /** `because` ends a sentence. */
  | { readonly ok: false; readonly because: string };

/** Every commit that changed a file, its renames followed; none for one that was never committed. @param file absolute */
export async function versionsOf(
  file: string,
  env: Env,
): Promise<FileVersions> {
  const folder = path.dirname(file);
  const opened = await openRevision(folder, "HEAD", env);
  if (!opened.ok) return opened;
  const { repository } = opened.revision;
  const name = repository.nameOf(file);
  if (name === undefined)
    return { ok: false, because: "the file lies outside of the repository" };
  const answer = await repository.git([
    "log",
    "--follow",
    "--name-status",
    "--format=%x01%H%x00%as",
    "-z",
    "HEAD",
    "--",
    name,
  ]);
  if (!answer.ok)
    throw new HistoryFault(
      `git does not give the versions of ${name}: ${answer.said}.`,
    );
  return {
    ok: true,
    versions: versionsIn(textOf(answer) ?? "", repository.fileOf),
    isShallow: await isShallow(repository.git),
    openAt: async ({ commit }) => {
      const at = await openRevision(folder, commit, env);
      if (at.ok) return at.revision;
      throw new HistoryFault(
        `${commit.slice(0, 12)} cannot be read: ${at.because}.`,
      );
    },
  };
}

/** "\x01<commit>\0<day>\0\nM\0<name>\0", a rename with both names; the newest first. */
function versionsIn(
  said: string,
  fileOf: (name: string) => string,
): readonly FileVersion[] {
  return said
    .split("\u0001")
    .slice(1)
    .flatMap((each) => {
      const [commit = "", date = "", ...rest] = each.split("\0");
      const words = rest.map((word) => word.replace(/^\n+/u, ""));
      const [state = "", one, two] = words;
      const name = /^[RC]/u.test(state) ? two : one;
      // a file that a commit took away has no state in it
      return name === undefined || name === "" || state.startsWith("D")
        ? []
        : [{ commit, date, file: fileOf(name) }];
    })
    .reverse();
}
