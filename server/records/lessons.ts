// What the evidence of many records comes to: a lesson of each reamer in each material, of each size of bush, of each pair of gauges. How
// they are written is learned-crib.ts's.
import type { OpenFile } from "../model/project.ts";
import { bushLessons, type BushLesson } from "./bush-lessons.ts";
import { closuresIn, type ClosureDatum } from "./closures.ts";
import { cutsIn, type Cut } from "./cuts.ts";
import type { LeftOut } from "./evidence.ts";
import { gaugeLessons, type GaugeLesson } from "./gauge-lessons.ts";
import { pairsIn, type GaugeDatum } from "./pairs.ts";
import { reamerLessons, type ReamerLesson } from "./reamer-lessons.ts";

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
  const wild: LeftOut[] = [];
  return {
    records: all.length,
    reamers: reamerLessons(
      all.flatMap(({ cuts }) => cuts),
      wild,
    ),
    bushes: bushLessons(
      all.flatMap(({ closures }) => closures),
      wild,
    ),
    gauges: gaugeLessons(
      all.flatMap(({ pairs }) => pairs),
      wild,
    ),
    leftOut: [...all.flatMap(({ leftOut }) => leftOut), ...wild],
  };
}
