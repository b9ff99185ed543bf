// `thou learn`: what the records of a shop teach of its reamers, its bushes and its gauges, as a report, or as a crib file that the records
// then use. What is learned is records/'s.
import { Option, type Command } from "commander";
import path from "node:path";
import {
  LEARNED_MARK,
  learnedCrib,
  namesInTwoCribs,
} from "../records/learned-crib.ts";
import {
  evidenceIn,
  lessonsOf,
  type Lessons,
  type RecordEvidence,
} from "../records/lessons.ts";
import { findFiles, forward, nameFrom } from "./find-files.ts";
import { CannotRun, refuseDash, type Context } from "./io.ts";
import { lessonsJson } from "./learn-json.ts";
import { lessonsText } from "./learn-text.ts";
import { createLoader } from "./load-files.ts";
import { createNote, createTell } from "./tell.ts";
import { shown } from "./terminal-text.ts";
import { textThere, writeWhole } from "./written-file.ts";

const FORMATS = ["text", "json", "thou"] as const;

interface LearnOptions {
  readonly format: (typeof FORMATS)[number];
  readonly out?: string;
}

export function addLearn(program: Command, context: Context): void {
  program
    .command("learn")
    .summary("learn from the records what reamers cut and bushes close")
    .description(
      "Reads records and says what each reamer really cuts over its size in each material, how much each size of bush closes when it is pressed, as " +
        "a share of what the figures foretell, and what one gauge shows over another where both read the same place. A folder stands for every " +
        ".thou file in it and below. Only readings that are signed, dated and whole count; what was left out is counted with the reason.",
    )
    .argument("<paths...>", "files and folders")
    .addOption(
      new Option("--format <form>", "how to write it")
        .choices(FORMATS)
        .default("text"),
    )
    .option(
      "--out <file>",
      "write the crib file that records can use, such as learned.thou",
    )
    .addHelpText(
      "after",
      `
With --out it writes a crib file to review like any other change. A job
takes it with: use "learned.thou", beside its crib. It writes over a file
only where learn wrote that file itself, and only where all could be read.

Exit code:
  0  it ran, whatever it learned
  2  it could not run, or not on every file

Examples:
  thou learn jobs                          what this shop's records teach
  thou learn jobs --out learned.thou       as a crib file
  thou learn jobs --format json`,
    )
    .action(async (paths: readonly string[], options: LearnOptions) => {
      await learn(paths, options, context);
    });
}

async function learn(
  paths: readonly string[],
  options: LearnOptions,
  context: Context,
): Promise<void> {
  const { io } = context;
  const { lessons, unwritten } = await lessonsIn(paths, context);
  const named = withNames(lessons, io.cwd);
  if (options.out !== undefined) {
    refuseDash(
      "--out",
      options.out,
      '"--format thou" writes the crib to standard output',
    );
    const target = path.resolve(io.cwd, options.out);
    if (unwritten !== undefined)
      throw new CannotRun(
        `${shown(nameFrom(io.cwd, target))} is left as it is: ${unwritten}.`,
      );
    await writeCrib(lessons, target, io.cwd);
    createNote(io)(
      `lessons written to ${shown(nameFrom(io.cwd, target))}; review them like any other change.`,
    );
  }
  switch (options.format) {
    case "text":
      io.stdout.write(lessonsText(named, io));
      break;
    case "json":
      io.stdout.write(lessonsJson(named));
      break;
    case "thou":
      io.stdout.write(cribFor(lessons, io.cwd, io.cwd));
      break;
  }
}

/** What was learned, and why no crib is to be written of it where something could not be read, or where there is no record at all. */
async function lessonsIn(
  paths: readonly string[],
  context: Context,
): Promise<{
  readonly lessons: Lessons;
  readonly unwritten: string | undefined;
}> {
  const { io, parts } = context;
  const { tell, problems } = createTell(context);
  const found = await findFiles(paths, io.cwd);
  found.problems.forEach(tell);
  if (found.files.length + found.problems.length === 0)
    io.stderr.write(
      `thou: there is no .thou file in ${shown(paths.join(", "))}.\n`,
    );
  const project = parts.createProject();
  const loader = createLoader(project, io.cwd, tell);
  const evidence: RecordEvidence[] = [];
  for (const file of found.files) {
    if ((await loader.load(file)) !== undefined) {
      try {
        const record = project.open(file.path);
        // a crib holds no job to learn from
        if (record?.file.entries.some(({ kind }) => kind === "job") === true)
          evidence.push(evidenceIn(record));
      } catch (error) {
        tell(
          `nothing could be learned from ${shown(file.name)}, by a fault of thou itself: ${shown(String(error))}. Please report it with the file.`,
        );
      }
    }
    loader.release(file);
  }
  return {
    lessons: lessonsOf(evidence),
    unwritten:
      0 < problems.size
        ? "not all of what it is learned from could be read; mend that, or name only what can be read"
        : evidence.length === 0
          ? "there is no job to learn from"
          : undefined,
  };
}

/** The same with files as the user sees them. */
function withNames(lessons: Lessons, cwd: string): Lessons {
  const name = (file: string): string =>
    file === "" ? "" : nameFrom(cwd, file);
  return {
    ...lessons,
    reamers: lessons.reamers.map((each) => ({
      ...each,
      crib: name(each.crib),
    })),
    bushes: lessons.bushes.map((each) => ({ ...each, crib: name(each.crib) })),
    gauges: lessons.gauges.map((each) => ({ ...each, crib: name(each.crib) })),
    leftOut: lessons.leftOut.map((each) => ({
      ...each,
      file: name(each.file),
    })),
  };
}

/** The crib file's text, its `use` lines from the folder that it goes to. */
function cribFor(lessons: Lessons, folder: string, cwd: string): string {
  const [twice] = namesInTwoCribs(lessons);
  if (twice !== undefined)
    throw new CannotRun(
      `${twice.name} is in two cribs, ${twice.cribs.map((crib) => shown(nameFrom(cwd, crib))).join(" and ")}, and one file can't speak of both. Learn from the records of one crib at a time.`,
    );
  const cribs = new Set(
    [...lessons.reamers, ...lessons.bushes, ...lessons.gauges].flatMap(
      ({ crib }) => (crib === "" ? [] : [crib]),
    ),
  );
  return learnedCrib(
    lessons,
    [...cribs].sort().map((crib) => forward(path.relative(folder, crib))),
  );
}

/** Writes over a file only where it was written by `thou learn`. */
async function writeCrib(
  lessons: Lessons,
  file: string,
  cwd: string,
): Promise<void> {
  const text = cribFor(lessons, path.dirname(file), cwd);
  const name = shown(nameFrom(cwd, file));
  const before = await textThere(file, name);
  if (before !== undefined && !before.startsWith(LEARNED_MARK))
    throw new CannotRun(
      `${name} is there already, and was not written by thou learn. Choose another name, or move it away.`,
    );
  await writeWhole(file, text, name);
}
