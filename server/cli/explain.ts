// `thou explain`: the page of a finding, of a word of the language or of a result, or the list of all of them.
import type { Command } from "commander";
import { unitOf } from "../core/quantity/units.ts";
import {
  howToWrite,
  isMultigrade,
  nameFor,
  shippedAs,
} from "../rules/text/designation.ts";
import {
  firstFound,
  namesInCommon,
  nearest,
  otherNames,
} from "../rules/text/near.ts";
import { eitherOf } from "../rules/text/wording.ts";
import {
  ENTRY_SUMMARIES,
  RESULT_SUMMARIES,
  SHIPPED,
  WORDS,
  wordPage,
} from "./explain-word.ts";
import { CannotRun, columnsForProse, paintFor, type Context } from "./io.ts";
import { pageForTerminal, summaryOf } from "./page.ts";
import { padded, shown, widthOf, wrap } from "./terminal-text.ts";

export function addExplain(program: Command, context: Context): void {
  program
    .command("explain")
    .summary("show what a finding means, or how a word is written")
    .description(
      "Shows what a finding means, what brings it about and what to do, with a bad and a good example. Of a word such as journal or want " +
        "it shows where it stands, how it is written and what it says, of a result such as reamer-window what it is; material and oil list " +
        "those that are shipped. Without a word it lists every finding, every entry and every result that there is.",
    )
    .argument("[word]", "a finding's code, as check shows it, or a word")
    .addHelpText(
      "after",
      "\nExit code:\n  0  there is a page\n  2  there is none\n\nExamples:\n  thou explain fit-tight   a finding\n  thou explain journal     an entry, with every fact that it takes\n  thou explain want        a fact\n  thou explain chance      a result\n  thou explain",
    )
    .action((code: string | undefined) => {
      explain(
        code,
        program.commands.map((command) => command.name()),
        context,
      );
    });
}

function explain(
  code: string | undefined,
  commands: readonly string[],
  { io, parts }: Context,
): void {
  const paint = paintFor(io.stdout, io.env);
  const columns = columnsForProse(io.stdout);
  if (code === undefined) {
    const codes = Object.entries(parts.pages).map(
      ([each, page]) => [each, summaryOf(page)] as const,
    );
    const lines = [
      paint.bold("Findings"),
      ...list(codes, columns),
      "",
      paint.bold("Entries of a record"),
      ...list(ENTRY_SUMMARIES, columns),
      "",
      paint.bold("Results of a check"),
      ...list(RESULT_SUMMARIES, columns),
    ];
    io.stdout.write(`${lines.join("\n")}\n`);
    return;
  }
  const finding = Object.hasOwn(parts.pages, code)
    ? parts.pages[code]
    : undefined;
  const pages = [finding, wordPage(code)].filter((page) => page !== undefined);
  if (pages.length === 0)
    throw new CannotRun(unknownWord(code, Object.keys(parts.pages), commands));
  io.stdout.write(
    `${pages.map((page) => pageForTerminal(page, columns, paint)).join("\n\n")}\n`,
  );
}

function list(
  rows: readonly (readonly [string, string])[],
  columns: number,
): readonly string[] {
  const width = Math.max(0, ...rows.map(([name]) => widthOf(name))) + 2;
  return rows.flatMap(([name, summary]) =>
    wrap(shown(summary), Math.max(20, columns - width)).map(
      (line, index) => padded(index === 0 ? name : "", width) + line,
    ),
  );
}

function unknownWord(
  code: string,
  codes: readonly string[],
  commands: readonly string[],
): string {
  const own = isMultigrade(code) ? nameFor("oil", code) : undefined;
  if (own !== undefined)
    return `no oil of two grades is shipped, such as "${shown(code)}": ${howToWrite("oil", own)}; "thou explain oil" lists those of one grade.`;
  const shipped = shippedAs(code, ["material", "oil"]);
  const near = firstFound(
    () => shipped,
    () => meant(code, codes),
  );
  const told = shipped.length === 0 ? elsewhere(code, commands) : undefined;
  const ask =
    told ??
    (near.length === 0
      ? '"thou explain" lists them all.'
      : `did you mean ${eitherOf(near)}?`);
  return `there is no finding and no word "${shown(code)}"; ${ask}`;
}

/** What was perhaps meant: the trade's other names first, then of a name with hyphens what is shipped, then what is nearest. */
function meant(code: string, codes: readonly string[]): readonly string[] {
  // of a name with hyphens a part in common says more than letters in common
  const shipped = code.includes("-")
    ? [() => nearest(code, SHIPPED), () => namesInCommon(code, SHIPPED)]
    : [];
  return firstFound(
    () => otherNames(code, WORDS).slice(0, 1),
    ...shipped,
    () => nearest(code, [...codes, ...WORDS, ...SHIPPED]),
  );
}

/** Where what has no page of its own is told of: a command, a unit, a class. */
function elsewhere(
  code: string,
  commands: readonly string[],
): string | undefined {
  if (commands.includes(code))
    return `of a command, "thou help ${code}" says what it does.`;
  if (unitOf(code) !== undefined) return '"thou explain units" has the units.';
  const [, letters] = CLASS.exec(code) ?? [];
  if (letters === undefined) return undefined;
  const size = INCH_CLASS.test(letters) ? "0.875 in" : "25";
  return `of a class, thou limits "${size} ${code}" says the limits.`;
}

const CLASS = /^([A-Za-z]{1,2})\d{1,2}$/u;
/** Of ANSI B4.1. */
const INCH_CLASS = /^(?:RC|LC|LT|LN|FN)$/u;
