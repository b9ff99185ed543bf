// A repository of its own for a test, with the git that is installed.
import { execFileSync } from "node:child_process";
import { chmod, mkdir, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { createProject } from "../../server/rules/check.ts";
import { folderWith } from "./in-process.ts";

export const CRIB = `shop yard
  units inch

reamer r-875
  size 0.8750
  oversize +0.0001 to +0.0003
`;

export const JOB = `job pump
  units inch
  use "crib.thou"

part shaft
part case
journal drive on shaft
  limits 0.8738 to 0.8745
  read 0.8742 0.8741
bore drive in case
fit drive of journal drive in bore drive
  want 0.0008 to 0.0016
line drive
  bore drive from 0 to 1
  ream with r-875
`;

/** A yard with the record and its crib. */
export const YARD = { "jobs/pump.thou": JOB, "jobs/crib.thou": CRIB };

/** The record with a journal read under its limits. */
export const WORN = JOB.replace("0.8742 0.8741", "0.8737 0.8736");

/** What a real run is given, and what of the user's own settings it must not hang on. */
export const real = {
  env: {
    ...(process.env as Record<string, string>),
    GIT_CONFIG_GLOBAL: "/dev/null",
    GIT_CONFIG_SYSTEM: "/dev/null",
  },
  parts: { createProject: () => createProject({ root: "" }) },
};

export function git(cwd: string, ...words: readonly string[]): string {
  return execFileSync(
    "git",
    [
      "-c",
      "user.name=Yard",
      "-c",
      "user.email=yard@example.org",
      "-c",
      "protocol.file.allow=always",
      ...words,
    ],
    {
      cwd,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
      env: real.env,
    },
  ).trim();
}

/** A repository with the files committed once. */
export async function repositoryWith(
  files: Readonly<Record<string, string>>,
): Promise<string> {
  const cwd = await folderWith(files);
  git(cwd, "init", "--quiet", "--initial-branch=main");
  commitAll(cwd, "as received");
  return cwd;
}

export function commitAll(cwd: string, message: string): void {
  git(cwd, "add", "--all");
  git(cwd, "commit", "--quiet", "--no-verify", `--message=${message}`);
}

export async function write(
  cwd: string,
  name: string,
  text: string | Uint8Array,
): Promise<void> {
  await mkdir(path.dirname(path.join(cwd, name)), { recursive: true });
  await writeFile(path.join(cwd, name), text);
}

export async function remove(cwd: string, name: string): Promise<void> {
  await rm(path.join(cwd, name), { recursive: true });
}

/** A command of this name and nothing else of the machine but git: its folder is the whole `PATH`. */
export async function script(at: string, text: string): Promise<void> {
  await mkdir(path.dirname(at), { recursive: true });
  await writeFile(at, text);
  await chmod(at, 0o755);
}
