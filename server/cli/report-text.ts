// A check for a person at a terminal: each finding with the line it stands on, the results as a table, the count, and what to do next.
import picocolors from "picocolors";
import { showCount } from "../core/quantity/show.ts";
import type { Finding, Level, Place } from "../model/result.ts";
import { nameFrom } from "./find-files.ts";
import type { Io, Paint } from "./io.ts";
import { createNextSteps, waitsOf } from "./next-steps.ts";
import {
  inOrder,
  levelOf,
  type CheckedFile,
  type Report,
  type ReportPart,
  type Summary,
} from "./report.ts";
import { resultsTable } from "./results-table.ts";
import { excerptOf, shown, wrapIndented } from "./terminal-text.ts";

/** How it is laid out. */
export interface TextForm {
  readonly cwd: string;
  readonly columns: number;
  readonly hasColours: boolean;
  /** Errors and warnings alone, and nothing at all where there are none. */
  readonly isBrief: boolean;
}

/** What it says of one file. */
export function textPart(
  file: CheckedFile,
  form: TextForm,
): Pick<ReportPart, "text" | "waits"> {
  const { isBrief, columns } = form;
  const page = { ...form, paint: picocolors.createColors(form.hasColours) };
  const findings = inOrder(file.check.findings).filter(
    (finding) => !isBrief || isFault(finding),
  );
  const said = findings.map(
    (finding) => `${findingText(finding, file, page)}\n\n`,
  );
  if (isBrief)
    return {
      text: said.join(""),
      waits: findings.some(({ level }) => level === "error")
        ? waitsOf(file)
        : undefined,
    };
  const table = resultsTable(file.check.results, columns, page.paint);
  if (0 < table.length)
    said.push(
      `${page.paint.bold(shown(file.name))}: results\n${table.join("\n")}\n\n`,
    );
  return { text: said.join(""), waits: waitsOf(file) };
}

export function textReport(
  io: Io,
  { isBrief, columns, hasColours }: TextForm,
): Report {
  const paint = picocolors.createColors(hasColours);
  const next = createNextSteps();
  return {
    add({ text, waits }) {
      io.stdout.write(text);
      if (waits !== undefined) next.add(waits);
    },
    async end(outcome) {
      const { errors, warnings } = outcome.summary;
      if (isBrief && errors + warnings === 0) return;
      io.stdout.write(`${summaryText(outcome.summary, paint)}\n`);
      for (const line of next.lines(outcome))
        io.stdout.write(`${wrapIndented(line, columns, "", "  ")}\n`);
      await io.stdout.drained();
    },
  };
}

function isFault({ level, accepted }: Finding): boolean {
  return accepted === null && (level === "error" || level === "warning");
}

interface Page {
  readonly cwd: string;
  readonly columns: number;
  readonly paint: Paint;
}

function findingText(finding: Finding, file: CheckedFile, page: Page): string {
  const { paint, columns } = page;
  const level = levelOf(finding);
  const accepted =
    finding.accepted === null
      ? ""
      : ` (accepted by concession ${shown(finding.accepted)})`;
  const head = `${whereText(finding.place, page)} ${painted(level, paint)(level)} ${paint.bold(shown(finding.code))}${accepted}`;
  const related = finding.related.map(({ place, message }) =>
    wrapIndented(
      `${whereText(place, page)} ${shown(message)}`,
      columns,
      "  ",
      "    ",
    ),
  );
  return [
    head,
    wrapIndented(shown(finding.message), columns, "  "),
    ...source(finding, file, page),
    ...related,
  ].join("\n");
}

/** The line that a finding stands on, under its number, with its span marked. */
function source(
  finding: Finding,
  file: CheckedFile,
  { columns, paint }: Page,
): readonly string[] {
  const { place } = finding;
  const line =
    place.file === file.path ? file.lineTexts[place.line] : undefined;
  if (line === undefined) return [];
  const number = String(place.line + 1);
  const blank = " ".repeat(number.length);
  const { text, underline } = excerptOf(
    line,
    place.start,
    place.end,
    columns - number.length - 5,
  );
  return [
    `  ${paint.dim(`${number} |`)} ${text}`.trimEnd(),
    `  ${paint.dim(`${blank} |`)} ${leftOf(underline)}${painted(levelOf(finding), paint)(underline.trimStart())}`,
  ];
}

function leftOf(underline: string): string {
  return " ".repeat(underline.length - underline.trimStart().length);
}

function whereText(place: Place, { cwd, paint }: Page): string {
  return paint.cyan(
    `${shown(nameFrom(cwd, place.file))}:${place.line + 1}:${place.start + 1}`,
  );
}

function painted(level: Level, paint: Paint): (text: string) => string {
  switch (level) {
    case "error":
      return (text) => paint.bold(paint.red(text));
    case "warning":
      return paint.yellow;
    case "information":
      return paint.blue;
    case "hint":
      return paint.dim;
  }
}

function summaryText(summary: Summary, paint: Paint): string {
  if (summary.files === 0) return "Nothing was checked.";
  const parts = [
    counted(summary.errors, "error", "errors", painted("error", paint)),
    counted(summary.warnings, "warning", "warnings", painted("warning", paint)),
    counted(
      summary.information,
      "information",
      "information",
      painted("information", paint),
    ),
    counted(summary.hints, "hint", "hints", painted("hint", paint)),
    counted(
      summary.accepted,
      "accepted by a concession",
      "accepted by concessions",
      (text) => text,
    ),
  ].filter((part) => part !== undefined);
  const files = summary.files === 1 ? "1 file" : `${summary.files} files`;
  const found =
    parts.length === 0 ? paint.green("no findings") : parts.join(", ");
  return `${files} checked: ${found}.`;
}

function counted(
  count: number,
  one: string,
  many: string,
  paint: (text: string) => string,
): string | undefined {
  return count === 0 ? undefined : paint(showCount(count, one, many));
}
