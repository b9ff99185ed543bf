// The command line as a function: arguments and a world in, an exit code out. It puts the commands together and turns what goes wrong into
// one sentence; what a command does is in the file of its name.
import { Command, CommanderError, type OutputConfiguration } from "commander";
import { HistoryFault } from "../history/git.ts";
import { addAsk } from "./ask.ts";
import { addCheck } from "./check.ts";
import { addCompare } from "./compare.ts";
import { addExplain } from "./explain.ts";
import { addExport } from "./export.ts";
import { addFormat } from "./format.ts";
import {
  CannotRun,
  columnsOf,
  hasColours,
  paintFor,
  type Context,
  type ExitCode,
  type Io,
  type Parts,
} from "./io.ts";
import { addLearn } from "./learn.ts";
import { addTrend } from "./trend.ts";
import { addLimits } from "./limits.ts";
import { addServe } from "./serve.ts";
import { addSheet } from "./sheet.ts";
import { createNote } from "./tell.ts";
import { shown } from "./terminal-text.ts";
import { usageSentence } from "./usage-error.ts";
import { version } from "./version.ts";

/** In the order in which the help lists them. */
const COMMANDS: readonly ((program: Command, context: Context) => void)[] = [
  addCheck,
  addCompare,
  addTrend,
  addLearn,
  addFormat,
  addLimits,
  addSheet,
  addExport,
  addAsk,
  addExplain,
  addServe,
];

/** Runs `thou` with the words after its name. Nothing is thrown: what fails has been said on `stderr`. */
export async function run(
  words: readonly string[],
  io: Io,
  parts: Parts,
): Promise<ExitCode> {
  let code: ExitCode = 0;
  const context: Context = {
    io,
    parts,
    exitWith(next) {
      if (code < next) code = next;
    },
  };
  const program = programFor(context);
  try {
    await program.parseAsync(asked(words, program), { from: "user" });
  } catch (error) {
    // help and version that were asked for are no failure
    if (error instanceof CommanderError && error.exitCode === 0) return code;
    context.exitWith(2);
    const sentence = reason(
      error,
      program.commands.find((command) => command.name() === words[0])?.name(),
    );
    if (sentence !== undefined) createNote(io)(sentence);
  }
  return code;
}

/** Help of a command that is not there is told as that command is: commander would show the help of the whole, and not say why. */
function asked(words: readonly string[], program: Command): string[] {
  const [first, of = "help"] = words;
  const isThere = ["help", ...program.commands.map((each) => each.name())];
  return first === "help" && !isThere.includes(of)
    ? words.slice(1)
    : [...words];
}

/** Undefined where all has been said: without any word `thou` shows its help. */
function reason(
  error: unknown,
  command: string | undefined,
): string | undefined {
  if (error instanceof CannotRun) return error.message;
  if (error instanceof HistoryFault) return shown(error.message);
  if (error instanceof CommanderError)
    return error.code === "commander.help"
      ? undefined
      : usageSentence(error, command);
  return `this is a fault of thou itself: ${shown(String(error))}. Please report it with what you asked for.`;
}

function programFor(context: Context): Command {
  const { io } = context;
  const program = new Command("thou")
    .description(
      "Checks the record of a job that fits shafts to bushes: what is wrong in it, what it comes to, what to do next.",
    )
    .usage("COMMAND [...]")
    .version(version, "-V, --version", "show the version")
    .exitOverride()
    .configureOutput(outputFor(io))
    .configureHelp({
      styleTitle: (text) => paintFor(io.stdout, io.env).bold(text),
      subcommandTerm: (command) => command.name(),
      subcommandDescription: (command) =>
        command.summary() || command.description(),
    })
    .helpOption("-h, --help", "show this help")
    .helpCommand("help [command]", "show the help of a command")
    .addHelpText(
      "after",
      `
"thou help check", or "thou check --help", says more of a command.
Colours are for terminals; NO_COLOR=1 turns them off, FORCE_COLOR=1 on.

Examples:
  thou check                 the records in this folder
  thou explain job           how a record begins
  thou explain fit-tight     what a finding means`,
    );
  for (const add of COMMANDS) add(program, context);
  for (const command of program.commands)
    command.helpOption("-h, --help", "show this help");
  return program;
}

function outputFor({ stdout, stderr, env }: Io): OutputConfiguration {
  return {
    writeOut(text) {
      stdout.write(text);
    },
    writeErr(text) {
      stderr.write(text);
    },
    getOutHelpWidth: () => columnsOf(stdout),
    getErrHelpWidth: () => columnsOf(stderr),
    getOutHasColors: () => hasColours(stdout, env),
    getErrHasColors: () => hasColours(stderr, env),
    // said by `run`, in our own words
    outputError: () => undefined,
  };
}
