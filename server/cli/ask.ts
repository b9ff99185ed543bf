// `thou ask`: a ready question to the archive, and its answer as a table, as JSON or as CSV.
import { Option, type Command } from "commander";
import path from "node:path";
import { askArchive } from "../archive/ask.ts";
import { ArchiveFault } from "../archive/fault.ts";
import { QUESTIONS, questionNamed } from "../archive/questions.ts";
import { answerCsv, answerJson, answerText } from "./answers.ts";
import { CannotRun, columnsOf, paintFor, type Context } from "./io.ts";
import { padded, shown, widthOf, wrap } from "./terminal-text.ts";

const FORMATS = ["text", "json", "csv"] as const;

interface AskOptions {
  readonly archive: string;
  readonly format: (typeof FORMATS)[number];
  readonly sql?: true;
}

export function addAsk(program: Command, context: Context): void {
  program
    .command("ask")
    .summary("put a ready question to an archive")
    .description(
      "Answers a question over all records of an archive that thou export made. Without a name it lists the questions.",
    )
    .argument("[name]", "the question")
    .addOption(
      new Option("--archive <folder>", "the archive").default("archive"),
    )
    .addOption(
      new Option("--format <form>", "how to write it")
        .choices(FORMATS)
        .default("text"),
    )
    .option("--sql", "show the question's SQL, to ask it elsewhere")
    .addHelpText(
      "after",
      `
As text, lengths are in mm; JSON and CSV have them in m.

Exit code:
  0  answered, with however many rows
  2  it could not run

Examples:
  thou ask
  thou ask gauges-overdue --archive /srv/archive
  thou ask closures --format csv > closures.csv
  thou ask reamer-wear --sql`,
    )
    .action(async (name: string | undefined, options: AskOptions) => {
      await ask(name, options, context);
    });
}

async function ask(
  name: string | undefined,
  options: AskOptions,
  { io }: Context,
): Promise<void> {
  if (name === undefined) {
    io.stdout.write(`${list(columnsOf(io.stdout)).join("\n")}\n`);
    return;
  }
  const question = questionNamed(name);
  if (question === undefined)
    throw new CannotRun(
      `there is no question "${shown(name)}"; there are ${QUESTIONS.map((each) => each.name).join(", ")}.`,
    );
  if (options.sql === true) {
    io.stdout.write(question.sql);
    return;
  }
  const answer = await askArchive(
    path.resolve(io.cwd, options.archive),
    options.archive,
    question.sql,
  ).catch((error: unknown) => {
    throw error instanceof ArchiveFault ? new CannotRun(error.message) : error;
  });
  switch (options.format) {
    case "text":
      io.stdout.write(
        answerText(
          question.asks,
          answer,
          paintFor(io.stdout, io.env),
          columnsOf(io.stdout),
        ),
      );
      break;
    case "json":
      io.stdout.write(answerJson(name, answer));
      break;
    case "csv":
      io.stdout.write(answerCsv(answer));
      break;
  }
}

function list(columns: number): readonly string[] {
  const width = Math.max(...QUESTIONS.map(({ name }) => widthOf(name))) + 2;
  return QUESTIONS.flatMap(({ name, asks }) =>
    wrap(asks, Math.max(20, columns - width)).map(
      (line, index) => padded(index === 0 ? name : "", width) + line,
    ),
  );
}
