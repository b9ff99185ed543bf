// Lessons for a person at a terminal: what each reamer cuts, each size of bush closes, each pair of gauges differs by, and what was left out.
import { showCount, showLength } from "../core/quantity/show.ts";
import { groupedBy } from "../model/groups.ts";
import { nameOf } from "../model/reference.ts";
import { LEFT_OUT, type LeftOut } from "../records/evidence.ts";
import {
  blameWords,
  driftWords,
  gaugeDriftWords,
  intervalWords,
  lotWords,
  originWords,
  shareDigits,
  smallFor,
} from "../records/learned-words.ts";
import type { BushLesson } from "../records/bush-lessons.ts";
import type { GaugeLesson } from "../records/gauge-lessons.ts";
import type { ReamerLesson } from "../records/reamer-lessons.ts";
import type { Lessons } from "../records/lessons.ts";
import { columnsOf, paintFor, type Io, type Paint } from "./io.ts";
import { shown, wrapIndented } from "./terminal-text.ts";

export function lessonsText(lessons: Lessons, io: Io): string {
  const paint = paintFor(io.stdout, io.env);
  const columns = columnsOf(io.stdout);
  const line = (text: string): string =>
    wrapIndented(shown(text), columns, "    ", "    ");
  const group = (
    title: string,
    entries: readonly (readonly [string, readonly string[]])[],
  ): readonly string[] =>
    entries.length === 0
      ? []
      : [
          [
            paint.bold(title),
            ...entries.flatMap(([head, lines]) => [
              wrapIndented(shown(head), columns, "  ", "    "),
              ...lines.map(line),
            ]),
          ].join("\n"),
        ];
  const { reamers, bushes, gauges, leftOut, records } = lessons;
  const nothing = reamers.length + bushes.length + gauges.length === 0;
  return `${[
    ...group("What reamers cut over their size", reamers.map(reamerLines)),
    ...group(
      "What bushes close, as a share of what Lamé's rings foretell",
      bushes.map(bushLines),
    ),
    ...group("What gauges read over each other", gauges.map(gaugeLines)),
    ...leftOutText(leftOut, columns, paint),
    nothing
      ? wrapIndented(nothingText(records), columns, "")
      : `Learned from ${showCount(records, "record")}.`,
  ].join("\n\n")}\n`;
}

function nothingText(records: number): string {
  const said = `Nothing was learned from ${showCount(records, "record")}`;
  return records === 0
    ? `${said}.`
    : `${said}: it takes readings that are signed and dated, of bores that a reamer has cut, of bushes before and after they were pressed in, of one place with two gauges.`;
}

type Lines = readonly [string, readonly string[]];

function reamerLines(lesson: ReamerLesson): Lines {
  const { reamer, material, learned, cuts, conceded, system } = lesson;
  const { digits, unit } = smallFor(system, learned.sample);
  return [
    `${nameOf(reamer)} in ${material}: ${digits(learned.sample.mean)} ${unit}${spreadWords(learned.sample.spread, digits, ` ${unit}`)}, ${showCount(cuts, "cut")} ${originWords(lesson)}`,
    [
      intervalWords(learned.interval, digits, ` ${unit}`),
      driftWords(lesson),
      conceded === 0
        ? undefined
        : `${String(conceded)} of them under a signed concession: they count, as what it cut`,
    ].flatMap((words) => words ?? []),
  ];
}

function bushLines(lesson: BushLesson): Lines {
  const { material, construction, od, id, sample, interval, system, lot } =
    lesson;
  const digits = shareDigits(sample);
  const step = system === "inch" ? 0.0254e-3 : 0.1e-3;
  return [
    `${material} ${construction} ${showLength(od, system, step)} by ${showLength(id, system, step)}${lot === undefined ? "" : ` lot ${lot}`}: ${digits(sample.mean)}${spreadWords(sample.spread, digits, "")}, ${showCount(sample.count, "press", "presses")} ${originWords(lesson)}`,
    [intervalWords(interval, digits, ""), lotWords(lesson)].flatMap(
      (words) => words ?? [],
    ),
  ];
}

function gaugeLines(lesson: GaugeLesson): Lines {
  const { gauge, against, learned, times, system } = lesson;
  const { digits, unit } = smallFor(system, learned.sample);
  return [
    `${nameOf(gauge)} over ${nameOf(against)}: ${digits(learned.sample.mean)} ${unit}${spreadWords(learned.sample.spread, digits, ` ${unit}`)}, ${showCount(times, "day")} ${originWords(lesson)}`,
    [
      intervalWords(learned.interval, digits, ` ${unit}`),
      gaugeDriftWords(lesson),
      blameWords(lesson),
    ].flatMap((words) => words ?? []),
  ];
}

function spreadWords(
  spread: number | undefined,
  digits: (value: number) => string,
  unit: string,
): string {
  return spread === undefined ? "" : `, spread ${digits(spread)}${unit}`;
}

const ABOUT = {
  reamer: ["cut", "cuts"],
  bush: ["press", "presses"],
  gauge: ["pair of readings", "pairs of readings"],
} as const;

function leftOutText(
  leftOut: readonly LeftOut[],
  columns: number,
  paint: Paint,
): readonly string[] {
  if (leftOut.length === 0) return [];
  const groups = [
    ...groupedBy(leftOut, ({ about, why }) => JSON.stringify([about, why])),
  ].sort(([a], [b]) => (a < b ? -1 : 1));
  // findings show what the text lacks; nothing in it shows this one
  const placeOf = ({ entry, file }: LeftOut): string =>
    wrapIndented(shown(`${entry} in ${file}`), columns, "    ", "      ");
  return [
    [
      paint.bold("Left out"),
      ...groups.flatMap(([, group]) => {
        const [first] = group;
        if (first === undefined) return [];
        const [one, many] = ABOUT[first.about];
        return [
          wrapIndented(
            `${String(group.length)} ${group.length === 1 ? one : many}: ${LEFT_OUT[first.why]}`,
            columns,
            "  ",
            "    ",
          ),
          ...(first.why === "wild" ? group.map(placeOf) : []),
        ];
      }),
    ].join("\n"),
  ];
}
