import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  chanceOfLanding,
  margin,
  type Landing,
} from "../../../server/core/line/chance.ts";
import type { CutSize } from "../../../server/core/line/cut-size.ts";
import { known, refusal } from "./answers.ts";

function cut(
  nominal: number,
  standardDeviation: number | undefined,
  degreesOfFreedom = Infinity,
): CutSize {
  return {
    low: nominal,
    nominal,
    high: nominal,
    spread:
      standardDeviation === undefined
        ? undefined
        : { standardDeviation, degreesOfFreedom },
    oversizeAssumed: false,
  };
}

const window = { low: 0.02, high: 0.02001 };

describe("margin", () => {
  test("to the nearer limit, in metres and in deviations", () => {
    const found = known(margin([{ cut: cut(0.020003, 1e-6), window }]));
    expect(found.metres).toBeCloseTo(3e-6, 14);
    expect(found.deviations).toBeCloseTo(3, 6);
    expect([found.bore, found.end]).toEqual([0, "low"]);
  });

  test("of the bore that has the least; below zero outside", () => {
    const found = known(
      margin([
        { cut: cut(0.020005, 1e-6), window },
        { cut: cut(0.020012, 1e-6), window },
      ]),
    );
    expect(found.metres).toBeCloseTo(-2e-6, 14);
    expect([found.bore, found.end]).toEqual([1, "high"]);
  });

  test("a cut without a spread has a margin in metres only", () => {
    const found = known(margin([{ cut: cut(0.020003, undefined), window }]));
    expect(found.deviations).toBeUndefined();
    expect(found.metres).toBeCloseTo(3e-6, 14);
  });
});

describe("margin over several bores", () => {
  const marginOf = (...cuts: readonly CutSize[]) =>
    known(margin(cuts.map((each) => ({ cut: each, window }))));

  test("the bore nearest in metres need not be the nearest in deviations", () => {
    const found = marginOf(cut(0.020003, 1e-6), cut(0.020004, 4e-6));
    expect([found.metres * 1e6, found.bore]).toEqual([
      expect.closeTo(3, 6) as number,
      0,
    ]);
    expect(found.deviations).toBeCloseTo(1, 6);
    // in either order
    const other = marginOf(cut(0.020004, 4e-6), cut(0.020003, 1e-6));
    expect([other.bore, other.deviations]).toEqual([
      1,
      expect.closeTo(1, 6) as number,
    ]);
  });

  test("one cut without a spread leaves none in deviations, wherever it stands", () => {
    const [known6, unknown] = [cut(0.020003, 1e-6), cut(0.020005, undefined)];
    expect(marginOf(known6, unknown, known6).deviations).toBeUndefined();
    expect(marginOf(unknown, known6).deviations).toBeUndefined();
    expect(marginOf(known6, unknown).metres).toBeCloseTo(3e-6, 12);
  });

  test("of equals the first bore counts, and the upper end", () => {
    // halves and quarters have no rounding
    const at = (nominal: number): Landing => ({
      cut: cut(nominal, 1),
      window: { low: 0, high: 4 },
    });
    expect(known(margin([at(1), at(3)]))).toMatchObject({
      ...{ metres: 1, bore: 0, end: "low", deviations: 1 },
    });
    expect(known(margin([at(2)]))).toMatchObject({ metres: 2, end: "high" });
  });
});

describe("chance of landing in", () => {
  test("by the normal table: ±1 σ 68.27 %, ±2 σ 95.45 %, ±3 σ 99.73 %", () => {
    for (const [sigmas, percent] of [
      [1, 68.27],
      [2, 95.45],
      [3, 99.73],
    ] as const) {
      const landing: Landing = { cut: cut(0.020005, 5e-6 / sigmas), window };
      expect(100 * known(chanceOfLanding([landing]))).toBeCloseTo(percent, 2);
    }
  });

  test("few degrees of freedom make it less sure", () => {
    const at = (nu: number) =>
      known(chanceOfLanding([{ cut: cut(0.020005, 2e-6, nu), window }]));
    expect(at(2)).toBeLessThan(at(10));
    expect(at(10)).toBeLessThan(at(Infinity));
  });

  test("one tool's deviation is common to its bores: two alike are as sure as one, and apart none is", () => {
    const one: Landing = { cut: cut(0.020005, 4e-6), window };
    expect(known(chanceOfLanding([one, one]))).toBe(
      known(chanceOfLanding([one])),
    );
    const higher: Landing = {
      cut: cut(0.020005, 4e-6),
      window: { low: 0.02002, high: 0.02003 },
    };
    expect(known(chanceOfLanding([one, higher]))).toBe(0);
  });

  test("the fewest degrees of freedom count, in either order", () => {
    const of = (...degrees: readonly number[]) =>
      known(
        chanceOfLanding(
          degrees.map((nu) => ({ cut: cut(0.020005, 4e-6, nu), window })),
        ),
      );
    expect(of(3, 30)).toBe(of(3));
    expect(of(30, 3)).toBe(of(3));
  });

  test.each([
    [NaN, 1],
    [0, NaN],
    [-Infinity, 1],
    [0, Infinity],
  ])("a window from %d to %d is none, at any bore", (low, high) => {
    const bad: Landing = { cut: cut(0.5, 1), window: { low, high } };
    const good: Landing = { cut: cut(0.5, 1), window: { low: 0, high: 1 } };
    for (const landings of [[bad], [good, bad]]) {
      expect(refusal(margin(landings))).toBe("the window is not a number");
      expect(refusal(chanceOfLanding(landings))).toBe(
        "the window is not a number",
      );
    }
  });

  test("agrees with a seeded Monte Carlo over two bores of different materials", () => {
    const landings: Landing[] = [
      { cut: cut(0.020003, 4e-6), window },
      { cut: cut(0.020008, 2e-6), window },
    ];
    let seed = 12345;
    const random = () => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    let hits = 0;
    const draws = 200_000;
    for (let draw = 0; draw < draws; draw++) {
      const z =
        Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
      const sizes = [0.020003 + 4e-6 * z, 0.020008 + 2e-6 * z];
      if (sizes.every((size) => window.low <= size && size <= window.high))
        hits++;
    }
    expect(known(chanceOfLanding(landings))).toBeCloseTo(hits / draws, 2);
  });

  test("refuses without a spread", () => {
    expect(
      refusal(chanceOfLanding([{ cut: cut(0.020005, undefined), window }])),
    ).toContain("spread");
    expect(refusal(chanceOfLanding([]))).toContain("no bore");
    expect(refusal(margin([]))).toContain("no bore");
    expect(
      refusal(margin([{ cut: cut(1, 1), window: { low: NaN, high: 1 } }])),
    ).toContain("not a number");
  });

  test("lies in 0 to 1 and never shrinks with a wider window", () => {
    const micrometres = fc.integer({ min: -40, max: 40 });
    fc.assert(
      fc.property(
        micrometres,
        micrometres,
        fc.nat(40),
        fc.nat(20),
        fc.integer({ min: 1, max: 30 }),
        (at, low, width, more, s) => {
          const chanceIn = (from: number, to: number) =>
            known(
              chanceOfLanding([
                {
                  cut: cut(0.02 + at * 1e-6, s * 1e-6),
                  window: { low: 0.02 + from * 1e-6, high: 0.02 + to * 1e-6 },
                },
              ]),
            );
          const chance = chanceIn(low, low + width);
          expect(0 <= chance && chance <= 1).toBe(true);
          expect(
            chance - 1e-12 <= chanceIn(low - more, low + width + more),
          ).toBe(true);
        },
      ),
    );
  });
});
