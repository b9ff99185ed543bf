// Wear in made-up shops, whose truths are known: whether what `thou trend` says of journals holds as often as it says. The seeds were set aside
// before anything was tried: the ones that it was built with are below 100.
import { describe, expect, test } from "vitest";
import type { Along } from "../../server/records/trend.ts";
import { judgedShop } from "../history/planted.ts";

/** One shop has 24 journals. More by THOU_SHOPS=20. */
const SHOPS = Number(process.env.THOU_SHOPS ?? "4");
const FIRST_SEED = 8_101;

const OVER: readonly Along[] = ["date", "hours"];

const shops = Array.from(
  { length: SHOPS },
  (_, index) => judgedShop(FIRST_SEED + index).journals,
);

/** How many of a number fall short by chance one time in a thousand, each with this chance: normal, as there are enough. */
function mostBy(chance: number, of: number): number {
  return Math.ceil(chance * of + 3.09 * Math.sqrt(of * chance * (1 - chance)));
}

describe.each(OVER)(
  `journals of ${String(SHOPS)} shops against %s`,
  (along) => {
    const all = shops.flatMap((shop) => shop[along]);

    test("each has one run, of a rate with its interval", () => {
      expect(all.length).toBe(24 * SHOPS);
      const whole = all.filter(({ series }) => series.runs.length === 1);
      // a stray reading of the flaws may part a run: seldom
      expect(whole.length / all.length).toBeGreaterThan(0.9);
    });

    test("the true rate lies in the interval as often as it says, 95 of 100", () => {
      const rated = all.flatMap(({ truth, series }) => {
        const rate =
          series.runs.length === 1 ? series.runs[0]?.rate : undefined;
        return rate === undefined
          ? []
          : [
              {
                rate,
                slope:
                  -truth.perHour * (along === "date" ? truth.hoursADay : 1),
              },
            ];
      });
      const outside = rated.filter(
        ({ rate: { interval }, slope }) =>
          slope < interval.low || interval.high < slope,
      );
      expect(rated.length).toBeGreaterThan(20 * SHOPS);
      expect(outside.length).toBeLessThanOrEqual(mostBy(0.05, rated.length));
    });

    test("one that does not wear is said to at most as often as it says, 2.5 of 100", () => {
      const steady = all.filter(({ truth }) => truth.perHour === 0);
      const said = steady.filter(
        ({ series }) => series.runs.at(-1)?.rate?.way === "wears",
      );
      expect(steady.length).toBeGreaterThan(0);
      expect(said.length).toBeLessThanOrEqual(mostBy(0.025, steady.length));
    });

    test("one that wears is found, mostly", () => {
      const worn = all.filter(({ truth }) => 0 < truth.perHour);
      const found = worn.filter(
        ({ series }) => series.runs.at(-1)?.rate?.way === "wears",
      );
      expect(worn.length).toBeGreaterThan(0);
      expect(found.length / worn.length).toBeGreaterThan(0.8);
    });
  },
);
