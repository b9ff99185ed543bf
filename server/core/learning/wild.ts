// Values that stand so far from the others of their kind that they are no part of what is learned: a misread digit, a wrong size typed in.
// Which values are of one kind is the caller's.
import { studentQuantile } from "../quantity/student.ts";
import { grubbsTest } from "../readings/stray.ts";
import { fitLine, heightAt, type LinePoint } from "./line-fit.ts";

/** The share of clean series in which one is found all the same. */
export const FALSE_WILD = 0.01;
/** Fewer say nothing of one of them. */
const LEAST_FOR_WILD = 6;
/** No more of a series than this are wild: where more seem so, it is no series. */
const MOST_WILD = 0.1;

export interface Stepped {
  readonly value: number;
  /** How the readings round: one within this of another is not wild, however well the rest agree. */
  readonly step: number;
}

export interface SteppedPoint extends Stepped {
  readonly x: number;
}

/**
 * The indexes of wild values, the farthest first, by the generalized extreme Studentized deviate test: Grubbs' statistic of all, of all but
 * the farthest, and so on to a tenth of them, one at least; wild are as many as the last statistic past its critical value says, so that two
 * that stand together do not hide each other. Range: 6 to 10,000 values that scatter normally; of others none is wild. Rosner asks for 25
 * for the stated level, and found it near from 15 on; under 20 one alone is looked for, and then it is Grubbs' own, exact.
 * Source: B. Rosner, Technometrics 25 (1983) 165, as NIST Dataplot's page on the test restates it; critical values as stray.ts. How many are
 * looked for, the least count and the step are this tool's own.
 */
export function wildAmong(
  values: readonly Stepped[],
  alpha = FALSE_WILD,
): readonly number[] {
  return farOff(values, (left) => {
    const test = grubbsTest(
      left.map(({ value }) => value),
      alpha,
    );
    if (!test.valid) return undefined;
    const { index, stray } = test.value;
    const farthest = left[index];
    const isApart = left.every(
      ({ value }, at) =>
        at === index ||
        farthest === undefined ||
        farthest.step < Math.abs(value - farthest.value),
    );
    return { index, isWild: stray && isApart };
  });
}

/**
 * The same of points that may lie on a slope, as what wears or drifts: the statistic is the largest residual about the least-squares line of
 * all, each in standard deviations of itself, s·√(1 − h). It is past its critical value where the point lies off the line of the others by
 * more than Student's t for n − 3 degrees of freedom at α/(2n): r² = (n−2)·t²/(n−3+t²). Where all points are at one x none is wild.
 * Source: the deletion residual with Bonferroni's bound (from memory), which of a mean in place of a line is Grubbs' test.
 */
export function wildAlong(points: readonly SteppedPoint[]): readonly number[] {
  return farOff(points, farthestOffLine);
}

interface Farthest {
  /** Place in the list that was given. */
  readonly index: number;
  readonly isWild: boolean;
}

/** Takes the farthest out, again and again; wild are those up to the last that was by itself. */
function farOff<T extends Stepped>(
  values: readonly T[],
  farthestOf: (left: readonly T[]) => Farthest | undefined,
): readonly number[] {
  if (values.length < LEAST_FOR_WILD) return [];
  const left = values.map((each, index) => ({ ...each, index }));
  const taken: number[] = [];
  let wild = 0;
  const most = Math.max(1, Math.floor(values.length * MOST_WILD));
  while (taken.length < most) {
    const found = farthestOf(left);
    const [farthest] = found === undefined ? [] : left.splice(found.index, 1);
    if (found === undefined || farthest === undefined) break;
    taken.push(farthest.index);
    if (found.isWild) wild = taken.length;
  }
  return taken.slice(0, wild);
}

function farthestOffLine(
  points: readonly SteppedPoint[],
): Farthest | undefined {
  const count = points.length;
  const line = fitLine(
    points.map(({ x, value }): LinePoint => ({ x, y: value })),
  );
  const factor = studentQuantile(1 - FALSE_WILD / (2 * count), count - 3);
  if (!line.valid || !factor.valid) return undefined;
  const squared = factor.value ** 2;
  const critical = Math.sqrt(((count - 2) * squared) / (count - 3 + squared));
  let index = 0;
  let statistic = 0;
  let isApart = false;
  for (const [at, { x, value, step }] of points.entries()) {
    const { value: height, worth } = heightAt(line.value, x);
    const leverage = 1 / worth;
    const off = Math.abs(value - height);
    const inDeviations = off / (line.value.spread * Math.sqrt(1 - leverage));
    if (!(statistic < inDeviations)) continue;
    index = at;
    statistic = inDeviations;
    // from the line of all others it is farther off than from that of all
    isApart = step < off / (1 - leverage);
  }
  return { index, isWild: critical < statistic && isApart };
}
