// What the evidence of many records comes to: a lesson of each reamer in each material, of each size of bush, of each pair of gauges. How
// they are written is learned-crib.ts's.
import { learnOverTime, type OverTime } from "../core/learning/drift.ts";
import { oddGroups } from "../core/learning/odd-groups.ts";
import {
  meanInterval,
  sampleOf,
  type Interval,
  type Sample,
} from "../core/learning/sample.ts";
import type { System } from "../core/quantity/show.ts";
import { ONE_SIZE } from "../model/evaluate/lessons.ts";
import { groupedBy } from "../model/groups.ts";
import type { OpenFile } from "../model/project.ts";
import { closuresIn, type ClosureDatum } from "./closures.ts";
import { cutsIn, type Cut } from "./cuts.ts";
import type { LeftOut } from "./evidence.ts";
import { pairsIn, type GaugeDatum } from "./pairs.ts";

/** Where a lesson comes from. */
export interface Origin {
  readonly records: number;
  /** ISO 8601 */
  readonly first: string;
  readonly last: string;
  /** The system of the last record, for display. */
  readonly system: System;
}

export interface ReamerLesson extends Origin {
  readonly reamer: string;
  readonly crib: string;
  readonly material: string;
  /** Over the number of its cuts. */
  readonly learned: OverTime;
  readonly cuts: number;
  /** How many of them a signed concession covers. */
  readonly conceded: number;
}

export interface BushLesson extends Origin {
  readonly material: string;
  readonly crib: string;
  readonly construction: ClosureDatum["construction"];
  /** Means of the group, m. */
  readonly od: number;
  readonly id: number;
  /** Of one lot that closes unlike the others of its kind; undefined of all others. */
  readonly lot: string | undefined;
  readonly sample: Sample;
  readonly interval: Interval | undefined;
}

export interface GaugeLesson extends Origin {
  readonly gauge: string;
  readonly against: string;
  readonly crib: string;
  readonly isTied: boolean;
  /** Over the years since the first. */
  readonly learned: OverTime;
  readonly times: number;
  /** The 99 % interval of what it shows over the other leaves nothing out: of 100 pairs that agree, one is said to be off. */
  readonly isOff: boolean;
}

export interface Lessons {
  readonly records: number;
  readonly reamers: readonly ReamerLesson[];
  readonly bushes: readonly BushLesson[];
  readonly gauges: readonly GaugeLesson[];
  readonly leftOut: readonly LeftOut[];
}

/** What one record gives; small, so that the record itself can be let go. */
export interface RecordEvidence {
  readonly cuts: readonly Cut[];
  readonly closures: readonly ClosureDatum[];
  readonly pairs: readonly GaugeDatum[];
  readonly leftOut: readonly LeftOut[];
}

export function evidenceIn(open: OpenFile): RecordEvidence {
  const cuts = cutsIn(open);
  const closures = closuresIn(open);
  const pairs = pairsIn(open);
  return {
    cuts,
    closures: closures.data,
    pairs: pairs.data,
    leftOut: [
      ...cuts.flatMap(({ reamer, file, bore, why }): readonly LeftOut[] =>
        why === undefined
          ? []
          : [{ about: "reamer", subject: reamer, file, entry: bore, why }],
      ),
      ...closures.leftOut,
      ...pairs.leftOut,
    ],
  };
}

export function lessonsOf(all: readonly RecordEvidence[]): Lessons {
  return {
    records: all.length,
    reamers: reamerLessons(all.flatMap(({ cuts }) => cuts)),
    bushes: bushLessons(all.flatMap(({ closures }) => closures)),
    gauges: gaugeLessons(all.flatMap(({ pairs }) => pairs)),
    leftOut: all.flatMap(({ leftOut }) => leftOut),
  };
}

function key(...parts: readonly string[]): string {
  return JSON.stringify(parts);
}

/** Groups in the order of their keys, so that the order of files changes nothing. */
function sorted<T>(
  items: readonly T[],
  keyOf: (item: T) => string,
): readonly (readonly T[])[] {
  return [...groupedBy(items, keyOf)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, group]) => group);
}

interface Dated {
  readonly file: string;
  readonly date: string;
  readonly system: System;
}

function inTime<T extends Dated>(items: readonly T[]): readonly T[] {
  return [...items].sort((a, b) =>
    a.date === b.date
      ? a.file < b.file
        ? -1
        : a.file === b.file
          ? 0
          : 1
      : a.date < b.date
        ? -1
        : 1,
  );
}

/** @param items in the order of time, not empty */
function originOf(items: readonly Dated[]): Origin {
  return {
    records: new Set(items.map(({ file }) => file)).size,
    first: items[0]?.date ?? "",
    last: items.at(-1)?.date ?? "",
    system: items.at(-1)?.system ?? "mm",
  };
}

