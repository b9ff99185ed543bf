// Each planted truth of a made-up shop beside the lesson that was learned of it.
import type { Lessons } from "../../server/records/lessons.ts";
import type { JudgedShop } from "./planted.ts";

export interface Held {
  readonly what: string;
  readonly truth: number;
  readonly interval:
    { readonly low: number; readonly high: number } | undefined;
}

/** Every planted truth with the interval that was learned of it. */
export function truthsHeld({
  truths,
  lessons,
  records,
}: JudgedShop): readonly Held[] {
  const reamers = truths.reamers.map((truth): Held => {
    const lesson = lessons.reamers.find(
      ({ reamer, material }) =>
        reamer === `reamer ${truth.reamer}` && material === truth.material,
    );
    const cuts =
      2 *
      records.filter(({ versions }) =>
        versions[0]?.text.includes(`ream with ${truth.reamer}\n`),
      ).length;
    return {
      what: `${truth.reamer} in ${truth.material}`,
      // a reamer that wears is asked for its next cut
      truth: truth.oversize - truth.perCut * cuts,
      interval: lesson?.learned.interval,
    };
  });
  const kinds = truths.closures.filter(
    ({ lot, isOdd }) => isOdd || lot.endsWith("-1"),
  );
  const bushes = kinds.map((truth): Held => {
    const lesson = lessons.bushes.find(
      ({ material, od, lot }) =>
        material === truth.material &&
        Math.abs(od - truth.od) < 0.001 &&
        lot === (truth.isOdd ? truth.lot : undefined),
    );
    return {
      what: `${truth.material} ${truth.lot}`,
      truth: truth.ratio,
      interval: lesson?.interval,
    };
  });
  const gauges = truths.gauges.map((truth): Held => {
    const lesson = gaugeLesson(lessons, truth.gauge);
    const years =
      (Date.parse(lesson?.last ?? "") - Date.UTC(2017, 0, 9)) /
      (365.25 * 86_400_000);
    return {
      what: `${truth.gauge} over ${truth.against}`,
      truth: truth.bias + truth.perYear * years,
      interval: lesson?.learned.interval,
    };
  });
  return [...reamers, ...bushes, ...gauges];
}

export function gaugeLesson(
  lessons: Lessons,
  gauge: string,
): Lessons["gauges"][number] | undefined {
  return lessons.gauges.find((each) => each.gauge === `gauge ${gauge}`);
}
