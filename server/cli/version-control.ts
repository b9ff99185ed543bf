// How files stand in version control, asked of the `git` that is installed: with fixed words, never through a shell, and never waiting for
// someone to type.
import { execFile } from "node:child_process";
import { realpath } from "node:fs/promises";
import path from "node:path";

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

type Env = Readonly<Record<string, string | undefined>>;

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
  if (!inside.ran) return { state: "none", because: NO_GIT };
  if (inside.out === undefined) return { state: "none", because: NONE };
  const top = path.resolve(inside.out.replace(/\r?\n$/, ""));
  const names = new Map<string, string>();
  for (const file of files) {
    const name = path.relative(top, await realpath(file).catch(() => file));
    if (!name.startsWith("..") && !path.isAbsolute(name))
      names.set(file, name.replaceAll(path.sep, "/"));
  }
  const which = [
    "--",
    ...[...names.values()].map((name) => `:(literal)${name}`),
  ];
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
    revision: head.out?.trim(),
    changed: files.filter((file) => {
      const name = names.get(file);
      return (
        name === undefined ||
        !tracked.includes(name) ||
        status.out === undefined ||
        changed.includes(name)
      );
    }),
  };
}

const NONE = "not under version control";
const NO_GIT = "not known to be under version control: git is not installed";

interface Answer {
  /** False where there is no git. */
  readonly ran: boolean;
  /** What it said; undefined where it failed. */
  readonly out: string | undefined;
}

function listed({ out = "" }: Answer): readonly string[] {
  return out.split("\0").filter((each) => each !== "");
}

function git(
  folder: string,
  words: readonly string[],
  env: Env,
): Promise<Answer> {
  return new Promise((resolve) => {
    execFile(
      "git",
      // no program that a repository's own settings name is run for it
      ["-c", "core.fsmonitor=false", "-C", folder, ...words],
      {
        timeout: 10_000,
        windowsHide: true,
        maxBuffer: 1 << 20,
        env: {
          ...env,
          GIT_OPTIONAL_LOCKS: "0",
          GIT_TERMINAL_PROMPT: "0",
          LC_ALL: "C",
        },
      },
      (error, stdout) => {
        resolve({
          ran: !(error !== null && error.code === "ENOENT"),
          out: error === null ? stdout : undefined,
        });
      },
    );
  });
}
