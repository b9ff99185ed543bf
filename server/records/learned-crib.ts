// Lessons as a crib file: entries that a record can use, with comments that say where each number comes from. It is reviewed like any other
// change. It reads and writes no file.
import { nameOutOf } from "../../grammar/names.ts";
import {
  UNIT_OF_SYSTEM,
  lengthDigits,
  showCount,
} from "../core/quantity/show.ts";
import type { Sample } from "../core/learning/sample.ts";
import { nameOf } from "../model/reference.ts";
import type { BushLesson } from "./bush-lessons.ts";
import type { GaugeLesson } from "./gauge-lessons.ts";
import type { Origin } from "./lesson-groups.ts";
import type { ReamerLesson } from "./reamer-lessons.ts";
import type { Lessons } from "./lessons.ts";
import {
  blameWords,
  driftWords,
  gaugeDriftWords,
  intervalWords,
  lotWords,
  originWords,
  shareDigits,
  smallFor,
} from "./learned-words.ts";
import { capitalised } from "../model/sentences.ts";

/** The first line of every file that `thou learn` writes; it writes over no other. */
export const LEARNED_MARK =
  "# Learned from the shop's records by `thou learn`.";

/** Names that two cribs have both, so that one file can't speak of them. */
export function namesInTwoCribs({
  reamers,
  bushes,
  gauges,
}: Lessons): readonly {
  readonly name: string;
  readonly cribs: readonly string[];
}[] {
  const found = new Map<string, Set<string>>();
  const add = (name: string, crib: string): void => {
    found.set(name, (found.get(name) ?? new Set()).add(crib));
  };
  for (const { reamer, crib } of reamers) add(reamer, crib);
  for (const { gauge, crib } of gauges) add(gauge, crib);
  for (const { material, crib } of bushes)
    if (crib !== "") add(`material ${material}`, crib);
  return [...found].flatMap(([name, cribs]) =>
    cribs.size < 2 ? [] : [{ name, cribs: [...cribs].sort() }],
  );
}

/** @param uses the cribs that the lessons speak of, as paths from the file that this text goes to */
export function learnedCrib(lessons: Lessons, uses: readonly string[]): string {
  const { reamers, bushes, gauges, records } = lessons;
  const names = namer();
  const all = [...reamers, ...bushes, ...gauges];
  const isMetric = 0 < all.length && all.every(({ system }) => system === "mm");
  const head = [
    LEARNED_MARK,
    `# From ${showCount(records, "record")}. Review it, and let a job take it: use "learned.thou" beside its crib.`,
    "# What a crib itself says of a reamer goes before what is learned here.",
    "shop learned",
    `  units ${isMetric ? "mm" : "inch"}`,
    ...uses.map((path) => `  use "${path}"`),
  ];
  return [
    head,
    ...reamers.map((lesson) => reamerEntry(lesson, names)),
    ...bushes.map((lesson) => bushEntry(lesson, names)),
    ...gauges.map((lesson) => gaugeEntry(lesson, names)),
  ]
    .map((lines) => `${lines.join("\n")}\n`)
    .join("\n");
}

type Namer = (...words: readonly string[]) => string;

/** A name of letters, digits and hyphens that no other lesson has. */
function namer(): Namer {
  const taken = new Set<string>();
  return (...words) => {
    const plain = nameOutOf(words.join("-"));
    let name = plain;
    for (let next = 2; taken.has(name); next++)
      name = `${plain}-${String(next)}`;
    taken.add(name);
    return name;
  };
}

function reamerEntry(lesson: ReamerLesson, names: Namer): readonly string[] {
  const { reamer, material, learned, cuts, conceded, system } = lesson;
  const { digits, unit } = smallFor(system, learned.sample);
  const name = nameOf(reamer);
  const drift = driftWords(lesson);
  return [
    comment(
      `${showCount(cuts, "cut")} ${originWords(lesson)}; ${intervalWords(learned.interval, digits, ` ${unit}`)}`,
    ),
    ...(drift === undefined ? [] : [comment(drift)]),
    ...(conceded === 0
      ? []
      : [
          comment(
            `${String(conceded)} of them under a signed concession: they count, as what it cut`,
          ),
        ]),
    `lesson ${names(name, "in", material)}`,
    `  reamer ${name} in ${material}`,
    `  oversize mean ${written(learned.sample, digits, ` ${unit}`)}`,
    days(lesson),
  ];
}

function bushEntry(lesson: BushLesson, names: Namer): readonly string[] {
  const { material, construction, od, id, lot, sample, interval, system } =
    lesson;
  const digits = shareDigits(sample);
  const step = system === "inch" ? 0.0254e-3 : 0.1e-3;
  const [outside, inside] = [od, id].map((size) =>
    lengthDigits(size, system, step),
  );
  const unit = UNIT_OF_SYSTEM[system];
  const odd = lotWords(lesson);
  return [
    comment(
      `${showCount(sample.count, "bush", "bushes")} ${originWords(lesson)}; ${intervalWords(interval, digits, "")}`,
    ),
    ...(odd === undefined ? [] : [comment(odd)]),
    `lesson ${names(material, construction, outside ?? "", "by", inside ?? "", ...(lot === undefined ? [] : ["lot", lot]))}`,
    `  bush ${material} ${construction} ${outside ?? ""} ${unit} by ${inside ?? ""} ${unit}${lot === undefined ? "" : ` lot ${/^[^\s"#]+$/u.test(lot) ? lot : `"${lot}"`}`}`,
    `  closes ${written(sample, digits, "")}`,
    days(lesson),
  ];
}

function gaugeEntry(lesson: GaugeLesson, names: Namer): readonly string[] {
  const { learned, times, system } = lesson;
  const { digits, unit } = smallFor(system, learned.sample);
  const [gauge, against] = [lesson.gauge, lesson.against].map(nameOf);
  const drift = gaugeDriftWords(lesson);
  return [
    comment(
      `${showCount(times, "day")} ${originWords(lesson)}; ${intervalWords(learned.interval, digits, ` ${unit}`)}`,
    ),
    ...(drift === undefined ? [] : [comment(drift)]),
    comment(blameWords(lesson)),
    `lesson ${names(gauge ?? "", "against", against ?? "")}`,
    `  gauge ${gauge ?? ""} against ${against ?? ""}`,
    `  reads ${written(learned.sample, digits, ` ${unit}`)}`,
    days(lesson),
  ];
}

function written(
  { mean, spread, count: of }: Sample,
  digits: (value: number) => string,
  unit: string,
): string {
  return `${digits(mean)}${unit}${spread === undefined ? "" : ` spread ${digits(spread)}${unit}`} from ${String(of)}`;
}

function days({ first, last }: Origin): string {
  return `  between ${first} and ${last}`;
}

function comment(words: string): string {
  return `# ${capitalised(words)}.`;
}
