// Lamé's closure as the shop's own bushes correct it: the share that they closed, with the spread of the next one.
import { nextInterval } from "../../core/learning/sample.ts";
import type { Band } from "../../core/quantity/band.ts";
import { fixed } from "../../core/quantity/show.ts";
import type { Working } from "../result.ts";
import type { BushLesson } from "./lessons.ts";

export interface LearnedClosure {
  readonly perUnit: Band;
  /** The lesson counts. */
  readonly isUsed: boolean;
  readonly working: readonly Working[];
}

/**
 * The closure per unit of effective interference, by Lamé, times the share that was learned: its 95 % interval for the next single bush
 * (Student's t). A lesson of a single bush has no spread, and one whose interval reaches to nothing says too little: neither counts, and the
 * working says so. Range: bosses that are plain rings, in the elastic range.
 */
export function learnedClosure(
  lame: Band,
  lesson: BushLesson | undefined,
): LearnedClosure {
  if (lesson === undefined)
    return { perUnit: lame, isUsed: false, working: [] };
  const { ref, learned } = lesson;
  const { mean, spread, count } = learned;
  const source = ref;
  const unused = (because: string): LearnedClosure => ({
    perUnit: lame,
    isUsed: false,
    working: [
      {
        formula: "C as by Lamé",
        with: `${ref} is not used: ${because}`,
        source,
      },
    ],
  });
  const next = nextInterval({ mean, spread, count }, 0.95);
  if (spread === undefined || !next.valid)
    return unused("it is of a single bush, which has no spread");
  const { low, high } = next.value;
  if (low <= 0)
    return unused(
      `of ${String(count)} bushes with spread ${fixed(spread, 3)} the next may close by any share`,
    );
  const perUnit = { low: lame.low * low, high: lame.high * high };
  return {
    perUnit,
    isUsed: true,
    working: [
      {
        formula:
          "C as learned = C · (mean ± t·s·√(1 + 1/n)), the next bush at 95 %",
        with: `mean ${fixed(mean, 3)}, spread ${fixed(spread, 3)}, of ${String(count)} bushes: ${fixed(low, 3)} to ${fixed(high, 3)}, C = ${showShare(perUnit)}`,
        source,
      },
    ],
  };
}

export function showShare({ low, high }: Band): string {
  return low === high ? fixed(low, 3) : `${fixed(low, 3)} to ${fixed(high, 3)}`;
}
