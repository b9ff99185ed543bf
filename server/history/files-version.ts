// How files stand in version control. It reads none of them.
import { realpath } from "node:fs/promises";
import path from "node:path";
import { git, textOf, type Env, type GitAnswer } from "./git.ts";

/** What is known of files in the version control of the first one's folder. */
export type FilesVersion =
  | { readonly state: "none"; readonly because: string }
  | {
      readonly state: "known";
      /** Twelve digits of the commit; undefined before the first one. */
      readonly revision: string | undefined;
      /** Those of the paths asked for that are not as the commit has them. */
      readonly changed: readonly string[];
    };

/**
 * The commit that the first file's folder stands at, and which of the files are not as it has them. New and ignored files, and those of
 * another repository or of none, count as changed: that commit does not have them. Where it has none of them, there is no version control.
 */
export async function filesVersion(
  files: readonly string[],
  env: Env,
): Promise<FilesVersion> {
  const [first] = files;
  const folder = first === undefined ? "." : path.dirname(first);
  const inside = await git(folder, ["rev-parse", "--show-toplevel"], env);
  if (!inside.ok)
    return { state: "none", because: inside.isMissing ? NO_GIT : NONE };
  const top = path.resolve(textOf(inside) ?? ".");
  const names = new Map<string, string>();
  for (const file of files) {
    const name = path.relative(top, await realpath(file).catch(() => file));
    if (!name.startsWith("..") && !path.isAbsolute(name))
      names.set(file, name.replaceAll(path.sep, "/"));
  }
  const which = ["--", ...names.values()];
  const tracked = listed(await git(top, ["ls-files", "-z", ...which], env));
  if (names.size === 0 || tracked.length === 0)
    return { state: "none", because: NONE };
  const status = await git(top, ["status", "--porcelain", "-z", ...which], env);
  // two letters and a blank stand before each name
  const changed = listed(status).map((each) => each.slice(3));
  const head = await git(
    top,
    ["rev-parse", "--verify", "--short=12", "HEAD"],
    env,
  );
  return {
    state: "known",
    revision: textOf(head)?.trim(),
    changed: files.filter((file) => {
      const name = names.get(file);
      return (
        name === undefined ||
        !tracked.includes(name) ||
        !status.ok ||
        changed.includes(name)
      );
    }),
  };
}

const NONE = "not under version control";
const NO_GIT = "not known to be under version control: git is not installed";

function listed(answer: GitAnswer): readonly string[] {
  return (textOf(answer) ?? "").split("\0").filter((each) => each !== "");
}
