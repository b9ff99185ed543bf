// Properties and rates of what is learned from repeated values: intervals hold the truth as often as they say, and steady series are
// taken for changing ones, even lots for odd ones, as rarely as they say. The series are drawn from a seed.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  FALSE_DRIFT,
  LATEST,
  learnOverTime,
} from "../../../server/core/learning/drift.ts";
import {
  fitLine,
  heightAt,
  slopeInterval,
} from "../../../server/core/learning/line-fit.ts";
import {
  FALSE_ODD,
  oddGroups,
} from "../../../server/core/learning/odd-groups.ts";
import {
  meanInterval,
  nextInterval,
  sampleOf,
} from "../../../server/core/learning/sample.ts";
import { cutSize, oversizeOfCut } from "../../../server/core/line/cut-size.ts";
import { drawsFor, type Draws } from "../../history/random.ts";
import { got } from "../readings/got.ts";

const SEED = 41;

function shareOf(count: number, happens: (draws: Draws) => boolean): number {
  let hits = 0;
  for (let series = 0; series < count; series++)
    if (happens(drawsFor(SEED, series))) hits++;
  return hits / count;
}

/** A share as it comes out of this many series lies within five of its standard deviations. */
function expectShare(share: number, wanted: number, count: number): void {
  const reach = 5 * Math.sqrt((wanted * (1 - wanted)) / count);
  expect(Math.abs(share - wanted)).toBeLessThan(reach);
}

const normal = (draws: Draws, count: number): readonly number[] =>
  Array.from({ length: count }, () => draws.normal(3e-6, 1.3e-6));

describe("a mean", () => {
  test.each([2, 3, 8])(
    "of %i lies in its interval in 95 of 100 samples, and so does the next one",
    (count) => {
      const holds = shareOf(4000, (draws) => {
        const sample = got(sampleOf(normal(draws, count)));
        const { low, high } = got(meanInterval(sample, 0.95));
        return low <= 3e-6 && 3e-6 <= high;
      });
      expectShare(holds, 0.95, 4000);
      const next = shareOf(4000, (draws) => {
        const sample = got(sampleOf(normal(draws, count)));
        const { low, high } = got(nextInterval(sample, 0.95));
        const one = draws.normal(3e-6, 1.3e-6);
        return low <= one && one <= high;
      });
      expectShare(next, 0.95, 4000);
    },
  );

  test("of a single one has no interval", () => {
    const because = "a single one has no spread";
    // whatever spread is said of it
    for (const sample of [
      got(sampleOf([1])),
      { mean: 1, spread: 0.1, count: 1 },
    ])
      for (const interval of [meanInterval, nextInterval])
        expect(interval(sample, 0.95)).toEqual({ valid: false, because });
    const two = { mean: 1, spread: 0.1, count: 2 };
    expect(meanInterval(two, 0.95).valid).toBe(true);
    expect(sampleOf([]).valid).toBe(false);
  });
});

