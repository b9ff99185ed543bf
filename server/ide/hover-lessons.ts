// What the lessons that a record uses say of a reamer or a gauge, beside what the crib says of it.
import { meanInterval } from "../core/learning/sample.ts";
import { showLength, showRange, type System } from "../core/quantity/show.ts";
import {
  lessonsOfGauge,
  lessonsOfReamer,
  type GaugeLesson,
} from "../model/evaluate/lessons.ts";
import {
  learnedLengthWords,
  oversizeOf,
  reamerLessonWords,
} from "../model/evaluate/oversize.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { Shop } from "../model/shop.ts";
import { escaped, list } from "../markup/markdown.ts";

/** What a reamer was learned to cut over its size, and whether that counts. */
export function lessonsOnReamer(shop: Shop, ref: string): string {
  const { system } = settings(shop);
  const lessons = lessonsOfReamer(shop, ref);
  if (!lessons.known || lessons.value.length === 0) return "";
  const lines = lessons.value.map((lesson) => {
    const found = oversizeOf(shop, ref, lesson.material);
    const kind = found.known ? found.value.oversize.kind : undefined;
    const unused =
      kind === "written"
        ? "; not used, since the crib writes an oversize"
        : kind === "assumed-zero"
          ? "; not used"
          : "";
    return escaped(`${reamerLessonWords(lesson, system)}${unused}`);
  });
  return `Learned oversize:\n\n${list(lines)}`;
}

/** What a gauge was learned to show over another. It is never added to a reading. */
export function lessonsOnGauge(shop: Shop, ref: string): string {
  const { system } = settings(shop);
  const lessons = lessonsOfGauge(shop, ref);
  if (!lessons.known || lessons.value.length === 0) return "";
  const lines = lessons.value.map((lesson) =>
    escaped(gaugeWords(lesson, system)),
  );
  return `Learned, and not added to any reading:\n\n${list(lines)}`;
}

function gaugeWords(
  { ref, gauge, against, learned, days }: GaugeLesson,
  system: System,
): string {
  const { mean, spread, count, step } = learned;
  const way =
    mean < 0
      ? `${gauge} reads under ${against}`
      : `${gauge} reads over ${against}`;
  const size = learnedLengthWords(
    { ...learned, mean: Math.abs(mean) },
    system,
    "day",
  );
  const until = days === undefined ? "" : `, ${days.first} to ${days.last}`;
  return `${way}: ${size}${until}${sureWords()} (${ref})`;

  function sureWords(): string {
    const [shown, tested] = [0.95, 0.99].map((coverage) =>
      meanInterval({ mean, spread, count }, coverage),
    );
    if (shown?.valid !== true || tested?.valid !== true) return "";
    const isOff = 0 < tested.value.low || tested.value.high < 0;
    return isOff
      ? `; difference ${showRange(shown.value.low, shown.value.high, system, step)} (95 % of the mean)`
      : `; within what chance explains (99 %), up to ${showLength(Math.max(-tested.value.low, tested.value.high), system, step)} either way`;
  }
}
