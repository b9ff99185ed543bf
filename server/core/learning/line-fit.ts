// The straight line through points, by least squares, with how sure its slope and its height are. What is made of a slope is drift.ts's.
import { notValid, valid, type Answer } from "../answer.ts";
import { studentCoverage } from "../quantity/student.ts";
import { mean } from "../readings/statistics.ts";
import type { Band } from "../quantity/band.ts";

export interface LinePoint {
  readonly x: number;
  readonly y: number;
}

export interface LineFit {
  readonly slope: number;
  readonly slopeDeviation: number;
  /** Standard deviation of one point about the line, n − 2 degrees of freedom. */
  readonly spread: number;
  readonly degreesOfFreedom: number;
  readonly count: number;
  readonly meanX: number;
  readonly meanY: number;
  /** Sum of squares of x about its mean. */
  readonly squaresX: number;
}

/**
 * Ordinary least squares, y = a + b·x, the errors in y alone. Sums are about the means, so that points which differ only in their last
 * digits lose nothing. Refuses fewer than three points, points that are not finite, and points all at one x.
 * Source: definition; checked against NIST StRD Norris.
 */
export function fitLine(points: readonly LinePoint[]): Answer<LineFit> {
  const count = points.length;
  if (count < 3)
    return notValid("a line with its spread needs three points at least");
  const [middleX, middleY] = [
    mean(points.map(({ x }) => x)),
    mean(points.map(({ y }) => y)),
  ];
  if (!middleX.valid) return middleX;
  if (!middleY.valid) return middleY;
  const [meanX, meanY] = [middleX.value, middleY.value];
  const squaresX = sum(points.map(({ x }) => (x - meanX) ** 2));
  if (!(0 < squaresX)) return notValid("all points are at one place");
  const slope =
    sum(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / squaresX;
  const rest = sum(
    points.map(({ x, y }) => (y - meanY - slope * (x - meanX)) ** 2),
  );
  const spread = Math.sqrt(rest / (count - 2));
  return valid({
    slope,
    slopeDeviation: spread / Math.sqrt(squaresX),
    spread,
    degreesOfFreedom: count - 2,
    count,
    meanX,
    meanY,
    squaresX,
  });
}

/**
 * The interval that holds the true slope in a share `coverage` of samples. Student's t, n − 2 degrees of freedom. Refuses a coverage not
 * between 0 and 1. Source: definition of least squares.
 */
export function slopeInterval(
  { slope, slopeDeviation, degreesOfFreedom }: LineFit,
  coverage: number,
): Answer<Band> {
  const factor = studentCoverage(coverage, degreesOfFreedom);
  if (!factor.valid) return factor;
  const reach = factor.value * slopeDeviation;
  return valid({ low: slope - reach, high: slope + reach });
}

export interface LineHeight {
  readonly value: number;
  /** Standard deviation of that height. */
  readonly deviation: number;
  /** Of how many steady points the mean would be as sure: (spread / deviation)². */
  readonly worth: number;
}

/** The height of the line at a place, outside the points too. Source: definition of least squares. */
export function heightAt(
  { slope, spread, count, meanX, meanY, squaresX }: LineFit,
  x: number,
): LineHeight {
  const share = 1 / count + (x - meanX) ** 2 / squaresX;
  return {
    value: meanY + slope * (x - meanX),
    deviation: spread * Math.sqrt(share),
    worth: 1 / share,
  };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
