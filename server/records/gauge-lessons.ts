// What one gauge shows over another, over the years.
import { learnOverTime, type OverTime } from "../core/learning/drift.ts";
import { meanInterval, type Sample } from "../core/learning/sample.ts";
import { wildAlong } from "../core/learning/wild.ts";
import type { LeftOut } from "./evidence.ts";
import {
  inTime,
  key,
  originOf,
  sorted,
  withoutWild,
  type Origin,
} from "./lesson-groups.ts";
import type { GaugeDatum } from "./pairs.ts";

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

const YEAR = 365.25 * 86_400_000;

/** @param leftOut is added to */
export function gaugeLessons(
  pairs: readonly GaugeDatum[],
  leftOut: LeftOut[],
): readonly GaugeLesson[] {
  return sorted(pairs, ({ gauge, against, crib }) =>
    key(gauge, against, crib),
  ).flatMap((unordered) => {
    const whole = inTime(unordered);
    const years = (date: string): number =>
      (Date.parse(date) - Date.parse(whole[0]?.date ?? date)) / YEAR;
    const group = withoutWild(
      whole,
      wildAlong(
        whole.map(({ date, difference, step }) => ({
          x: years(date),
          value: difference,
          step,
        })),
      ),
      leftOut,
      ({ gauge: subject, file, entry }) => ({
        about: "gauge",
        subject,
        file,
        entry,
      }),
    );
    const [one] = group;
    const last = group.at(-1);
    if (one === undefined || last === undefined) return [];
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
function isOff(sample: Sample): boolean {
  const sure = meanInterval(sample, 0.99);
  return sure.valid && (0 < sure.value.low || sure.value.high < 0);
}
