// `thou explain`: the page of a finding, or the list of all of them.
import type { Command } from "commander";
import { closest, distance } from "fastest-levenshtein";
import { CannotRun, columnsOf, paintFor, type Context } from "./io.ts";
import { pageForTerminal, summaryOf } from "./page.ts";
import { padded, shown, widthOf, wrap } from "./terminal-text.ts";

export function addExplain(program: Command, context: Context): void {
  program
    .command("explain")
    .summary("show the page of a finding")
    .description(
      "Shows what a finding means, what brings it about and what to do, with a bad and a good example. Without a code it lists every " +
        "finding that there is.",
    )
    .argument("[code]", "the finding's code, as check shows it")
    .addHelpText(
      "after",
      "\nExamples:\n  thou explain fit-tight\n  thou explain",
    )
    .action((code: string | undefined) => {
      explain(code, context);
    });
}

function explain(code: string | undefined, { io, parts }: Context): void {
  const paint = paintFor(io.stdout, io.env);
  const columns = columnsOf(io.stdout);
  if (code === undefined) {
    io.stdout.write(`${list(parts.pages, columns).join("\n")}\n`);
    return;
  }
  const page = Object.hasOwn(parts.pages, code) ? parts.pages[code] : undefined;
  if (page === undefined)
    throw new CannotRun(unknownCode(code, Object.keys(parts.pages)));
  io.stdout.write(`${pageForTerminal(page, columns, paint)}\n`);
}

function list(
  pages: Readonly<Record<string, string>>,
  columns: number,
): readonly string[] {
  const codes = Object.keys(pages);
  const width = Math.max(0, ...codes.map(widthOf)) + 2;
  return codes.flatMap((code) =>
    wrap(
      shown(summaryOf(pages[code] ?? "")),
      Math.max(20, columns - width),
    ).map((line, index) => padded(index === 0 ? code : "", width) + line),
  );
}

function unknownCode(code: string, codes: readonly string[]): string {
  const near =
    codes.length === 0 ? undefined : closest(code.toLowerCase(), codes);
  const isNear =
    near !== undefined &&
    distance(code.toLowerCase(), near) <=
      Math.max(2, Math.floor(near.length / 3));
  const ask = isNear
    ? `did you mean ${near}?`
    : '"thou explain" lists them all.';
  return `There is no finding with the code "${shown(code)}"; ${ask}`;
}
