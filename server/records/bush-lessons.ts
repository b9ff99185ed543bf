// How far the bushes of each size and material close, and which lots close unlike the others.
import { oddGroups } from "../core/learning/odd-groups.ts";
import {
  meanInterval,
  sampleOf,
  type Sample,
} from "../core/learning/sample.ts";
import { FALSE_WILD, wildAmong } from "../core/learning/wild.ts";
import type { Band } from "../core/quantity/band.ts";
import { ONE_SIZE } from "../model/evaluate/lessons.ts";
import { groupedBy } from "../model/groups.ts";
import type { ClosureDatum } from "./closures.ts";
import type { LeftOut } from "./evidence.ts";
import {
  inTime,
  key,
  originOf,
  sorted,
  withoutWild,
  type Origin,
} from "./lesson-groups.ts";

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
  readonly interval: Band | undefined;
}

/** @param leftOut is added to */
export function bushLessons(
  closures: readonly ClosureDatum[],
  leftOut: LeftOut[],
): readonly BushLesson[] {
  return sorted(closures, ({ material, construction, crib }) =>
    key(material, construction, crib),
  ).flatMap((kind) =>
    bySize(kind, ({ od }) => od)
      .flatMap((near) => bySize(near, ({ id }) => id))
      .flatMap((bushes) => lessonsOfSize(bushes, leftOut)),
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

function lessonsOfSize(
  bushes: readonly ClosureDatum[],
  leftOut: LeftOut[],
): readonly BushLesson[] {
  const all = [...groupedBy(bushes, ({ lot }) => lot ?? "")].sort(([a], [b]) =>
    a < b ? -1 : 1,
  );
  // each lot by itself, or one that is odd would have wild bushes alone
  const lots = all.map(([lot, whole]): readonly [string, typeof whole] => [
    lot,
    withoutWild(
      whole,
      wildAmong(
        whole.map(({ ratio, step }) => ({ value: ratio, step })),
        FALSE_WILD / all.length,
      ),
      leftOut,
      ({ bush: subject, file, bore: entry }) => ({
        about: "bush",
        subject,
        file,
        entry,
      }),
    ),
  ]);
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
