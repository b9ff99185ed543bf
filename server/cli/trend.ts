// `thou trend`: sizes over the years, over the versions of a record in git and over records of the same part. What is made of them is
// records/'s; here the states are read.
import { writeFile } from "node:fs/promises";
import path from "node:path";
import { Option, type Command } from "commander";
import { trendChart } from "../pictures/trend-chart.ts";
import { HistoryFault } from "../history/git.ts";
import { versionsOf } from "../history/versions.ts";
import { FETCH_THE_REST } from "../history/revision.ts";
import type { OpenFile } from "../model/project.ts";
import { seriesOf, type Along } from "../records/trend.ts";
import { pointsOnce } from "../records/points-once.ts";
import { pointsIn } from "../records/trend-points.ts";
import type { StatePoint, StatePoints } from "../records/trend-state.ts";
import type { Arrivals } from "../records/undated.ts";
import { findFiles, nameFrom, whyNot, type FoundFile } from "./find-files.ts";
import { CannotRun, columnsOf, type Context } from "./io.ts";
import { createLoader, type ReadBytes } from "./load-files.ts";
import { shown, wrapIndented } from "./terminal-text.ts";
import { trendJson } from "./trend-json.ts";
import { trendText } from "./trend-text.ts";

const FORMATS = ["text", "json", "svg"] as const;

interface TrendOptions {
  readonly format: (typeof FORMATS)[number];
  readonly svg?: string;
  readonly history?: boolean;
  readonly entry?: string;
  readonly against: Along;
}

export function addTrend(program: Command, context: Context): void {
  program
    .command("trend")
    .summary("how sizes and clearances changed over the years")
    .description(
      "Reads records and says how each journal, hole, bore and clearance changed with time, how fast it wears with the interval that holds the true " +
        "rate, and when it is at its limit, or that this can't be said yet. A part with a serial is followed over all records that name it. Of a " +
        "file that is named, every version in git is read too; of the files in a folder only with --history.",
    )
    .argument("<paths...>", "files and folders")
    .addOption(
      new Option("--format <form>", "how to write it")
        .choices(FORMATS)
        .default("text"),
    )
    .option("--svg <file>", "draw it as well, in a file such as trend.svg")
    .option("--entry <name>", 'one entry alone, such as "journal front"')
    .addOption(
      new Option(
        "--against <what>",
        "over the calendar, or over the machine's running hours",
      )
        .choices(["date", "hours"] satisfies Along[])
        .default("date"),
    )
    .option("--history", "read the versions in git of files in folders, too")
    .option("--no-history", "read no versions in git at all")
    .addHelpText(
      "after",
      `
A reading counts on its own day (\`read … on DATE\`); one without a day, on
the day of the first commit that has it. A new bush, other limits, or a size
that went the other way begin anew. Intervals hold in 95 of 100. Against
hours a reading takes what the job has for its day, \`hours 12400 h on DATE\`.

Exit code:
  0  it ran, whatever the trend
  2  it could not run, or not on every file

Examples:
  thou trend winch-3.thou                  over its versions in git
  thou trend jobs --svg trend.svg          over all records of each part
  thou trend jobs --entry "journal front"
  thou trend jobs --against hours          per 1000 running hours`,
    )
    .action(async (paths: readonly string[], options: TrendOptions) => {
      await trend(paths, options, context);
    });
}

