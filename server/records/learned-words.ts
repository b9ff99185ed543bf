// Lessons in words and figures, for the terminal and for the comments of the crib file.
import {
  fixed,
  showCount,
  significant,
  type System,
} from "../core/quantity/show.ts";
import type { Sample } from "../core/learning/sample.ts";
import type { Band } from "../core/quantity/band.ts";
import type { BushLesson } from "./bush-lessons.ts";
import type { GaugeLesson } from "./gauge-lessons.ts";
import type { Origin } from "./lesson-groups.ts";
import type { ReamerLesson } from "./reamer-lessons.ts";

/** A small length in thou or µm, with the digits that its spread leaves. */
export interface Small {
  readonly unit: "thou" | "um";
  readonly digits: (metres: number) => string;
}

export function smallFor(system: System, sample: Sample): Small {
  const size = system === "inch" ? 25.4e-6 : 1e-6;
  const decimals = decimalsOf((sample.spread ?? 0) / size);
  return {
    unit: system === "inch" ? "thou" : "um",
    digits: (metres) => plain(fixed(metres / size, decimals)),
  };
}

/** Two digits of a spread. */
function decimalsOf(spread: number): number {
  if (!(0 < spread)) return 2;
  return Math.min(4, Math.max(0, 1 - Math.floor(Math.log10(spread))));
}

export function shareDigits({ spread }: Sample): (share: number) => string {
  const decimals = Math.max(2, decimalsOf(spread ?? 0));
  return (share) => plain(fixed(share, decimals));
}

// the language writes a minus as it is typed
function plain(text: string): string {
  return text.replace("\u{2212}", "-");
}

export function originWords({ records, first, last }: Origin): string {
  return `in ${showCount(records, "record")}, ${first === last ? `on ${first}` : `${first} to ${last}`}`;
}

export function intervalWords(
  interval: Band | undefined,
  digits: (value: number) => string,
  unit: string,
): string {
  return interval === undefined
    ? "a single one has no spread"
    : `the mean lies between ${digits(interval.low)} and ${digits(interval.high)}${unit} (95 %)`;
}

/** "it cuts 0.0081 thou less with each cut (0.0069 to 0.0093, 95 %)" of a reamer that changes. */
export function driftWords(lesson: ReamerLesson): string | undefined {
  const { drift, used, sample } = lesson.learned;
  if (drift === undefined) return undefined;
  const [size, unit] = scale(lesson.system);
  const rate = (metres: number): string =>
    plain(significant(Math.abs(metres) / size, 2));
  const wears = drift.slope < 0;
  const [least, most] = wears
    ? [-drift.interval.high, -drift.interval.low]
    : [drift.interval.low, drift.interval.high];
  return (
    `it ${wears ? "wears: it cuts" : "cuts larger with time:"} ${rate(drift.slope)} ${unit} ${wears ? "less" : "more"} with each cut ` +
    `(${rate(least)} to ${rate(most)}, 95 %); the mean is of its next cut, by the line through its last ${String(used)} cuts, as sure as that of ${String(sample.count)}`
  );
}

/** The same of a pair of gauges. */
export function gaugeDriftWords(lesson: GaugeLesson): string | undefined {
  const { drift, used, sample } = lesson.learned;
  if (drift === undefined) return undefined;
  const [size, unit] = scale(lesson.system);
  const rate = (metres: number): string => plain(significant(metres / size, 2));
  return (
    `one of them drifts: the difference changes by ${rate(drift.slope)} ${unit} a year (${rate(drift.interval.low)} to ${rate(drift.interval.high)}, 95 %); ` +
    `the mean is of the last day, by the line through the last ${String(used)}, as sure as that of ${String(sample.count)}`
  );
}

/** Whose fault it is, as far as that can be said. */
export function blameWords({
  gauge,
  against,
  isTied,
  isOff,
}: GaugeLesson): string {
  if (!isOff) return "they agree within what chance explains (99 %)";
  return isTied
    ? `${against} is set on a ring, so it is ${gauge} that is off`
    : "which of the two is off can't be told from this: read a ring or a gauge block with both";
}

export function lotWords({ lot }: BushLesson): string | undefined {
  return lot === undefined
    ? undefined
    : `lot ${lot} closes unlike the others of its size`;
}

function scale(system: System): readonly [number, "thou" | "um"] {
  return system === "inch" ? [25.4e-6, "thou"] : [1e-6, "um"];
}