function reamerLessons(cuts: readonly Cut[]): readonly ReamerLesson[] {
  return sorted(cuts, ({ crib, reamer }) => key(reamer, crib)).flatMap(
    (ofReamer) => {
      // every cut wears it, learned from or not
      const numbered = inTime(
        [...ofReamer].sort((a, b) => a.order - b.order),
      ).map((cut, number) => ({ ...cut, number }));
      const learned = numbered.flatMap(({ learned: found, ...cut }) =>
        found === undefined ? [] : [{ ...cut, ...found }],
      );
      return sorted(learned, ({ material }) => material).flatMap((group) => {
        const found = learnOverTime(
          group.map(({ number, oversize }) => ({ x: number, y: oversize })),
          numbered.length,
        );
        const [one] = group;
        if (!found.valid || one === undefined) return [];
        return [
          {
            reamer: one.reamer,
            crib: one.crib,
            material: one.material,
            learned: found.value,
            cuts: group.length,
            conceded: group.filter(({ conceded }) => conceded).length,
            ...originOf(group),
          },
        ];
      });
    },
  );
}

function bushLessons(closures: readonly ClosureDatum[]): readonly BushLesson[] {
  return sorted(closures, ({ material, construction, crib }) =>
    key(material, construction, crib),
  ).flatMap((kind) =>
    bySize(kind, ({ od }) => od)
      .flatMap((near) => bySize(near, ({ id }) => id))
      .flatMap(lessonsOfSize),
  );
}

function bySize(
  items: readonly ClosureDatum[],
  sizeOf: (item: ClosureDatum) => number,
): readonly (readonly ClosureDatum[])[] {
  const groups: ClosureDatum[][] = [];
  for (const item of [...items].sort((a, b) => sizeOf(a) - sizeOf(b))) {
    const group = groups.at(-1);
    const smallest = group?.[0];
    if (
      group === undefined ||
      smallest === undefined ||
      sizeOf(smallest) * (1 + ONE_SIZE) < sizeOf(item)
    )
      groups.push([item]);
    else group.push(item);
  }
  return groups;
}

function lessonsOfSize(bushes: readonly ClosureDatum[]): readonly BushLesson[] {
  const lots = [...groupedBy(bushes, ({ lot }) => lot ?? "")].sort(
    ([a], [b]) => (a < b ? -1 : 1),
  );
  const odd = oddGroups(
    lots.map(([, group]) => group.map(({ ratio }) => ratio)),
  ).filter((index) => lots[index]?.[0] !== "");
  const rest = lots.flatMap(([, group], index) =>
    odd.includes(index) ? [] : group,
  );
  return [
    ...bushLesson(rest, undefined),
    ...odd.flatMap((index) => {
      const [lot, group] = lots[index] ?? [];
      return group === undefined ? [] : bushLesson(group, lot);
    }),
  ];
}

function bushLesson(
  group: readonly ClosureDatum[],
  lot: string | undefined,
): readonly BushLesson[] {
  const found = sampleOf(group.map(({ ratio }) => ratio));
  const [one] = group;
  if (!found.valid || one === undefined) return [];
  const interval = meanInterval(found.value, 0.95);
  const middle = (of: (item: ClosureDatum) => number): number =>
    group.reduce((sum, item) => sum + of(item), 0) / group.length;
  return [
    {
      material: one.material,
      crib: one.crib,
      construction: one.construction,
      od: middle(({ od }) => od),
      id: middle(({ id }) => id),
      lot,
      sample: found.value,
      interval: interval.valid ? interval.value : undefined,
      ...originOf(inTime(group)),
    },
  ];
}

const YEAR = 365.25 * 86_400_000;

function gaugeLessons(pairs: readonly GaugeDatum[]): readonly GaugeLesson[] {
  return sorted(pairs, ({ gauge, against, crib }) =>
    key(gauge, against, crib),
  ).flatMap((unordered) => {
    const group = inTime(unordered);
    const [one] = group;
    const last = group.at(-1);
    if (one === undefined || last === undefined) return [];
    const years = (date: string): number =>
      (Date.parse(date) - Date.parse(one.date)) / YEAR;
    const found = learnOverTime(
      group.map(({ date, difference }) => ({ x: years(date), y: difference })),
      years(last.date),
    );
    if (!found.valid) return [];
    return [
      {
        gauge: one.gauge,
        against: one.against,
        crib: one.crib,
        isTied: one.isTied,
        learned: found.value,
        times: group.length,
        isOff: isOff(found.value.sample),
        ...originOf(group),
      },
    ];
  });
}

/** The mean is not zero at a level of 1 %. */
export function isOff(sample: Sample): boolean {
  const sure = meanInterval(sample, 0.99);
  return sure.valid && (0 < sure.value.low || sure.value.high < 0);
}
