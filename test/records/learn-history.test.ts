// What `learn` makes of made-up shops whose truths are known. The seeds of the block below were not used while the generator, the rules and
// their levels were made; whoever tunes any of these takes a new block.
//
// The rates that are held, of 12 shops of 60 records:
// - each planted truth lies in its 95 % interval: 13 a shop, 156 in all; 88 % is asked for, which chance alone would miss once in 2,000 times;
// - every reamer that wears, gauge that drifts and lot that is odd is found;
// - what does not wear, drift or stand apart is said to in 1 of 100 at most: of each sort not more than 3 of 24 or more are let pass, which
//   chance alone would pass once in some hundred times or less.
import { beforeAll, describe, expect, test } from "vitest";
import { gaugeLesson, truthsHeld } from "../history/held.ts";
import { judgedShop, type JudgedShop } from "../history/planted.ts";
import { REAMERS } from "../history/truths.ts";

const SEEDS = [
  ...[70_001, 70_002, 70_003, 70_004, 70_005, 70_006],
  ...[70_007, 70_008, 70_009, 70_010, 70_011, 70_012],
];

let shops: readonly JudgedShop[] = [];
beforeAll(() => {
  shops = SEEDS.map((seed) => judgedShop(seed));
}, 120_000);

describe("of 12 shops that nobody has looked at", () => {
  test("each truth lies in what was learned of it as often as that says", () => {
    const all = shops.flatMap(truthsHeld);
    expect(all.length).toBe(156);
    expect(all.filter(({ interval }) => interval === undefined)).toEqual([]);
    const missed = all.filter(
      ({ truth, interval }) =>
        interval === undefined || truth < interval.low || interval.high < truth,
    );
    expect(
      1 - missed.length / all.length,
      missed.map(({ what }) => what).join(", "),
    ).toBeGreaterThanOrEqual(0.88);
  });

  test("every reamer that wears is found to, at its rate, and hardly any that does not", () => {
    const wear = shops.map(({ truths, lessons }) => {
      const truth = truths.reamers.find(({ perCut }) => 0 < perCut);
      const lesson = lessons.reamers.find(
        ({ reamer }) => reamer === `reamer ${truth?.reamer ?? ""}`,
      );
      return { rate: -(truth?.perCut ?? 0), drift: lesson?.learned.drift };
    });
    expect(wear.filter(({ drift }) => drift === undefined)).toEqual([]);
    const held = wear.filter(
      ({ rate, drift }) =>
        drift !== undefined &&
        drift.interval.low <= rate &&
        rate <= drift.interval.high,
    );
    expect(held.length).toBeGreaterThanOrEqual(9);
    const steady = shops.flatMap(({ lessons }) =>
      lessons.reamers.filter(({ reamer }) => reamer !== "reamer r-8756"),
    );
    expect(steady.length).toBe(48);
    expect(
      steady.filter(({ learned }) => learned.drift !== undefined).length,
    ).toBeLessThanOrEqual(3);
  });

  test("every lot that closes more is found, and hardly any other", () => {
    const odd = shops.flatMap(({ truths, lessons }) => {
      const truth = truths.closures.find(({ isOdd }) => isOdd);
      return lessons.bushes.flatMap(({ lot }) =>
        lot === undefined ? [] : [lot === truth?.lot],
      );
    });
    expect(odd.filter((isRight) => isRight).length).toBe(shops.length);
    expect(odd.filter((isRight) => !isRight).length).toBeLessThanOrEqual(3);
  });

  test("the gauge that drifts is found, at its rate, and hardly any other is said to be off", () => {
    const drifts = shops.map(({ truths, lessons }) => ({
      rate: truths.gauges.find(({ gauge }) => gauge === "mic-2")?.perYear ?? 0,
      drift: gaugeLesson(lessons, "mic-2")?.learned.drift,
    }));
    expect(drifts.filter(({ drift }) => drift === undefined)).toEqual([]);
    expect(
      drifts.filter(
        ({ rate, drift }) =>
          drift !== undefined &&
          drift.interval.low <= rate &&
          rate <= drift.interval.high,
      ).length,
    ).toBeGreaterThanOrEqual(9);
    const steady = shops.flatMap(({ lessons }) =>
      lessons.gauges.filter(({ gauge }) => gauge !== "gauge mic-2"),
    );
    expect(
      steady.filter(({ learned }) => learned.drift !== undefined).length,
    ).toBeLessThanOrEqual(3);
    const agree = steady.filter(({ gauge }) => gauge.includes("bore"));
    expect(agree.length).toBe(24);
    expect(agree.filter(({ isOff }) => isOff).length).toBeLessThanOrEqual(3);
    // the one that is off by as much all the time is
    const off = shops.flatMap(
      ({ lessons }) => gaugeLesson(lessons, "mic-mm-2") ?? [],
    );
    expect(off.filter(({ isOff }) => !isOff)).toEqual([]);
    // neither micrometer is set on a ring: whose fault it is can't be told
    expect(off.filter(({ isTied }) => isTied)).toEqual([]);
  });

  test("what was damaged on purpose is left out, each for its reason", () => {
    const reasons = {
      damaged: ["reamer", "damaged"],
      unsigned: ["reamer", "unsigned"],
      undated: ["reamer", "undated"],
      stray: ["reamer", "stray"],
      "only-roughed": ["reamer", "unread"],
      "press-unsigned": ["bush", "unsigned"],
    } as const;
    let flawed = 0;
    for (const { records, lessons } of shops) {
      for (const { flaw, path } of records) {
        // a clean reading may be taken for a wild one: how often is counted in test/history
        const here = lessons.leftOut.filter(
          ({ file, why }) => file === path && why !== "wild",
        );
        if (flaw === undefined) {
          expect(here).toEqual([]);
          continue;
        }
        flawed++;
        const [about, why] = reasons[flaw];
        expect(here).toContainEqual(
          expect.objectContaining({
            about,
            why,
            file: path,
            entry: "bore front",
          }),
        );
        expect(here.filter((each) => each.entry !== "bore front")).toEqual([]);
      }
    }
    expect(flawed).toBeGreaterThan(50);
  });

  test("the mean of what a reamer cuts is the one that the figures in the records give by plain arithmetic", () => {
    const [shop] = shops;
    if (shop === undefined) throw new Error("no shop");
    const over = shop.records.flatMap(({ flaw, versions }) => {
      const text = versions.at(-1)?.text ?? "";
      if (
        !text.includes("ream with r-8755\n") ||
        !text.includes("material tin-bronze\n")
      )
        return [];
      // front, then rear: a flaw is the front bore's
      const bores = text.split("\nbore ").slice(1, 3);
      return bores.flatMap((bore, index) => {
        if (index === 0 && flaw !== undefined && flaw !== "press-unsigned")
          return [];
        const values = [...bore.matchAll(/read (?:near|far) (\S+) (\S+) /gu)]
          .slice(0, 2)
          .flatMap(([, a, b]) => [Number(a), Number(b)]);
        const mean = values.reduce((sum, value) => sum + value, 0) / 4;
        return [mean * 0.0254 - REAMERS["r-8755"]];
      });
    });
    const lesson = shop.lessons.reamers.find(
      ({ reamer, material }) =>
        reamer === "reamer r-8755" && material === "tin-bronze",
    );
    expect(lesson?.cuts).toBe(over.length);
    expect(lesson?.learned.drift).toBeUndefined();
    expect(
      Math.abs(
        (lesson?.learned.sample.mean ?? 0) -
          over.reduce((sum, value) => sum + value, 0) / over.length,
      ),
    ).toBeLessThan(1e-10);
  });
});
