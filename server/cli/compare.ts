// `thou compare`: what changed in the engineering between two states of one record, or of a folder of them. What a change is belongs to
// compare/; what the two words mean to compare-sides.ts.
import { Option, type Command } from "commander";
import path from "node:path";
import { compareRecords } from "../compare/changes.ts";
import { comparisonMarkdown } from "../compare/markdown.ts";
import type { ComparedRecord } from "../compare/wording.ts";
import { giveUses } from "../model/give-uses.ts";
import type { OpenFile } from "../model/project.ts";
import { comparisonJson } from "./compare-json.ts";
import { sidesOf, type Side } from "./compare-sides.ts";
import { comparisonText } from "./compare-text.ts";
import type { Context } from "./io.ts";
import { createTell } from "./tell.ts";
import { shown } from "./terminal-text.ts";

const FORMATS = ["text", "markdown", "json"] as const;

export function addCompare(program: Command, context: Context): void {
  program
    .command("compare")
    .summary("show what changed in what a record comes to")
    .description(
      "Compares two states of a record, or of the records of two folders: sizes, clearances, verdicts, the reamer, steps, concessions and findings, " +
        "by entry and not by line. Each state is a file, a folder, a state in version control such as HEAD or a tag, or a path at one, such as " +
        "HEAD~3:winch.thou. Without a second one it is the files as they are.",
    )
    .argument("<old>", "the earlier state")
    .argument("[new]", "the later state")
    .addOption(
      new Option("--format <form>", "how to write it")
        .choices(FORMATS)
        .default("text"),
    )
    .addHelpText(
      "after",
      `
Exit code:
  0  nothing is worse
  1  a verdict got worse, an error or a warning is new, or a record
     holds no entries any more
  2  it could not run, or not on every file

Examples:
  thou compare HEAD                    this folder since the last commit
  thou compare HEAD winch.thou         one record since the last commit
  thou compare v1 v2                   this folder at two tags
  thou compare HEAD~3:winch.thou winch.thou
  thou compare last-year.thou this-year.thou
  thou compare origin/main HEAD --format markdown   for a comment`,
    )
    .action(
      async (
        earlier: string,
        later: string | undefined,
        options: { readonly format: (typeof FORMATS)[number] },
      ) => {
        await compare(earlier, later, options.format, context);
      },
    );
}

async function compare(
  earlier: string,
  later: string | undefined,
  format: (typeof FORMATS)[number],
  context: Context,
): Promise<void> {
  const { io } = context;
  const [one, two] = await sidesOf(earlier, later, io);
  const before = await openedOf(one, context);
  const after = await openedOf(two, context);
  const areFiles = one.isFile && two.isFile;
  const pairs = pairsOf(before, after, areFiles);
  // two files that lie side by side are two, and none of them has moved
  const mayMove = !(areFiles && one.isDisk && two.isDisk);
  const records = pairs.flatMap(
    (pair) => comparedOf(pair, mayMove, context) ?? [],
  );
  const between = `${one.words} and ${two.words}`;
  const changed = records.filter(hasChanged);
  switch (format) {
    case "text":
      io.stdout.write(comparisonText(between, records.length, changed, io));
      break;
    case "markdown":
      io.stdout.write(comparisonMarkdown(between, records.length, changed));
      break;
    case "json":
      io.stdout.write(comparisonJson(one.words, two.words, records));
      break;
  }
  const { tell } = createTell(context);
  one.problems.forEach(tell);
  two.problems.forEach(tell);
  if (changed.some(({ changes }) => 0 < changes.worse)) context.exitWith(1);
}

/** A record of a side, with the name that pairs it with the other side's. */
interface Opened {
  readonly name: string;
  readonly open: OpenFile;
}

interface OpenedSide {
  readonly opened: readonly Opened[];
  /** Names of records that are there, or were a moment ago, and can't be read: they are neither new nor gone. */
  readonly unread: ReadonlySet<string>;
}

