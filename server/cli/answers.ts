// The rows of an answer as a person, a program or a spreadsheet reads them. It asks nothing.
import type { Answer, Cell } from "../archive/engine.ts";
import { lengthDigits, significant } from "../core/quantity/show.ts";
import type { Paint } from "./io.ts";
import { jsonText } from "./json-text.ts";
import { padded, shown, widthOf, wrap } from "./terminal-text.ts";

const SCHEMA = 1;

/** The column of a question that says the step of what its lengths were read with, m. */
const STEP = "step_m";

/** A table, its column names over it; lengths (columns that end in `_m`) in mm, with no more digits than the step of their row. */
export function answerText(
  asks: string,
  { columns, rows }: Answer,
  paint: Paint,
  width: number,
): string {
  const head = `${wrap(asks, width).join("\n")}\n\n`;
  if (rows.length === 0) return `${head}Nothing in this archive answers it.\n`;
  const stepAt = columns.indexOf(STEP);
  const cells = rows.map((row) =>
    row.map((cell, index) =>
      cellText(cell, columns[index] ?? "", row[stepAt] ?? null),
    ),
  );
  const titles = columns.map(titleOf);
  const widths = titles.map((title, index) =>
    Math.max(
      widthOf(title),
      ...cells.map((row) => widthOf(row[index]?.text ?? "")),
    ),
  );
  const line = (row: readonly Shown[]): string =>
    row
      .map(({ text, right }, index) => {
        const room = widths[index] ?? 0;
        return right
          ? " ".repeat(Math.max(0, room - widthOf(text))) + text
          : padded(text, room);
      })
      .join("  ")
      .trimEnd();
  const heading = line(
    titles.map((text, index) => ({
      text,
      right: cells.every((row) => row[index]?.right !== false),
    })),
  );
  return `${head}${[paint.bold(heading), ...cells.map(line)].join("\n")}\n`;
}

interface Shown {
  readonly text: string;
  /** Numbers stand to the right. */
  readonly right: boolean;
}

function isLength(column: string): boolean {
  return column.endsWith("_m");
}

function titleOf(column: string): string {
  return isLength(column)
    ? `${column.slice(0, -"_m".length).replaceAll("_", " ")}, mm`
    : column.replaceAll("_", " ");
}

function cellText(cell: Cell, column: string, step: Cell): Shown {
  if (cell === null) return { text: "", right: true };
  if (typeof cell === "boolean")
    return { text: cell ? "yes" : "no", right: false };
  if (typeof cell === "string") return { text: shown(cell), right: false };
  return { text: numberText(cell, column, step), right: true };
}

function numberText(value: number, column: string, step: Cell): string {
  // a step of 0.0001 in is 0.00254 mm
  if (column === STEP)
    return significant(value * 1000, 3).replace(/\.?0+$/, "");
  return isLength(column)
    ? lengthDigits(value, "mm", typeof step === "number" ? step : undefined)
    : String(Number(value.toPrecision(6)));
}

/** `{"schema":1,"question","rows":[{…}]}`, a row a line, its keys the columns in their order. */
export function answerJson(
  question: string,
  { columns, rows }: Answer,
): string {
  const lines = rows.map((row) =>
    jsonText(
      Object.fromEntries(
        columns.map((column, index) => [column, row[index] ?? null]),
      ),
    ),
  );
  return `{"schema":${SCHEMA},"question":${jsonText(question)},"rows":[\n${lines.join(",\n")}\n]}\n`;
}

/** RFC 4180. A spreadsheet takes a text that begins so for a formula: an apostrophe before it makes it text. */
const FORMULA = /^[=+\-@\t\r]/;

/** RFC 4180 with a heading; nulls are empty, controls are written out as everywhere. */
export function answerCsv({ columns, rows }: Answer): string {
  return [columns, ...rows]
    .map((row) => `${row.map(csvCell).join(",")}\r\n`)
    .join("");
}

function csvCell(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell !== "string") return String(cell);
  const text = shown(FORMULA.test(cell) ? `'${cell}` : cell);
  return /[",\r\n']/.test(text) || text !== text.trim()
    ? `"${text.replaceAll('"', '""')}"`
    : text;
}
