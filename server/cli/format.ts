// `thou format`: the canonical layout of files. What that layout is, grammar/print.ts says; here files are read, compared and replaced.
import { constants } from "node:fs";
import {
  access,
  chmod,
  open,
  readFile,
  realpath,
  rename,
  stat,
  unlink,
} from "node:fs/promises";
import { homedir } from "node:os";
import path from "node:path";
import type { Command } from "commander";
import { readLines } from "../../grammar/lines.ts";
import { formatText } from "../../grammar/print.ts";
import { whyNot } from "../why-not.ts";
import { findFiles, type FoundFile } from "./find-files.ts";
import { STANDARD_INPUT, CannotRun, type Context } from "./io.ts";
import { readText } from "./read-text.ts";
import { allOf } from "./standard-input.ts";
import { createNote } from "./tell.ts";
import { shown } from "./terminal-text.ts";

export function addFormat(program: Command, context: Context): void {
  program
    .command("format")
    .summary("lay files out in the one common way")
    .description(
      "Lays out .thou files: facts two blanks in, one blank between words, one empty line where there were more. It changes no number, no " +
        "unit and no word, and leaves alone a line that it cannot read. Line ends, byte order mark and permissions stay. It names each " +
        "file that it changed, and says how many. Without a path it takes this folder and those below it, and follows no links out of them; the " +
        "root of a disk and your home folder it refuses. - stands for standard input.",
    )
    .argument("[paths...]", "files and folders, or - alone")
    .option(
      "--check",
      "change nothing: name the files that are not laid out so",
    )
    .addHelpText(
      "after",
      `
Exit code:
  0  all done; with --check: nothing to do
  1  with --check: at least one file is not laid out so
  2  it could not run, or not on every file

Examples:
  thou format                    every .thou file of this folder and below
  thou format --check            in a script
  thou format - < a.thou         to standard output`,
    )
    .action(
      async (paths: readonly string[], options: { readonly check?: true }) => {
        const onlyLook = options.check === true;
        if (!paths.includes(STANDARD_INPUT))
          await formatFiles(paths, onlyLook, context);
        else if (paths.length === 1)
          await formatStandardInput(onlyLook, context);
        else
          throw new CannotRun(
            "Standard input (-) cannot be laid out together with files; give it alone.",
          );
      },
    );
}

async function formatStandardInput(
  onlyLook: boolean,
  { io, exitWith }: Context,
): Promise<void> {
  const read = readText(await allOf(io.stdin), true);
  if (!read.ok)
    throw new CannotRun(`Standard input cannot be read: ${read.because}.`);
  const after = formatText(readLines(read.text));
  if (!onlyLook) io.stdout.write(after);
  else if (after !== read.text) {
    io.stdout.write("-\n");
    exitWith(1);
  }
}

async function formatFiles(
  paths: readonly string[],
  onlyLook: boolean,
  { io, exitWith }: Context,
): Promise<void> {
  const note = createNote(io);
  if (!onlyLook) await refuseTooWide(paths, io);
  const found = await findFiles(paths, io.cwd, { followsLinks: false });
  const problems = [...found.problems];
  let changed = 0;
  for (const file of found.files) {
    const outcome = await formatFile(file, onlyLook);
    if (typeof outcome === "string") problems.push(outcome);
    else if (outcome) {
      changed++;
      io.stdout.write(`${shown(file.name)}\n`);
    }
  }
  problems.forEach(note);
  const same =
    found.files.length - (problems.length - found.problems.length) - changed;
  if (0 < changed + same) note(countText(changed, same, onlyLook));
  else if (problems.length === 0) note("there is no .thou file to lay out.");
  if (onlyLook && 0 < changed) exitWith(1);
  if (0 < problems.length) exitWith(2);
}

/** Before anything is touched: a slip of the hand, or a script's variable that holds too little, is not to lay out a whole disk. */
async function refuseTooWide(
  paths: readonly string[],
  { cwd, env }: Context["io"],
): Promise<void> {
  const real = (at: string): Promise<string> => realpath(at).catch(() => at);
  const home = await real(path.resolve(env.HOME ?? homedir()));
  // an empty word is no folder, and is said to be none
  for (const each of paths.length === 0 ? ["."] : paths.filter(Boolean)) {
    const why = whyTooWide(await real(path.resolve(cwd, each)), home);
    if (why !== undefined)
      throw new CannotRun(
        `${paths.length === 0 ? "this folder" : shown(each)} is ${why}: every .thou file below it would be laid out. Nothing was touched; name the folder of your records. With --check it only looks.`,
      );
  }
}

/** What a folder is that is too much to lay out; undefined for others. @param at its real path @param home that of the home folder */
export function whyTooWide(at: string, home: string): string | undefined {
  if (at === path.parse(at).root) return "the root of a disk";
  if (at === home) return "your home folder";
  const below = path.relative(at, home);
  return below.startsWith("..") || path.isAbsolute(below)
    ? undefined
    : "a folder that your home folder lies in";
}

function countText(changed: number, same: number, onlyLook: boolean): string {
  const files = changed === 1 ? "1 file" : `${changed} files`;
  const verb = onlyLook ? `to lay out ("thou format" does it)` : "laid out";
  if (changed === 0)
    return same === 1
      ? "nothing to lay out; 1 file stands as it should."
      : `nothing to lay out; ${same} files stand as they should.`;
  return `${files} ${verb}, ${same} left as ${same === 1 ? "it is" : "they are"}.`;
}

/** True where the layout changes the file, false where it stands so already, a sentence where that cannot be found out or done. */
async function formatFile(
  file: FoundFile,
  onlyLook: boolean,
): Promise<boolean | string> {
  try {
    const bytes = await readFile(file.path);
    const read = readText(bytes, true);
    if (!read.ok) return `${shown(file.name)} cannot be read: ${read.because}.`;
    const after = formatText(readLines(read.text));
    if (after === read.text) return false;
    if (!onlyLook) await replace(file.path, bytes, after);
    return true;
  } catch (error) {
    return `${shown(file.name)} cannot be laid out: ${error instanceof CannotRun ? error.message : whyNot(error)}.`;
  }
}

/** Puts the text in the file's place in one move, so that no half file is ever seen; a link stays a link, and the mode stays. */
async function replace(
  name: string,
  before: Uint8Array,
  after: string,
): Promise<void> {
  const target = await realpath(name);
  await access(target, constants.W_OK);
  const { mode } = await stat(target);
  const fresh = path.join(
    path.dirname(target),
    `.${path.basename(target)}.${process.pid}.tmp`,
  );
  try {
    const file = await open(fresh, "wx", mode);
    try {
      await file.writeFile(after);
      await file.sync();
    } finally {
      await file.close();
    }
    // `open` leaves out what the umask forbids
    await chmod(fresh, mode);
    if (Buffer.compare(await readFile(target), before) !== 0)
      throw new CannotRun("it was changed meanwhile; run it again");
    await rename(fresh, target);
  } catch (error) {
    await unlink(fresh).catch(() => undefined);
    throw error;
  }
}
