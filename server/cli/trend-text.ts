// Series of sizes for a person at a terminal: a table of what was read when, how fast it wears, when it is at its limit.
import { showLength } from "../core/quantity/show.ts";
import {
  nothingWords,
  rateWords,
  reachWords,
  surenessWords,
  titleOf,
} from "../records/trend-words.ts";
import type { Along, Run, Series } from "../records/trend.ts";
import { columnsOf, paintFor, type Io } from "./io.ts";
import { padded, shown, wrapIndented } from "./terminal-text.ts";

/** In pieces, a series or a note each. */
export function* trendText(
  series: Iterable<Series>,
  notes: readonly string[],
  along: Along,
  io: Io,
): Iterable<string> {
  const paint = paintFor(io.stdout, io.env);
  const columns = columnsOf(io.stdout);
  const sentence = (text: string): string =>
    wrapIndented(shown(text), columns, "  ", "    ");
  let between = "";
  for (const each of series) {
    const block = [
      paint.bold(wrapIndented(shown(titleOf(each)), columns, "", "    ")),
      ...each.runs.flatMap((run) => [
        ...(run.because === undefined
          ? []
          : [sentence(`Begins anew: ${run.because}.`)]),
        ...rows(each, run),
        ...rateWords(each, run).map(sentence),
      ]),
      ...[reachWords(each)].filter((words) => words !== "").map(sentence),
    ].join("\n");
    yield between + block;
    between = "\n\n";
  }
  if (between === "")
    yield wrapIndented(nothingWords(along), columns, "", "  ");
  for (const note of notes)
    yield `\n\n${wrapIndented(shown(note), columns, "", "  ")}`;
  yield "\n";
}

function rows(series: Series, { points, gauge }: Run): readonly string[] {
  const several = new Set(points.map((point) => point.gauge)).size > 1;
  const cells = points.map((point) => [
    `${point.date}${point.datedBy === "commit" ? "*" : ""}`,
    point.hours === undefined ? "" : `${String(point.hours)} h`,
    showLength(point.value, series.system, point.step),
    surenessWords(point.uncertainty, series.system),
    point.gauge,
    `${point.file}${point.commit === undefined ? "" : ` at ${point.commit}`}`,
    several && point.gauge !== gauge ? "not in the rate" : "",
  ]);
  const widths = [0, 1, 2, 3, 4, 5].map((column) =>
    Math.max(...cells.map((row) => Array.from(row[column] ?? "").length)),
  );
  return cells.map(
    (row) =>
      `  ${row
        .map((cell, column) => padded(shown(cell), widths[column] ?? 0))
        .filter((_, column) => column === 6 || 0 < (widths[column] ?? 0))
        .join("  ")
        .trimEnd()}`,
  );
}
