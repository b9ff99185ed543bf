// A second look at server/core/learning and server/core/trend by other ways: least squares in fractions of whole numbers, Student's t by
// quadrature (second/chance.ts). The shares that intervals promise are counted in second-teaching-counted.checks.ts.
import {
  fitLine,
  heightAt,
  slopeInterval,
} from "../../server/core/learning/line-fit.ts";
import { reachOf } from "../../server/core/trend/reaching.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import {
  between,
  evenNumbers,
  halved,
  normalNumbers,
  studentWithin,
} from "./second/chance.ts";

interface Points {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Whole numbers, so that the normal equations have exact answers. */
function wholePoints(index: number): Points {
  const even = evenNumbers(index + 1);
  const count = 3 + Math.floor(between(even, 0, 30));
  // Far from zero and close together: what loses digits.
  const far = index % 2 === 0 ? 0 : 1e9;
  const x = Array.from(
    { length: count },
    (_, i) => 3 * i + Math.floor(3 * even()),
  );
  const y = x.map(
    (one) => far + 7 * one + Math.floor(between(even, -400, 400)),
  );
  return { x, y };
}

/** By Cramer's rule on the normal equations, in whole numbers of any size; divided once, at the end. */
function exactly({ x, y }: Points) {
  const big = (list: readonly number[]) => list.map((one) => BigInt(one));
  const sum = (list: readonly bigint[]) => list.reduce((a, b) => a + b, 0n);
  const [xs, ys] = [big(x), big(y)];
  const n = BigInt(x.length);
  const sx = sum(xs);
  const sy = sum(ys);
  const sxx = sum(xs.map((one) => one * one));
  const sxy = sum(xs.map((one, i) => one * (ys[i] ?? 0n)));
  const syy = sum(ys.map((one) => one * one));
  const det = n * sxx - sx * sx;
  const top = n * sxy - sx * sy;
  // n·Σ(y − ŷ)² = (n·syy − sy²) − top²/det
  const left = (n * syy - sy * sy) * det - top * top;
  const ratio = (a: bigint, b: bigint) => Number((a * 10n ** 30n) / b) / 1e30;
  const variance = ratio(left, n * det * (n - 2n));
  return {
    slope: ratio(top, det),
    spread: Math.sqrt(variance),
    deviation: Math.sqrt(variance * ratio(n, det)),
    heightAtZero: ratio(sy * sxx - sx * sxy, det),
    squares: ratio(det, n),
    meanX: ratio(sx, n),
    meanY: ratio(sy, n),
  };
}

const lineOf = ({ x, y }: Points) =>
  got(fitLine(x.map((one, i) => ({ x: one, y: y[i] ?? NaN }))));

const EXACT =
  "second look: the normal equations in whole numbers of any size, divided once";

const lineChecks = Array.from({ length: 12 }, (_, index) => {
  const points = wholePoints(index);
  const exact = exactly(points);
  const one = (
    what: string,
    ours: () => number,
    theirs: number,
    relative = 1e-12,
  ): Check => ({
    kinds: [],
    what: `${what}, series ${String(index + 1)}`,
    method: "least squares about the means",
    against: "independent",
    source: EXACT,
    unit: "1",
    ours,
    theirs: () => theirs,
    within: { relative },
  });
  return [
    one("slope", () => lineOf(points).slope, exact.slope),
    one("spread", () => lineOf(points).spread, exact.spread, 1e-9),
    one(
      "deviation of the slope",
      () => lineOf(points).slopeDeviation,
      exact.deviation,
      1e-9,
    ),
    one(
      "height at zero",
      () => heightAt(lineOf(points), 0).value,
      exact.heightAtZero,
    ),
    one(
      "end of the slope's interval",
      () => got(slopeInterval(lineOf(points), 0.95)).high,
      exact.slope + studentWithin(0.95, points.x.length - 2) * exact.deviation,
      1e-6,
    ),
  ];
}).flat();

/** Table H.6: thermometer's readings less 20 °C, and their corrections, in K. */
const thermometer: Points = {
  x: [
    1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.01, 6.511,
  ],
  y: [
    -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159,
    -0.161, -0.16,
  ],
};
const gumChecks = (
  [
    ["intercept", () => heightAt(lineOf(thermometer), 0).value, -0.1712, 5e-5],
    [
      "deviation of the intercept",
      () => heightAt(lineOf(thermometer), 0).deviation,
      0.0029,
      5e-5,
    ],
    ["slope", () => lineOf(thermometer).slope, 0.00218, 5e-6],
    [
      "deviation of the slope",
      () => lineOf(thermometer).slopeDeviation,
      0.00067,
      5e-6,
    ],
    [
      "correction at 30 °C",
      () => heightAt(lineOf(thermometer), 10).value,
      -0.1494,
      5e-5,
    ],
    [
      "deviation of that correction",
      () => heightAt(lineOf(thermometer), 10).deviation,
      0.0041,
      5e-5,
    ],
  ] as const
).map(([what, ours, theirs, absolute]): Check => ({
  kinds: [],
  what: `thermometer, ${what}`,
  method: "least squares about the means",
  against: "published",
  source:
    "JCGM 100:2008 (GUM), H.3, calibration of a thermometer (data and answers as restated by the manual of GTC, Measurement Standards Laboratory of New Zealand)",
  unit: "K",
  ours,
  theirs: () => theirs,
  within: { absolute },
}));

/** Wear towards a level, x in whole steps; the level lies ahead. */
const reachChecks = Array.from({ length: 8 }, (_, index) =>
  (["likeliest", "earliest", "latest"] as const).map((which): Check => {
    const normal = normalNumbers(index + 31);
    const even = evenNumbers(index + 77);
    const count = 6 + (index % 5) * 3;
    const towards = index % 2 === 0 ? 1 : -1;
    const x = Array.from({ length: count }, (_, i) => i);
    const y = x.map((one) => towards * (one * 40) + Math.round(60 * normal()));
    const points = { x, y };
    const exact = exactly(points);
    const level = towards * 40 * (count + between(even, 2, 12));
    const coverage = 0.95;
    const t = studentWithin(coverage, count - 2);
    const lineAt = (at: number) =>
      exact.meanY + exact.slope * (at - exact.meanX);
    const reach = (at: number) =>
      t *
      exact.spread *
      Math.sqrt(1 / count + (at - exact.meanX) ** 2 / exact.squares);
    const side = which === "earliest" ? 1 : which === "latest" ? -1 : 0;
    const passes = halved(
      (at) => towards * (lineAt(at) - level) + side * reach(at),
      exact.meanX,
      5000,
    );
    const common = {
      kinds: [],
      method: "Fieller's quadratic",
      against: "independent",
      source:
        "second look: halved to where the band about the line lets the level in, from an exact line and Student's t by quadrature",
      unit: "1",
      within: { relative: 1e-6 },
    } as const;
    const ours = () =>
      got(reachOf(lineOf(points), level, towards, coverage))[which];
    // A slope that isn't sure leaves the far end open: 1 where it does.
    return 4999 < passes
      ? {
          ...common,
          what: `${which} x at a level is open, series ${String(index + 1)}`,
          ours: () => (ours() === undefined ? 1 : 0),
          theirs: () => 1,
        }
      : {
          ...common,
          what: `${which} x at a level, series ${String(index + 1)}`,
          ours: () => ours() ?? NaN,
          theirs: () => passes,
        };
  }),
).flat();

export default [
  ...lineChecks,
  ...gumChecks,
  ...reachChecks,
] satisfies readonly Check[];
