// When a line gets to a level: held against the band's own definition, against samples drawn from known lines, and at its edges.
import { describe, expect, test } from "vitest";
import { fitLine, heightAt } from "../../../server/core/learning/line-fit.ts";
import { reachOf, withSpreadOf } from "../../../server/core/trend/reaching.ts";
import { studentCoverage } from "../../../server/core/quantity/student.ts";
import { drawsFor } from "../../history/random.ts";
import { got } from "../readings/got.ts";

const falling = got(
  fitLine(
    [0, 1, 2, 3, 4, 5].map((x) => ({ x, y: 10 - x + (x % 2 ? 0.05 : -0.05) })),
  ),
);

describe("a line that surely falls", () => {
  const { earliest, likeliest, latest } = got(reachOf(falling, 2, -1, 0.95));

  test("is there between the earliest and the latest", () => {
    expect(likeliest).toBeCloseTo(
      falling.meanX - (falling.meanY - 2) / falling.slope,
      12,
    );
    expect(earliest).toBeLessThan(likeliest ?? NaN);
    expect(likeliest).toBeLessThan(latest ?? NaN);
  });

  test("each end is where an edge of its band crosses the level", () => {
    const t = got(studentCoverage(0.95, falling.degreesOfFreedom));
    const edge = (x: number | undefined, side: number): number => {
      const { value, deviation } = heightAt(falling, x ?? NaN);
      return value + side * t * deviation;
    };
    expect(edge(earliest, -1)).toBeCloseTo(2, 9);
    expect(edge(latest, 1)).toBeCloseTo(2, 9);
  });

  test("a rising one, turned over, says the same", () => {
    const rising = got(
      fitLine(
        [0, 1, 2, 3, 4, 5].map((x) => ({
          x,
          y: -(10 - x + (x % 2 ? 0.05 : -0.05)),
        })),
      ),
    );
    const over = got(reachOf(rising, -2, 1, 0.95));
    expect(over.earliest).toBeCloseTo(earliest ?? NaN, 9);
    expect(over.latest).toBeCloseTo(latest ?? NaN, 9);
  });
});

test("a slope that is not sure has no latest, and an earliest still", () => {
  const line = got(fitLine([10, 9.9, 10.1, 9.95].map((y, x) => ({ x, y }))));
  const found = got(reachOf(line, 5, -1, 0.95));
  expect(found.latest).toBeUndefined();
  expect(found.earliest).toBeGreaterThan(3);
});

test("one that runs the other way gets there never, as far as is known", () => {
  const line = got(fitLine([1, 2.01, 2.99, 4].map((y, x) => ({ x, y }))));
  const found = got(reachOf(line, -5, -1, 0.95));
  expect(found.likeliest).toBeUndefined();
  expect(found.latest).toBeUndefined();
});

test("of 2,000 samples of known lines the interval holds the true x in 95 of 100", () => {
  let held = 0;
  const rounds = 2000;
  for (let round = 0; round < rounds; round++) {
    const draws = drawsFor(4711, round);
    const points = Array.from({ length: 7 }, (_, x) => ({
      x,
      y: 10 - 0.5 * x + draws.normal(0, 0.2),
    }));
    const { earliest, latest } = got(
      reachOf(got(fitLine(points)), 5, -1, 0.95),
    );
    // y = 5 at x = 10
    if ((earliest ?? -Infinity) <= 10 && 10 <= (latest ?? Infinity)) held++;
  }
  // a standard deviation of the count is 9.7
  expect(held / rounds).toBeGreaterThan(0.935);
  expect(held / rounds).toBeLessThan(0.965);
});

test("a spread that is there at least takes the place of a smaller one", () => {
  const exact = got(fitLine([3, 2, 1].map((y, x) => ({ x, y }))));
  expect(exact.spread).toBeCloseTo(0, 12);
  const floored = withSpreadOf(exact, 0.1);
  expect(floored.spread).toBe(0.1);
  expect(floored.slopeDeviation).toBeCloseTo(0.1 / Math.sqrt(2), 12);
  expect(withSpreadOf(floored, 0.05)).toBe(floored);
});

test("what is no level or no coverage is refused", () => {
  expect(reachOf(falling, NaN, -1, 0.95).valid).toBe(false);
  expect(reachOf(falling, 2, -1, 1).valid).toBe(false);
});
