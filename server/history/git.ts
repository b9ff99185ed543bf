// The `git` that is installed, run with fixed words, never through a shell, and never waiting for someone to type. It knows no records.
import { execFile } from "node:child_process";

/** What the command finds in its surroundings, `PATH` first of all. */
export type Env = Readonly<Record<string, string | undefined>>;

export type GitAnswer =
  | { readonly ok: true; readonly out: Buffer }
  | {
      readonly ok: false;
      /** There is no git, or the folder is not there. */
      readonly isMissing: boolean;
      /** What git said, its first line. */
      readonly said: string;
    };

const MOST_BYTES = 256 * 1024 * 1024;
const MOST_TIME = 60_000; // milliseconds

/** Runs git in a folder. A word that came from a user stands behind `--end-of-options` or `--`. */
export function git(
  folder: string,
  words: readonly string[],
  env: Env,
): Promise<GitAnswer> {
  return new Promise((resolve) => {
    execFile(
      "git",
      // no program that a repository's own settings name is run for it
      ["-c", "core.fsmonitor=false", "-C", folder, ...words],
      {
        encoding: "buffer",
        timeout: MOST_TIME,
        windowsHide: true,
        maxBuffer: MOST_BYTES,
        env: {
          ...env,
          GIT_OPTIONAL_LOCKS: "0",
          GIT_TERMINAL_PROMPT: "0",
          // names are names, not patterns
          GIT_LITERAL_PATHSPECS: "1",
          LC_ALL: "C",
        },
      },
      (error, stdout, stderr) => {
        resolve(
          error === null
            ? { ok: true, out: stdout }
            : {
                ok: false,
                isMissing: error.code === "ENOENT",
                said: stderr.toString("utf8").split("\n")[0]?.trim() ?? "",
              },
        );
      },
    );
  });
}

/** What git printed, without the line end; undefined where it failed. */
export function textOf(answer: GitAnswer): string | undefined {
  return answer.ok
    ? answer.out.toString("utf8").replace(/\r?\n$/u, "")
    : undefined;
}
