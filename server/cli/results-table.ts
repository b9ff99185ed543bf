// Results as a table for a person: what, how much, how sure, and the verdict, under a line for each entry.
import { neededText } from "../model/known.ts";
import { groupedBy, sharingReason } from "../model/groups.ts";
import { statusWord } from "../model/result-kinds.ts";
import type { Result, Verdict } from "../model/result.ts";
import type { Paint } from "./io.ts";
import { padded, shown, widthOf, wrap } from "./terminal-text.ts";

interface Row {
  readonly label: string;
  readonly value: string;
  readonly isKnown: boolean;
  /** How sure it is; "" where it is no figure. */
  readonly status: string;
  readonly verdict: Verdict;
}

const GAP = "  ";
const INDENT = "    ";
/** `predicted`, the longest status; `unsure`, the longest verdict. */
const STATUS_WIDTH = 9;
const VERDICT_WIDTH = 6;
const TAIL_WIDTH = GAP.length + STATUS_WIDTH + GAP.length + VERDICT_WIDTH;
const LEAST_VALUE = 18;
const LEAST_LABEL = 12;
const MOST_LABEL = 34;
const MOST_VALUE = 30;

/** The lines of a table of results, none of them wider than the columns where the words allow. */
export function resultsTable(
  results: readonly Result[],
  columns: number,
  paint: Paint,
): readonly string[] {
  if (results.length === 0) return [];
  const entries = [...groupedBy(results, ({ entry }) => entry)].map(
    ([entry, list]) => [entry, merged(list.map(rowOf))] as const,
  );
  const rows = entries.flatMap(([, list]) => list);
  const label = Math.min(
    MOST_LABEL,
    Math.max(
      ...rows.map((row) => widthOf(row.label)).filter((w) => w <= MOST_LABEL),
      LEAST_LABEL,
    ),
  );
  const room = columns - INDENT.length - label - GAP.length - TAIL_WIDTH;
  const longest = Math.max(
    ...rows.filter((row) => row.isKnown).map((row) => widthOf(row.value)),
    LEAST_VALUE,
  );
  const value = Math.min(room, longest, MOST_VALUE);
  const widths = LEAST_VALUE <= value ? { label, value, columns } : undefined;
  return entries.flatMap(([entry, list]) => [
    `  ${paint.bold(shown(entry))}`,
    ...list.flatMap((row) =>
      widths === undefined
        ? stacked(row, columns, paint)
        : inColumns(row, widths, paint),
    ),
  ]);
}

/** Results that are unknown for one and the same reason share a row. */
function merged(rows: readonly Row[]): readonly Row[] {
  return sharingReason(rows, ({ isKnown, value }) =>
    isKnown ? undefined : value,
  ).flatMap((group) => {
    const [row] = group;
    return row === undefined
      ? []
      : [{ ...row, label: group.map(({ label }) => label).join(", ") }];
  });
}

function rowOf(result: Result): Row {
  const which = [
    result.of,
    result.case === null ? null : `case ${result.case}`,
  ].filter((part) => part !== null);
  return {
    label: shown([result.kind, ...which].join(" ")),
    value: shown(result.text === "" ? neededText(result.needs) : result.text),
    isKnown: result.status !== "unknown",
    status: statusWord(result),
    verdict: result.verdict,
  };
}

function inColumns(
  row: Row,
  widths: {
    readonly label: number;
    readonly value: number;
    readonly columns: number;
  },
  paint: Paint,
): readonly string[] {
  // what is unknown has no verdict, so its reason may run on over the columns that the verdict leaves free
  const unknown = !row.isKnown;
  const free = widths.columns - INDENT.length - widths.label - GAP.length;
  const values = wrap(
    row.value,
    unknown ? free - GAP.length - "unknown".length : widths.value,
  );
  const tall = widths.label < widthOf(row.label);
  const label = tall
    ? wrap(row.label, widths.columns - INDENT.length).map(
        (line) => INDENT + line,
      )
    : [];
  const below = INDENT + " ".repeat(widths.label) + GAP;
  const first = tall ? below : INDENT + padded(row.label, widths.label) + GAP;
  const start = unknown
    ? first + paint.dim("unknown") + GAP + (values[0] ?? "")
    : first + padded(values[0] ?? "", widths.value) + GAP + tailOf(row, paint);
  const hang = unknown ? below + " ".repeat("unknown".length) + GAP : below;
  return [
    ...label,
    start.trimEnd(),
    ...values.slice(1).map((line) => hang + line),
  ];
}

function stacked(row: Row, columns: number, paint: Paint): readonly string[] {
  return [
    INDENT + row.label,
    ...wrap(row.value, columns - INDENT.length - 2).map(
      (line) => `${INDENT}  ${line}`,
    ),
    `${INDENT}  ${tailOf(row, paint)}`.trimEnd(),
  ];
}

function tailOf(row: Row, paint: Paint): string {
  const status = paint.dim(row.status);
  if (row.verdict === "none") return status;
  const gap = " ".repeat(STATUS_WIDTH - row.status.length) + GAP;
  return status + gap + verdictOf(row.verdict, paint);
}

function verdictOf(verdict: Verdict, paint: Paint): string {
  switch (verdict) {
    case "in":
      return paint.green("in");
    case "out":
      return paint.red("out");
    case "unsure":
      return paint.yellow("unsure");
    case "none":
      return "";
  }
}
