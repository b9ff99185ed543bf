// What is said to someone who wrote a command line that cannot be: one sentence with the way out, in place of commander's own words.
import type { CommanderError } from "commander";
import { shown } from "./terminal-text.ts";

/** The sentence for an error of commander 14; `command` is the one that was asked for, where there is such a one. */
export function usageSentence(
  error: CommanderError,
  command: string | undefined,
): string {
  const [first = "", hint] = error.message.trim().split("\n");
  const [, what = ""] = /'(.*?)'/.exec(first) ?? [];
  const help = `"thou ${command === undefined ? "" : `${command} `}--help"`;
  const way =
    (error.code === "commander.unknownCommand" ? otherWay(what) : undefined) ??
    (command === undefined && what === "-v" ? "did you mean -V?" : undefined) ??
    (hint === undefined
      ? `${help} shows what there is.`
      : hint.replace(/^\(D/, "d").replace(/\)$/, ""));
  return shown(`${sentenceStart(error.code, what, first, command)}; ${way}`);
}

/** What someone wants who names a file where a command stands, or asks for what other tools begin with. */
function otherWay(word: string): string | undefined {
  if (/[./\\]/u.test(word)) return `to check it, "thou check ${word}".`;
  if (word === "version") return '"thou --version" says it.';
  return ["new", "init", "create", "start"].includes(word)
    ? 'a record is a text file that any editor makes, and "thou explain job" says how it begins.'
    : undefined;
}

function sentenceStart(
  code: string,
  what: string,
  message: string,
  command: string | undefined,
): string {
  const name = command ?? "thou";
  switch (code) {
    case "commander.unknownCommand":
      return `there is no command "${what}"`;
    case "commander.unknownOption":
      return `${name} has no option "${what}"`;
    case "commander.missingArgument":
      return `${name} needs something to work on (${what})`;
    case "commander.missingMandatoryOptionValue":
      return `${name} needs ${what}`;
    case "commander.optionMissingArgument":
      return `"${what}" needs a word after it`;
    case "commander.invalidArgument":
      return invalid(what, message);
    case "commander.conflictingOption":
      return `${optionNamed(what)} and ${optionNamed(/with option '(.*?)'/u.exec(message)?.[1] ?? "another")} do not go together`;
    case "commander.excessArguments":
      return excess(name, message);
    default:
      return message.replace(/^error: /, "").replace(/\.$/, "");
  }
}

function excess(name: string, message: string): string {
  const [, most = "", given = ""] =
    /Expected (\d+) arguments? but got (\d+)/u.exec(message) ?? [];
  const words =
    most === "0" ? "no words" : most === "1" ? "one word" : `${most} words`;
  return `${name} takes ${words} after it, and was given ${given}`;
}

/** "--changed-since <rev>" by its name alone. */
function optionNamed(written: string): string {
  return written.split(" ")[0] ?? written;
}

function invalid(option: string, message: string): string {
  const [, value = "", choices = ""] =
    /argument '(.*)' is invalid\. (?:Allowed choices are )?(.*)\.$/.exec(
      message,
    ) ?? [];
  return `${option.split(" ")[0] ?? option} takes ${choices.replace(/, ([^,]*)$/, " or $1")}, not "${value}"`;
}
