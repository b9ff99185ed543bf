// `thou trend`: sizes over the years, over the versions of a record in git and over records of the same part. What is made of them is
// records/'s; here the states are read.
import path from "node:path";
import { Option, type Command } from "commander";
import { trendChart } from "../pictures/trend-chart.ts";
import { HistoryFault } from "../history/git.ts";
import { versionsOf } from "../history/versions.ts";
import { FETCH_THE_REST } from "../history/revision.ts";
import type { OpenFile } from "../model/project.ts";
import { eachSeries, type Along, type Series } from "../records/trend.ts";
import {
  createGathering,
  type RecordGathering,
} from "../records/trend-gather.ts";
import { nameOf } from "../model/reference.ts";
import { nearest } from "../rules/text/near.ts";
import {
  findFiles,
  nameFrom,
  type FoundFile,
  type FoundFiles,
} from "./find-files.ts";
import { CannotRun, refuseDash, type Context, type Io } from "./io.ts";
import { createLoader, type ReadBytes } from "./load-files.ts";
import { createProgress } from "./progress.ts";
import { createTell } from "./tell.ts";
import { shown } from "./terminal-text.ts";
import { trendJson } from "./trend-json.ts";
import { trendText } from "./trend-text.ts";
import { textThere, writeWhole } from "./written-file.ts";

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
With --svg it writes over a file only where trend drew that file itself.

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
  const { tell } = createTell(context);
  refuseDash(
    "--svg",
    options.svg ?? "",
    '"--format svg" writes the picture to standard output',
  );
  const found = await findFiles(paths, io.cwd);
  found.problems.forEach(tell);
  if (found.files.length === 0 && 0 < found.problems.length) {
    // why there is nothing is said; who reads JSON is given a whole one all the same
    if (options.format === "json")
      await writeAll(trendJson([], [], options.against), io);
    return;
  }
  const gathering = createGathering(options.entry);
  const refs = await gather(
    found.files,
    paths,
    gathering,
    options,
    context,
    tell,
  );
  const all = gathering.points();
  if (options.entry !== undefined && all.length === 0)
    gathering.note(noneOf(options.entry, refs));
  const notes = [
    ...gathering.notesOn(all, options.against),
    ...(all.some(({ datedBy }) => datedBy === "commit")
      ? ["* The reading has no day of its own: this is that of its commit."]
      : []),
  ];
  await writeTrend(() => eachSeries(all, options.against), notes, options, io);
}

/** Reads every record, and of each that is named its versions; gives the entries of all, for a name that none of them has. */
async function gather(
  files: FoundFiles,
  paths: readonly string[],
  gathering: ReturnType<typeof createGathering>,
  options: TrendOptions,
  context: Context,
  tell: (sentence: string) => void,
): Promise<ReadonlySet<string>> {
  const { io } = context;
  const named = new Set(paths.map((each) => path.resolve(io.cwd, each)));
  const project = context.parts.createProject();
  const loader = createLoader(project, io.cwd, tell);
  const progress = createProgress(io, files.length, () => Date.now(), true);
  const refs = new Set<string>();
  for (const file of files) {
    progress.step();
    const record = gathering.record(file.name, shown(file.name));
    if (options.history ?? named.has(path.resolve(io.cwd, file.path)))
      await readVersions(file, record, gathering.note, context, tell);
    if ((await loader.load(file)) === undefined) continue;
    const open = project.open(file.path);
    if (open !== undefined) record.now(open);
    if (options.entry !== undefined)
      for (const { ref } of open?.file.entries ?? [])
        if (HAVE_TRENDS.test(ref)) refs.add(ref);
    loader.release(file);
  }
  progress.end();
  return refs;
}

/** @param series what is drawn or told, gone through once for each */
async function writeTrend(
  series: () => Iterable<Series>,
  notes: readonly string[],
  options: TrendOptions,
  io: Io,
): Promise<void> {
  if (options.svg !== undefined)
    await writeChart(
      path.resolve(io.cwd, options.svg),
      trendChart([...series()], { theme: "paper", width: 760 }),
      io.cwd,
    );
  switch (options.format) {
    case "text":
      await writeAll(trendText(series(), notes, options.against, io), io);
      break;
    case "json":
      await writeAll(trendJson(series(), notes, options.against), io);
      break;
    case "svg":
      io.stdout.write(
        `${trendChart([...series()], { theme: "paper", width: 760 })}\n`,
      );
      break;
  }
}

/** Entries that have sizes or clearances over the years. */
const HAVE_TRENDS = /^(?:journal|hole|bore|fit) /u;

/** Why there is nothing of an entry: no record has it, or none says when it was read. */
function noneOf(entry: string, refs: ReadonlySet<string>): string {
  if (refs.has(entry)) return `There is no size with a day of ${shown(entry)}.`;
  const named = [...refs].filter((ref) => nameOf(ref) === entry).slice(0, 4);
  const near = 0 < named.length ? named : nearest(entry, [...refs]);
  return `No record here has ${shown(entry)}${
    near.length === 0
      ? ': name an entry as "journal front", "bore rear" or "fit front".'
      : `; did you mean ${near.join(", ").replace(/, ([^,]*)$/u, " or $1")}?`
  }`;
}

/** No further ahead of who reads than they read, so that of many series only one is held. */
async function writeAll(pieces: Iterable<string>, io: Io): Promise<void> {
  for (const piece of pieces) {
    io.stdout.write(piece);
    await io.stdout.drained();
  }
}

/** Gives the states that git has of a file, the oldest first. */
async function readVersions(
  file: FoundFile,
  record: RecordGathering,
  note: (sentence: string) => void,
  context: Context,
  tell: (sentence: string) => void,
): Promise<void> {
  const { io } = context;
  const name = shown(file.name);
  try {
    const found = await versionsOf(path.resolve(io.cwd, file.path), io.env);
    if (!found.ok) {
      note(`${name} is read as it lies: ${found.because}.`);
      return;
    }
    if (found.versions.length === 0)
      note(`${name} is read as it lies: it was never committed.`);
    if (found.isShallow)
      note(
        `The history of ${name} ends where this clone does, which holds only the newest commits: ${FETCH_THE_REST}.`,
      );
    for (const version of found.versions) {
      const revision = await found.openAt(version);
      const commit = version.commit.slice(0, 12);
      const state = await readState(
        { ...file, path: version.file },
        (each) => revision.read(each),
        context,
        (sentence) => {
          record.leftOut(commit, sentence);
        },
      );
      if (state !== undefined)
        record.past(state, { date: version.date, commit });
    }
  } catch (error) {
    if (!(error instanceof HistoryFault)) throw error;
    tell(error.message);
  }
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

/** Ends every picture that is written, so that no other file is ever written over. */
const DRAWN_MARK = "<!-- drawn by thou trend -->\n";

async function writeChart(
  file: string,
  svg: string,
  cwd: string,
): Promise<void> {
  const name = shown(nameFrom(cwd, file) || ".");
  const there = (await textThere(file, name)) ?? "";
  if (there !== "" && !there.endsWith(DRAWN_MARK))
    throw new CannotRun(
      `${name} is there already, and was not drawn by thou trend. Choose another name, or move it away.`,
    );
  await writeWhole(file, `${svg}\n${DRAWN_MARK}`, name);
}
