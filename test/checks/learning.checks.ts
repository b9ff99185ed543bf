// What is learned from records: the line through points against certified values, the distance of two samples against an independent computation.
import { fitLine } from "../../server/core/learning/line-fit.ts";
import { distance } from "../../server/core/learning/odd-groups.ts";
import { pooledRepeatability } from "../../server/core/readings/statistics.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";

/** NIST StRD Norris, lower difficulty, 36 points: x the standard's ozone, y the customer's. */
const NORRIS = {
  x: [
    ...[0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0],
    ...[558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1],
    ...[995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0],
    ...[11.1, 118.3, 229.2, 669.1, 448.9, 0.5],
  ],
  y: [
    ...[0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9],
    ...[559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3],
    ...[998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9],
    ...[10.2, 117.6, 228.9, 668.4, 449.2, 0.2],
  ],
};
const norris = () =>
  got(fitLine(NORRIS.x.map((x, at) => ({ x, y: NORRIS.y[at] ?? NaN }))));

const strd =
  "NIST/ITL Statistical Reference Datasets, linear regression, Norris, certified values (seen as restated in several open test suites)";

const line = (what: string, ours: () => number, certified: number): Check => ({
  kinds: ["cut-size"],
  what: `${what} of the line through NIST StRD Norris`,
  method: "least squares about the means",
  against: "published",
  source: strd,
  unit: "1",
  ours,
  theirs: () => certified,
  within: { relative: 1e-11 },
});

/** Two lots of ratios of closure, made up. */
const LOTS = [
  [0.97, 1.02, 0.99, 1.01, 0.98],
  [1.21, 1.3, 1.24],
] as const;

/**
 * Student's t of two samples is that of the slope of the line through their values at 0 and at 1. So the same number comes from a
 * regression, by the normal equations in whole hundredths.
 */
function slopeOfLots(): number {
  const points = LOTS.flatMap((lot, x) =>
    lot.map((value) => [x, Math.round(value * 100)] as const),
  );
  const sum = (of: (x: number, y: number) => number): number =>
    points.reduce((total, [x, y]) => total + of(x, y), 0);
  const n = points.length;
  const sx = sum((x) => x);
  const sy = sum((_, y) => y);
  const determinant = n * sum((x) => x * x) - sx * sx;
  const across = n * sum((x, y) => x * y) - sx * sy;
  const slope = across / determinant;
  const rest = (n * sum((_, y) => y * y) - sy * sy - slope * across) / n;
  return slope / Math.sqrt((rest / (n - 2)) * (n / determinant));
}

const checks: readonly Check[] = [
  line("slope", () => norris().slope, 1.00211681802045),
  line(
    "standard deviation of the slope",
    () => norris().slopeDeviation,
    0.429796848199937e-3,
  ),
  line("residual variance", () => norris().spread ** 2, 0.782864662630069),
  line(
    "height at zero",
    () => norris().meanY - norris().slope * norris().meanX,
    -0.262323073774029,
  ),
  {
    kinds: ["bore-closure"],
    what: "Student's t of two lots of bushes",
    method: "difference of the means over the scatter within the lots",
    against: "independent",
    source: "slope of a regression on 0 and 1, by the normal equations",
    unit: "1",
    ours: () =>
      distance(...LOTS, got(pooledRepeatability(LOTS)).standardDeviation) ??
      NaN,
    theirs: slopeOfLots,
    within: { relative: 1e-9 },
  },
];
export default checks;
