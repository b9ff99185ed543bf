// What each reamer cuts in each material, over the number of its cuts.
import { learnOverTime, type OverTime } from "../core/learning/drift.ts";
import { wildAlong } from "../core/learning/wild.ts";
import type { Cut } from "./cuts.ts";
import type { LeftOut } from "./evidence.ts";
import {
  inTime,
  key,
  originOf,
  sorted,
  withoutWild,
  type Origin,
} from "./lesson-groups.ts";

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

/** @param leftOut is added to */
export function reamerLessons(
  cuts: readonly Cut[],
  leftOut: LeftOut[],
): readonly ReamerLesson[] {
  return sorted(cuts, ({ crib, reamer }) => key(reamer, crib)).flatMap(
    (ofReamer) => {
      // every cut wears it, learned from or not
      const numbered = inTime(
        [...ofReamer].sort((a, b) => a.order - b.order),
      ).map((cut, number) => ({ ...cut, number }));
      const learned = numbered.flatMap(({ learned: found, ...cut }) =>
        found === undefined ? [] : [{ ...cut, ...found }],
      );
      return sorted(learned, ({ material }) => material).flatMap((whole) => {
        const group = withoutWild(
          whole,
          wildAlong(
            whole.map(({ number, oversize, step }) => ({
              x: number,
              value: oversize,
              step,
            })),
          ),
          leftOut,
          ({ reamer: subject, file, bore: entry }) => ({
            about: "reamer",
            subject,
            file,
            entry,
          }),
        );
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