describe("a series", () => {
  const points = (
    draws: Draws,
    count: number,
    slope: number,
  ): readonly { readonly x: number; readonly y: number }[] =>
    normal(draws, count).map((y, x) => ({ x, y: y + slope * x }));

  test.each([6, 12, 40])(
    "of %i that does not change is taken for one that does in 1 of 100",
    (count) => {
      const found = shareOf(6000, (draws) => {
        const learned = got(learnOverTime(points(draws, count, 0), count));
        return learned.drift !== undefined;
      });
      expectShare(found, FALSE_DRIFT, 6000);
    },
  );

  test("that changes is found to, and what it is now lies in its interval in 95 of 100", () => {
    const slope = -0.25e-6;
    const found = shareOf(
      1500,
      (draws) =>
        got(learnOverTime(points(draws, 40, slope), 40)).drift !== undefined,
    );
    expect(found).toBe(1);
    const holds = shareOf(1500, (draws) => {
      const { interval } = got(learnOverTime(points(draws, 40, slope), 40));
      const now = 3e-6 + 40 * slope;
      return (
        interval !== undefined && interval.low <= now && now <= interval.high
      );
    });
    expectShare(holds, 0.95, 1500);
    const slopeHolds = shareOf(1500, (draws) => {
      const { drift } = got(learnOverTime(points(draws, 40, slope), 40));
      return (
        drift !== undefined &&
        drift.interval.low <= slope &&
        slope <= drift.interval.high
      );
    });
    expectShare(slopeHolds, 0.95, 1500);
  });

  test("that changes counts by its latest points alone, in whatever order it is given", () => {
    const draws = drawsFor(SEED, "order");
    const series = points(draws, 50, -0.4e-6);
    const learned = got(learnOverTime(series, 50));
    expect(learned.used).toBe(LATEST);
    expect(learned.sample.count).toBeLessThan(LATEST);
    expect(got(learnOverTime([...series].reverse(), 50))).toEqual(learned);
  });

  test("a line is as sure at its middle as a mean of all its points", () => {
    const line = got(fitLine(points(drawsFor(SEED, "worth"), 21, 1e-7)));
    expect(heightAt(line, line.meanX).worth).toBeCloseTo(21, 9);
    expect(heightAt(line, 40).worth).toBeLessThan(6);
  });

  test("a line is refused of two points, and of points at one place", () => {
    expect(
      fitLine([
        { x: 0, y: 1 },
        { x: 1, y: 2 },
      ]).valid,
    ).toBe(false);
    expect(fitLine([1, 2, 3].map((y) => ({ x: 1, y }))).valid).toBe(false);
    expect(fitLine([1, 2, NaN].map((y, x) => ({ x, y }))).valid).toBe(false);
  });

  test("in another unit it says the same", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -500, max: 500 }), {
          minLength: 6,
          maxLength: 30,
        }),
        (values) => {
          fc.pre(new Set(values).size > 2);
          const one = got(fitLine(values.map((y, x) => ({ x, y }))));
          const other = got(
            fitLine(values.map((y, x) => ({ x, y: y * 25.4e-6 }))),
          );
          const { low, high } = got(slopeInterval(one, 0.95));
          const scaled = got(slopeInterval(other, 0.95));
          const width = (high - low) * 25.4e-6 + 1e-15;
          expect(Math.abs(scaled.low - low * 25.4e-6)).toBeLessThan(
            1e-6 * width,
          );
          expect(Math.abs(scaled.high - high * 25.4e-6)).toBeLessThan(
            1e-6 * width,
          );
        },
      ),
    );
  });
});

describe("groups", () => {
  test.each([2, 5])(
    "of %i lots alike, one is called odd in 1 of 100 at most",
    (count) => {
      const found = shareOf(3000, (draws) => {
        const lots = Array.from({ length: count }, () => normal(draws, 8));
        return 0 < oddGroups(lots).length;
      });
      expect(found).toBeLessThan(
        FALSE_ODD + 5 * Math.sqrt((FALSE_ODD * (1 - FALSE_ODD)) / 3000),
      );
    },
  );

  test("a lot that lies apart is found, alone", () => {
    const alone = shareOf(500, (draws) => {
      const lots = Array.from({ length: 5 }, (_, lot) =>
        normal(draws, 10).map((value) => value + (lot === 3 ? 5e-6 : 0)),
      );
      const odd = oddGroups(lots);
      return odd[0] === 3 && odd.length === 1;
    });
    expect(alone).toBeGreaterThan(0.97);
  });

  test("nothing is odd where no lot scatters, or each is of one", () => {
    expect(oddGroups([[1], [5], [1.1]])).toEqual([]);
    expect(
      oddGroups([
        [1, 1],
        [5, 5],
      ]),
    ).toEqual([]);
    expect(oddGroups([])).toEqual([]);
  });
});

test("the oversize of a cut is the reverse of the size that it gives, at any heat", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.005, max: 0.1, noNaN: true }),
      fc.double({ min: -2e-5, max: 2e-5, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      (tool, over, partTemperature, toolTemperature) => {
        const heat = {
          partTemperature,
          partExpansion: 18e-6,
          toolTemperature,
          toolExpansion: 11e-6,
        };
        const cut = got(
          cutSize(
            { kind: "written", low: tool, high: tool },
            { kind: "written", low: over, high: over },
            heat,
          ),
        );
        expect(
          Math.abs(got(oversizeOfCut(cut.nominal, tool, heat)) - over),
        ).toBeLessThan(1e-15);
      },
    ),
  );
  expect(oversizeOfCut(0.02, 0.03).valid).toBe(false);
  expect(oversizeOfCut(-1, 0.03).valid).toBe(false);
});
