// Wild values against a published worked example, and at their stated rate among clean ones.
import { describe, expect, test } from "vitest";
import { fitLine, heightAt } from "../../../server/core/learning/line-fit.ts";
import { studentQuantile } from "../../../server/core/quantity/student.ts";
import { wildAlong, wildAmong } from "../../../server/core/learning/wild.ts";
import { leastOf, mostOf } from "../../history/chance.ts";
import { drawsFor } from "../../history/random.ts";

const exact = (values: readonly number[], step = 0) =>
  values.map((value) => ({ value, step }));

// B. Rosner, Technometrics 25 (1983) 165: 54 values, as the NIST/SEMATECH e-Handbook 1.3.5.17.3 gives them (data and result seen as restated
// by others): of R = 3.118, 2.942, 3.179, 2.810 … against 3.158, 3.151, 3.143, 3.136 … at 5 % the third alone is past, so three are outliers
const ROSNER = [
  -0.25, 0.68, 0.94, 1.15, 1.2, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55,
  1.56, 1.58, 1.65, 1.69, 1.7, 1.76, 1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06,
  2.09, 2.1, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.4, 2.47, 2.54, 2.62,
  2.64, 2.9, 2.92, 2.92, 2.93, 3.21, 3.26, 3.3, 3.59, 3.68, 4.3, 4.64, 5.34,
  5.42, 6.01,
];

test("of Rosner's 54 values three are wild, though neither the first nor the first two are by themselves", () => {
  expect(wildAmong(exact(ROSNER), 0.05).map((at) => ROSNER[at])).toEqual([
    6.01, 5.42, 5.34,
  ]);
  expect(wildAmong(exact(ROSNER), 0.01)).toEqual([]);
});

describe("nothing is wild", () => {
  test("of fewer than six, or of values that are all alike", () => {
    expect(wildAmong(exact([1, 1.1, 0.9, 1, 50]))).toEqual([]);
    expect(wildAmong(exact([1, 1, 1, 1, 1, 1, 1]))).toEqual([]);
  });

  test("that is off by no more than a step of its reading", () => {
    const alike = [5, 5, 5, 5, 5, 5, 5, 5, 6];
    expect(wildAmong(exact(alike, 1))).toEqual([]);
    expect(wildAmong(exact(alike, 0.9))).toEqual([8]);
  });

  test("of what wears steadily, however much, but what would be nothing odd at another time", () => {
    const draws = drawsFor("wears");
    const worn = Array.from({ length: 30 }, (_, x) => ({
      x,
      value: 40 - x + draws.normal(0, 0.5),
      step: 0.1,
    }));
    expect(wildAlong(worn)).toEqual([]);
    const wild = worn.map((point) =>
      point.x === 25 ? { ...point, value: 30 } : point,
    );
    expect(wildAlong(wild)).toEqual([25]);
    expect(wildAlong(wild.map((each) => ({ ...each, step: 30 })))).toEqual([]);
    expect(wildAmong(wild)).toEqual([]);
  });

  test("where all are of one time", () => {
    const once = [1, 1.1, 0.9, 1, 1.05, 0.95, 50];
    expect(wildAlong(once.map((value) => ({ x: 3, value, step: 0 })))).toEqual(
      [],
    );
  });
});

test("a point off a line is wild where Student's t of its distance from the line of the others says so", () => {
  // by the other way round: the line of the others, the distance and its deviation, s²·(1 + 1/m + (x − x̄)²/Σ)
  const draws = drawsFor("line of the others");
  const clean = Array.from({ length: 14 }, (_, x) => ({
    x,
    y: 2 * x + draws.normal(0, 1),
  }));
  const others = clean.filter(({ x }) => x !== 11);
  const line = fitLine(others);
  const edge = studentQuantile(1 - 0.01 / 28, 11);
  if (!line.valid || !edge.valid) throw new Error("no line");
  const { value, deviation } = heightAt(line.value, 11);
  const far = edge.value * Math.hypot(line.value.spread, deviation);
  const withOne = (y: number) =>
    clean.map((each) => ({
      x: each.x,
      value: each.x === 11 ? y : each.y,
      step: 0,
    }));
  expect(wildAlong(withOne(value + 1.001 * far))).toEqual([11]);
  expect(wildAlong(withOne(value + 0.999 * far))).toEqual([]);
  expect(wildAlong(withOne(value - 1.001 * far))).toEqual([11]);
});

describe.each([6, 12, 30, 60])("of %i clean points", (length) => {
  const SERIES = 3000;
  test.each([0, 3])(
    "on a slope of %d one in a hundred series has a wild one, or fewer",
    (slope) => {
      let found = 0;
      for (let series = 0; series < SERIES; series++) {
        const draws = drawsFor("clean", length, slope, series);
        const points = Array.from({ length }, (_, x) => ({
          x,
          value: slope * x + draws.normal(0, 1),
          step: 0,
        }));
        if (0 < wildAlong(points).length) found++;
      }
      expect(found).toBeLessThanOrEqual(mostOf(SERIES, 0.01));
      // Bonferroni's bound is near: it is no rule that never speaks
      expect(found).toBeGreaterThanOrEqual(leastOf(SERIES, 0.006));
    },
  );
});