async function trend(
  paths: readonly string[],
  options: TrendOptions,
  context: Context,
): Promise<void> {
  const { io } = context;
  const notes = new Set<string>();
  const tell = teller(context);
  const found = await findFiles(paths, io.cwd);
  found.problems.forEach(tell);
  const named = new Set(paths.map((each) => path.resolve(io.cwd, each)));
  const states: (readonly StatePoint[])[] = [];
  const project = context.parts.createProject();
  const loader = createLoader(project, io.cwd, tell);
  let undated = 0;
  let damaged = 0;
  const mixed = new Set<string>();
  for (const file of found.files) {
    const reads = options.history ?? named.has(path.resolve(io.cwd, file.path));
    const arrivals: Arrivals = new Map();
    if (reads) {
      const versions = await readVersions(file, arrivals, context, notes, tell);
      states.push(...versions.map(({ points }) => points));
    }
    if ((await loader.load(file)) === undefined) continue;
    const open = project.open(file.path);
    if (open !== undefined) {
      const points = pointsIn({
        open,
        file: file.name,
        committed: undefined,
        arrivals,
      });
      states.push(points.points);
      undated += points.undated;
      damaged += points.damaged;
      points.mixed.forEach((fit) => mixed.add(`${shown(file.name)}: ${fit}`));
    }
    loader.release(file);
  }
  const all = pointsOnce(states).filter(
    ({ entry }) => options.entry === undefined || entry === options.entry,
  );
  if (options.entry !== undefined && all.length === 0)
    notes.add(
      `There is no size with a day of ${options.entry}: name an entry as "journal front", "bore rear" or "fit front".`,
    );
  if (0 < undated)
    notes.add(
      `${count(undated, "reading")} without a day, and in no commit that was read, left out: write \`on DATE\`.`,
    );
  if (0 < damaged)
    notes.add(
      `${count(damaged, "line")} with a reading can't be read, and left out.`,
    );
  for (const fit of mixed)
    notes.add(
      `${fit} has no clearance of a day: readings without a day came with several commits, and count together. Write \`on DATE\`.`,
    );
  const series = seriesOf(all, options.against);
  const without =
    options.against === "hours"
      ? all.filter(({ hours }) => hours === undefined).length
      : 0;
  if (0 < without)
    notes.add(
      `${count(without, "size")} of days on which no hours are written, or two that differ, left out: write \`hours 12400 h on DATE\` in the job, as the hour meter showed that day.`,
    );
  if (all.some(({ datedBy }) => datedBy === "commit"))
    notes.add(
      "* The reading has no day of its own: this is that of its commit.",
    );
  if (options.svg !== undefined)
    await writeChart(
      path.resolve(io.cwd, options.svg),
      trendChart(series, { theme: "paper", width: 760 }),
      io.cwd,
    );
  switch (options.format) {
    case "text":
      io.stdout.write(trendText(series, [...notes], options.against, io));
      break;
    case "json":
      io.stdout.write(trendJson(series, [...notes], options.against));
      break;
    case "svg":
      io.stdout.write(
        `${trendChart(series, { theme: "paper", width: 760 })}\n`,
      );
      break;
  }
}

function teller(context: Context): (sentence: string) => void {
  const { io } = context;
  const told = new Set<string>();
  return (sentence) => {
    if (told.has(sentence)) return;
    told.add(sentence);
    io.stderr.write(
      `${wrapIndented(`thou: ${sentence}`, columnsOf(io.stderr), "", "  ")}\n`,
    );
    context.exitWith(2);
  };
}

/** What the states hold that git has of a file, the oldest first. */
async function readVersions(
  file: FoundFile,
  arrivals: Arrivals,
  context: Context,
  notes: Set<string>,
  tell: (sentence: string) => void,
): Promise<readonly StatePoints[]> {
  const { io } = context;
  const name = shown(file.name);
  const versions: StatePoints[] = [];
  try {
    const found = await versionsOf(path.resolve(io.cwd, file.path), io.env);
    if (!found.ok) {
      notes.add(`${name} is read as it lies: ${found.because}.`);
      return versions;
    }
    if (found.versions.length === 0)
      notes.add(`${name} is read as it lies: it was never committed.`);
    if (found.isShallow)
      notes.add(
        `The history of ${name} ends where this clone does, which holds only the newest commits: ${FETCH_THE_REST}.`,
      );
    for (const version of found.versions) {
      const revision = await found.openAt(version);
      const skip = (sentence: string): void => {
        notes.add(
          `${name} at ${version.commit.slice(0, 12)} is left out: ${sentence}`,
        );
      };
      const state = await readState(
        { ...file, path: version.file },
        (each) => revision.read(each),
        context,
        skip,
      );
      if (state !== undefined)
        versions.push(
          pointsIn({
            open: state,
            file: file.name,
            committed: {
              date: version.date,
              commit: version.commit.slice(0, 12),
            },
            arrivals,
          }),
        );
    }
    const harmed = versions.filter(({ damaged }) => 0 < damaged).length;
    if (0 < harmed)
      notes.add(
        `${count(harmed, "version")} of ${name} in git with lines of readings that can't be read: these lines are left out.`,
      );
  } catch (error) {
    if (!(error instanceof HistoryFault)) throw error;
    tell(error.message);
  }
  return versions;
}

/** A record of a commit with all that it uses; undefined where it can't be read, and `tell` has said why. */
async function readState(
  file: FoundFile,
  read: ReadBytes,
  { io, parts }: Context,
  tell: (sentence: string) => void,
): Promise<OpenFile | undefined> {
  const project = parts.createProject();
  const loader = createLoader(project, io.cwd, tell, read);
  return (await loader.load(file)) === undefined
    ? undefined
    : project.open(file.path);
}

async function writeChart(
  file: string,
  svg: string,
  cwd: string,
): Promise<void> {
  try {
    await writeFile(file, `${svg}\n`);
  } catch (error) {
    throw new CannotRun(
      `${shown(nameFrom(cwd, file))} cannot be written: ${whyNot(error)}.`,
    );
  }
}

function count(number: number, noun: string): string {
  return `${String(number)} ${noun}${number === 1 ? "" : "s"}`;
}