/** Each side has a project of its own, since both have files of the same paths. */
async function openedOf(side: Side, { parts }: Context): Promise<OpenedSide> {
  const project = parts.createProject();
  const give = async (file: string): Promise<void> => {
    project.setFile(file, (await side.read(file)) ?? null);
  };
  const opened: Opened[] = [];
  const unread = new Set<string>();
  for (const file of side.records) {
    // it may be there already, used by another
    if (project.open(file) === undefined) await give(file);
    await giveUses(project, file, give);
    const open = project.open(file);
    const name = path.posix.relative(side.base, file) || file;
    if (open === undefined) unread.add(name);
    else opened.push({ name, open });
  }
  return { opened, unread };
}

interface Pair {
  readonly before: Opened | undefined;
  readonly after: Opened | undefined;
}

/** Two files are one pair, whatever they are called. In folders a record is known by its path, or, once moved, by the name of its job. */
function pairsOf(
  one: OpenedSide,
  two: OpenedSide,
  areFiles: boolean,
): readonly Pair[] {
  const isRead = ({ name }: Opened): boolean =>
    areFiles
      ? one.unread.size + two.unread.size === 0
      : !one.unread.has(name) && !two.unread.has(name);
  const before = one.opened.filter(isRead);
  const after = two.opened.filter(isRead);
  if (areFiles) {
    const pair = { before: before[0], after: after[0] };
    return pair.before === undefined && pair.after === undefined ? [] : [pair];
  }
  const left = new Map(before.map((each) => [each.name, each]));
  const taken = (name: string | undefined): Opened | undefined => {
    const found = name === undefined ? undefined : left.get(name);
    if (found !== undefined) left.delete(found.name);
    return found;
  };
  const byPath = after.map((each) => ({
    before: taken(each.name),
    after: each,
  }));
  const pairs = byPath.map(({ before: same, after: now }) => ({
    before:
      same ??
      taken(
        movedFrom(
          now,
          left,
          byPath.map((pair) => pair.after),
        ),
      ),
    after: now,
  }));
  return [
    ...pairs,
    ...[...left.values()].map((each) => ({ before: each, after: undefined })),
  ].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
}

/** The name of the one record left over that has the job of this one, where no other record of now has it. */
function movedFrom(
  now: Opened,
  left: ReadonlyMap<string, Opened>,
  all: readonly Opened[],
): string | undefined {
  const job = jobOf(now.open);
  if (
    job === undefined ||
    all.filter(({ open }) => jobOf(open) === job).length !== 1
  )
    return undefined;
  const [found, another] = [...left.values()].filter(
    ({ open }) => jobOf(open) === job,
  );
  return another === undefined ? found?.name : undefined;
}

function jobOf({ file }: OpenFile): string | undefined {
  return file.entries.find(({ kind }) => kind === "job" || kind === "shop")
    ?.ref;
}

function nameOf({ before, after }: Pair): string {
  return after?.name ?? before?.name ?? "";
}

function comparedOf(
  pair: Pair,
  mayMove: boolean,
  context: Context,
): ComparedRecord | undefined {
  const { before, after } = pair;
  const name = nameOf(pair);
  try {
    return {
      name,
      movedFrom:
        mayMove &&
        before !== undefined &&
        after !== undefined &&
        before.name !== after.name
          ? before.name
          : undefined,
      state:
        before === undefined ? "new" : after === undefined ? "gone" : "changed",
      changes: compareRecords(before?.open, after?.open),
    };
  } catch (error) {
    context.io.stderr.write(
      `thou: ${shown(name)} could not be compared, by a fault of thou itself: ${shown(String(error))}. Please report it with the file.\n`,
    );
    context.exitWith(2);
    return undefined;
  }
}

function hasChanged({ state, movedFrom, changes }: ComparedRecord): boolean {
  const { changes: list, come, gone } = changes;
  return (
    state !== "changed" ||
    movedFrom !== undefined ||
    0 < list.length + come.length + gone.length
  );
}
