// A comparison for a person at a terminal: each record with what changed, entry by entry, and the count.
import type { Change, Tendency } from "../compare/changes.ts";
import {
  changeWords,
  findingWords,
  onceEach,
  stateWords,
  summaryWords,
  tailOf,
  whatOf,
  type ComparedRecord,
} from "../compare/wording.ts";
import { groupedBy } from "../model/groups.ts";
import { columnsOf, paintFor, type Io, type Paint } from "./io.ts";
import { padded, shown, widthOf, wrap, wrapIndented } from "./terminal-text.ts";

/** @param between "HEAD and the files as they are" */
export function comparisonText(
  between: string,
  compared: number,
  records: readonly ComparedRecord[],
  io: Io,
): string {
  const paint = paintFor(io.stdout, io.env);
  const columns = columnsOf(io.stdout);
  return [
    `${shown(between)}\n`,
    ...records.map((record) => `${recordText(record, columns, paint)}\n`),
    `${summaryWords(compared, records)}\n`,
  ].join("\n");
}

function recordText(
  record: ComparedRecord,
  columns: number,
  paint: Paint,
): string {
  const { name, changes } = record;
  const head = `${paint.bold(shown(name))}${stateWords(record, shown)}`;
  const entries = groupedBy(changes.changes, ({ entry }) => entry);
  return [
    head,
    ...[...entries].flatMap(([entry, list]) =>
      entryText(entry, list, columns, paint),
    ),
    ...onceEach(
      changes.come.map(
        (finding) =>
          `${painted(finding.tendency, paint)(shown(findingWords(finding, true)))}: ${shown(finding.message)}`,
      ),
    ).map((line) => wrapIndented(line, columns, "  ", "    ")),
    ...onceEach(
      changes.gone.map(
        (finding) => `  ${paint.dim(shown(findingWords(finding, false)))}`,
      ),
    ),
  ].join("\n");
}

/** Columns that the states of a change have at least, however long its label is. */
const LEAST_ROOM = 30;

function entryText(
  entry: string,
  list: readonly Change[],
  columns: number,
  paint: Paint,
): readonly string[] {
  const whole = list.find(({ what }) => what === "entry");
  const note = whole === undefined ? "" : `  ${changeWords(whole).after}`;
  const rest = list.filter(({ what }) => what !== "entry");
  const width = Math.max(0, ...rest.map((each) => widthOf(whatOf(each))));
  return [
    `  ${paint.bold(shown(entry))}${note}`,
    ...rest.map((change) => {
      const { before, after } = changeWords(change);
      // of a new entry there is nothing to tell apart
      const states =
        whole === undefined
          ? `${shown(before)} → ${shown(after)}`
          : shown(after);
      const tail = tailOf(change).join(", ");
      const text = tail === "" ? states : `${states} (${shown(tail)})`;
      const label = `    ${padded(shown(whatOf(change)), width)}  `;
      const below = " ".repeat(widthOf(label));
      const [first = "", ...others] = wrap(
        text,
        Math.max(columns - widthOf(label), LEAST_ROOM),
      );
      const paintTail = painted(change.tendency, paint);
      return [
        label + paintTail(first),
        ...others.map((line) => below + paintTail(line)),
      ].join("\n");
    }),
  ];
}

function painted(tendency: Tendency, paint: Paint): (text: string) => string {
  switch (tendency) {
    case "worse":
      return paint.red;
    case "better":
      return paint.green;
    case "neither":
      return (text) => text;
  }
}
