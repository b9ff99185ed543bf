// `thou check`: findings and results of files. What it says is the model's; how it is said is the reports'.
import { InvalidArgumentError, Option, type Command } from "commander";
import {
  createCounter,
  type CheckedFile,
  type Outcome,
  type Summary,
} from "./report.ts";
import { FORMATS, formOf, reportFor, type Format } from "./report-form.ts";
import { scopeOf, type Scope, type ScopeOptions } from "./check-scope.ts";
import { cacheFor } from "./check-cache.ts";
import { evaluateMany, evaluatorWith } from "./evaluate-many.ts";
import type { Evaluator } from "./evaluate-record.ts";
import { nameFrom, type FoundFiles } from "./find-files.ts";
import type { Context } from "./io.ts";
import { createProgress } from "./progress.ts";
import { AS_MEANS } from "./standard-input.ts";
import { createNote, createTell } from "./tell.ts";

const LEVELS = ["error", "warning"] as const;

interface CheckOptions extends ScopeOptions {
  readonly format: Format;
  readonly failOn: (typeof LEVELS)[number];
  readonly brief?: true;
  readonly jobs?: number;
  /** False where --no-cache says so. */
  readonly cache?: string | false;
}

export function addCheck(program: Command, context: Context): void {
  program
    .command("check")
    .summary("show what is wrong with a record, and what it comes to")
    .description(
      "Reads .thou files and shows their findings and results. A folder stands for every .thou file in it and below, node_modules and names " +
        "that begin with a dot left out. Without a path it checks the folder you are in; - stands for standard input.",
    )
    .argument("[paths...]", "files and folders, or - alone")
    .addOption(new Option("--as <path>", AS_MEANS))
    .addOption(
      new Option("--format <form>", "how to write it")
        .choices(FORMATS)
        .default("text"),
    )
    .addOption(
      new Option(
        "--fail-on <level>",
        "the least level that makes the exit code 1",
      )
        .choices(LEVELS)
        .default("error"),
    )
    .addOption(
      new Option(
        "--staged",
        "only what the next commit changes, as it is staged, and the jobs that use it",
      ).conflicts("changedSince"),
    )
    .addOption(
      new Option(
        "--changed-since <rev>",
        "only what has changed since this branch left another, and the jobs that use it",
      ),
    )
    .addOption(
      new Option(
        "--brief",
        "as text, errors and warnings alone, and nothing where there are none",
      ),
    )
    .addOption(
      new Option(
        "--jobs <n>",
        "how many threads may work at once; as many as the machine has room for where left off",
      ).argParser(jobsOf),
    )
    .addOption(
      new Option(
        "--cache <folder>",
        "keep answers here, and work out only what has changed since; the folder can be removed at any time (THOU_CACHE names one for every check)",
      ),
    )
    .addOption(new Option("--no-cache", "whatever THOU_CACHE says"))
    .addHelpText(
      "after",
      `
Exit code:
  0  no finding at that level; one that a signed concession accepts
     does not count
  1  at least one
  2  it could not run, or not on every file: a path is not there, or a
     file is not UTF-8; what can be checked is checked all the same

Examples:
  thou check                          this folder
  thou check winch.thou crib.thou     two files
  thou check --fail-on warning jobs   for a script that stops at warnings too
  thou check - --as winch.thou        what another program has open
  thou check --staged --brief         before a commit
  thou check --changed-since origin/main --format sarif > thou.sarif`,
    )
    .action(async (paths: readonly string[], options: CheckOptions) => {
      await check(paths, options, context);
    });
}

async function check(
  paths: readonly string[],
  options: CheckOptions,
  context: Context,
): Promise<void> {
  const scope = await scopeOf(paths, options, context);
  try {
    await checkFound(scope, options, context);
  } finally {
    scope.close();
  }
}

async function checkFound(
  found: Scope,
  options: CheckOptions,
  context: Context,
): Promise<void> {
  const { io, parts } = context;
  const { tell, problems } = createTell(context);
  found.problems.forEach(tell);
  if (found.files.length + found.problems.length === 0 && !options.brief)
    io.stderr.write(`thou: ${found.noneSaid}\n`);

  const form = formOf(options.format, options.brief === true, context);
  const report = reportFor(form, context);
  const counter = createCounter();
  const note = createNote(io);
  const cache = await cacheFor(options.cache, context, note);
  const progress = createProgress(io, found.files.length, () => Date.now());
  const many = evaluateMany(found.files, {
    createProject: parts.createProject,
    form,
    cwd: io.cwd,
    read: found.read,
    startThread: parts.startThread,
    jobs: options.jobs ?? parts.cores ?? 1,
    cache,
  });
  let used: readonly string[] = [];
  for (;;) {
    const next = await many.next();
    if (next.done === true) {
      used = next.value;
      break;
    }
    progress.step();
    const { part, sentences, notes = [] } = next.value;
    sentences.forEach(tell);
    notes.forEach(note);
    if (part === undefined) continue;
    counter.add(part.count);
    report.add(part);
    await io.stdout.drained();
  }
  progress.end();
  const usedWithErrors = await unaskedWithErrors(
    used,
    found.files,
    evaluatorWith(
      parts.createProject(),
      io.cwd,
      { tell, note },
      found.read,
      cache,
    ),
    io.cwd,
  );
  const summary = counter.summary();
  await report.end({ summary, problems: [...problems], usedWithErrors });
  if (fails(summary, options.failOn)) context.exitWith(1);
}

function jobsOf(written: string): number {
  const jobs = Number(written);
  if (!Number.isInteger(jobs) || jobs < 1 || 64 < jobs)
    throw new InvalidArgumentError("a whole number from 1 to 64.");
  return jobs;
}

function fails(summary: Summary, failOn: CheckOptions["failOn"]): boolean {
  return 0 < summary.errors + (failOn === "warning" ? summary.warnings : 0);
}

/** Files that were read because others use them: their faults are theirs, but whoever asks only for the job is told that there are some. */
async function unaskedWithErrors(
  used: readonly string[],
  asked: FoundFiles,
  evaluator: Evaluator,
  cwd: string,
): Promise<Outcome["usedWithErrors"]> {
  const unasked = new Set(used);
  for (const { path } of asked) unasked.delete(path);
  const found: { readonly name: string; readonly errors: number }[] = [];
  for (const path of unasked) {
    const name = nameFrom(cwd, path);
    const errors = errorsIn((await evaluator.evaluate({ path, name }))?.check);
    evaluator.release({ path, name });
    if (0 < errors) found.push({ name, errors });
  }
  return found;
}

function errorsIn(check: CheckedFile["check"] | undefined): number {
  return (
    check?.findings.filter(
      (finding) => finding.accepted === null && finding.level === "error",
    ).length ?? 0
  );
}
