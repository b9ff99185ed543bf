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
      /** Its exit code; undefined where it did not come to its end. */
      readonly code: number | undefined;
      /** What git said, its first line; where it was stopped, why. */
      readonly said: string;
    };

/** What version control would not give though it should have it: its message is a whole sentence. */
export class HistoryFault extends Error {
  override readonly name = "HistoryFault";
}

const MOST_BYTES = 256 * 1024 * 1024;
const MOST_TIME = 60_000; // milliseconds

/** Runs git in a folder. A word that came from a user stands behind `--end-of-options` or `--`. */
export function git(
  folder: string,
  words: readonly string[],
  env: Env,
  mostBytes = MOST_BYTES,
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
        maxBuffer: mostBytes,
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
                code: typeof error.code === "number" ? error.code : undefined,
                said:
                  stoppedBecause(error, mostBytes) ??
                  stderr.toString("utf8").split("\n")[0]?.trim() ??
                  "",
              },
        );
      },
    );
  });
}

function stoppedBecause(
  error: Error & { readonly code?: unknown; readonly killed?: boolean },
  mostBytes: number,
): string | undefined {
  if (error.code === "ERR_CHILD_PROCESS_STDIO_MAXBUFFER")
    return `its answer is longer than ${String(Math.ceil(mostBytes / 1024 / 1024))} MB`;
  return error.killed === true
    ? `it did not answer within ${String(MOST_TIME / 1000)} seconds`
    : undefined;
}

/** What git printed, without the line end; undefined where it failed. */
export function textOf(answer: GitAnswer): string | undefined {
  return answer.ok
    ? answer.out.toString("utf8").replace(/\r?\n$/u, "")
    : undefined;
}

/** The names that git printed with a zero byte after each. A failure is a fault: @param asked "the files of HEAD" */
export function listOf(answer: GitAnswer, asked: string): readonly string[] {
  if (!answer.ok) throw faultOf(answer, asked);
  return answer.out
    .toString("utf8")
    .split("\0")
    .filter((each) => each !== "");
}

/** @param asked what git was asked for, "the files of HEAD" */
export function faultOf(
  answer: GitAnswer & { readonly ok: false },
  asked: string,
): HistoryFault {
  if (answer.isMissing)
    return new HistoryFault(
      "git is not installed, so that no state in version control can be read.",
    );
  const said = answer.said.replace(/^(?:fatal|error): /u, "");
  const because =
    said === "" ? `it ended with ${String(answer.code ?? "no code")}` : said;
  return new HistoryFault(
    `git does not give ${asked}: ${because.replace(/\.$/u, "")}. Try "git fsck" in the repository, and in a partial clone fetch what is missing.`,
  );
}

/**
 * Surroundings without what names a repository: git sets it for its hooks, and an editor that was started from one hands it on. Whoever asks
 * about a file of his own wants the repository that it lies in.
 */
export function withoutRepository(env: Env): Env {
  return Object.fromEntries(
    Object.entries(env).filter(([name]) => !OF_A_REPOSITORY.test(name)),
  );
}

// `git rev-parse --local-env-vars`, git 2.39
const OF_A_REPOSITORY =
  /^GIT_(?:ALTERNATE_OBJECT_DIRECTORIES|CONFIG|CONFIG_PARAMETERS|CONFIG_COUNT|OBJECT_DIRECTORY|DIR|WORK_TREE|IMPLICIT_WORK_TREE|GRAFT_FILE|INDEX_FILE|NO_REPLACE_OBJECTS|REPLACE_REF_BASE|PREFIX|INTERNAL_SUPER_PREFIX|SHALLOW_FILE|COMMON_DIR)$/u;
