// `thou sheet`: a record as a page to print. What stands on it is server/sheet's; here the record is read, its state in version control is
// asked, and the page is written where it was wanted, never over a file of someone else's.
import { open as openFile, realpath, stat } from "node:fs/promises";
import path from "node:path";
import type { Command } from "commander";
import { jobSheet } from "../sheet/job-sheet.ts";
import { measuringSheet } from "../sheet/measuring-sheet.ts";
import { GENERATOR, type SheetFacts } from "../sheet/facts.ts";
import { forward, nameFrom } from "./find-files.ts";
import { STANDARD_INPUT, CannotRun, refuseDash, type Context } from "./io.ts";
import { createLoader } from "./load-files.ts";
import { endWithNear } from "./near-file.ts";
import { AS_MEANS, recordOnStandardInput, refuseAs } from "./standard-input.ts";
import { createNote, createTell } from "./tell.ts";
import { shown } from "./terminal-text.ts";
import { filesVersion } from "../history/files-version.ts";
import { codeOf, whyNot } from "../why-not.ts";
import { version } from "./version.ts";
import { noFile, writeWhole } from "./written-file.ts";

interface SheetOptions {
  /** Where the record on standard input belongs. */
  readonly as?: string;
  readonly blank?: true;
  readonly out?: string;
  readonly force?: true;
}

export function addSheet(program: Command, context: Context): void {
  program
    .command("sheet")
    .summary("make a page to print: the job, or a sheet to measure with")
    .description(
      "Writes the record as one HTML file that needs nothing else and prints on A4 and Letter: where the job stands, findings, steps with " +
        "boxes and lines to sign, cautions, pictures, results with their working and sources. With --blank it is a sheet to take to the " +
        "bench: what to measure where, with the limits beside it and room to write.",
    )
    .argument("<file>", "the record; - stands for standard input")
    .option("--as <path>", AS_MEANS)
    .option("--blank", "a measuring sheet to fill in")
    .option("--out <file>", "write it there, not to standard output")
    .option("--force", "write over a file that is no sheet of thou's")
    .addHelpText(
      "after",
      `
Exit code:
  0  the sheet is made; findings stand on it
  2  it could not be made, or not from all the files

Examples:
  thou sheet winch.thou --out winch.html
  thou sheet winch.thou --blank --out measure.html
  thou sheet winch.thou > winch.html
  thou sheet - --as winch.thou > winch.html   what another program has open`,
    )
    .action(async (file: string, options: SheetOptions) => {
      await sheet(file, options, context);
    });
}

async function sheet(
  asked: string,
  options: SheetOptions,
  context: Context,
): Promise<void> {
  const { io } = context;
  const isPiped = asked === STANDARD_INPUT;
  if (!isPiped) refuseAs(options.as);
  const at = path.resolve(io.cwd, options.as ?? asked);
  if (options.out === undefined && io.stdout.isTerminal)
    throw new CannotRun(
      `a sheet is a page of HTML, which a terminal does not show: name a file for it, as with --out ${shown(path.basename(at, path.extname(at)))}.html.`,
    );
  if (!isPiped) await refuseAllButAFile(at, asked, io.cwd);
  const target =
    options.out === undefined
      ? undefined
      : await targetFor(options.out, at, options.force === true, io.cwd);
  const text = await sheetText(at, isPiped, options, context);
  if (text === undefined) return;
  if (target === undefined) io.stdout.write(text);
  else {
    await writeWhole(target, text, shown(options.out ?? ""));
    createNote(io)(
      `${options.blank === true ? "measuring sheet" : "job sheet"} written to ${shown(nameFrom(io.cwd, target))}; open it in a browser and print it.`,
    );
  }
}

/** Where the sheet goes; refuses the record itself, and what is no sheet unless that may be written over. */
async function targetFor(
  out: string,
  record: string,
  isForced: boolean,
  cwd: string,
): Promise<string> {
  refuseDash("--out", out, "without it the sheet goes to standard output");
  const target = path.resolve(cwd, out);
  if (await isSame(target, record))
    throw new CannotRun(
      `${shown(out)} is the record itself; name another file for the sheet.`,
    );
  if (!isForced) await refuseOthersFile(target, out);
  return target;
}

/** The sheet of a record; undefined where that can't be read, and why has been said. */
async function sheetText(
  at: string,
  isPiped: boolean,
  options: SheetOptions,
  context: Context,
): Promise<string | undefined> {
  const { io, parts } = context;
  const project = parts.createProject();
  const { file, read: from } = isPiped
    ? await recordOnStandardInput(options.as, io)
    : {
        file: { path: forward(at), name: nameFrom(io.cwd, at) },
        read: undefined,
      };
  const { tell } = createTell(context);
  const loader = createLoader(project, io.cwd, tell, from);
  if ((await loader.load(file)) === undefined) return undefined;
  const open = project.open(file.path);
  if (open === undefined) return undefined;
  const read = open.shop.files.map((each) => each.path);
  const facts: SheetFacts = {
    date: dayOf(new Date()),
    version,
    nameOf: (each) => nameFrom(io.cwd, each),
    versioned: isPiped
      ? { state: "none", because: "the record came on standard input" }
      : named(await filesVersion(read, io.env), io.cwd),
  };
  const check = project.check(file.path);
  return options.blank === true
    ? measuringSheet(open, check, facts)
    : jobSheet(open, check, facts);
}

/** The day where the tool is run, ISO 8601. */
export function dayOf(now: Date): string {
  const two = (number: number): string => String(number).padStart(2, "0");
  return `${String(now.getFullYear()).padStart(4, "0")}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function named(
  found: Awaited<ReturnType<typeof filesVersion>>,
  cwd: string,
): SheetFacts["versioned"] {
  return found.state === "none"
    ? found
    : {
        ...found,
        changed: found.changed.map((file) => nameFrom(cwd, file)),
      };
}

async function refuseAllButAFile(
  at: string,
  asked: string,
  cwd: string,
): Promise<void> {
  const cannot = (why: string, end = "."): CannotRun =>
    new CannotRun(`${shown(asked)} cannot be read: ${why}${end}`);
  let what;
  try {
    what = await stat(at);
  } catch (error) {
    throw cannot(
      whyNot(error),
      codeOf(error) === "ENOENT"
        ? await endWithNear(at, (file) => nameFrom(cwd, file))
        : ".",
    );
  }
  if (what.isDirectory())
    throw cannot("it is a folder; name one record, for a sheet is of one job");
  if (!what.isFile()) throw cannot("it is not a file");
}

/** Whether two paths lead to one file, by whatever links. */
async function isSame(one: string, other: string): Promise<boolean> {
  const [a, b] = await Promise.all(
    [one, other].map((each) => realpath(each).catch(() => each)),
  );
  return a === b;
}

/** Every sheet says within so many bytes who made it. */
const HEAD = 512;

async function refuseOthersFile(target: string, asked: string): Promise<void> {
  let start: string;
  try {
    const what = await stat(target);
    if (!what.isFile()) throw noFile(shown(asked), what);
    const file = await openFile(target, "r");
    try {
      const { buffer, bytesRead } = await file.read(
        Buffer.alloc(HEAD),
        0,
        HEAD,
        0,
      );
      start = buffer.toString("utf8", 0, bytesRead);
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof CannotRun) throw error;
    // nothing there is what is wanted; anything else comes up when it is written
    return;
  }
  if (start !== "" && !isSheet(start))
    throw new CannotRun(
      `${shown(asked)} is there already and is no sheet of thou's; name another file, or write over it with --force.`,
    );
}

function isSheet(start: string): boolean {
  return start.includes(`<meta name="generator" content="${GENERATOR}`);
}
