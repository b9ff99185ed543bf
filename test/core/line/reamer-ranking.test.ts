import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Oversize } from "../../../server/core/line/cut-size.ts";
import {
  rankReamers,
  sizeToGrind,
  type ReamerToRank,
} from "../../../server/core/line/reamer-ranking.ts";
import type { WantingJournal } from "../../../server/core/line/wanting-journal.ts";
import { sizesToBuy } from "../../../server/core/line/sizes-to-buy.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;
const thou = inch / 1000;
const over = (low: number, high: number): Oversize => ({
  kind: "written",
  low: low * thou,
  high: high * thou,
});
const assumed: Oversize = { kind: "assumed-zero" };

function journal(least: number, greatest: number): WantingJournal {
  return {
    least: least * inch,
    greatest: greatest * inch,
    wanted: { low: 0.8 * thou, high: 1.6 * thou },
  };
}

function reamer(size: number, oversize: Oversize = over(0, 0.2)): ReamerToRank {
  return {
    size: { kind: "written", low: size * inch, high: size * inch },
    cuts: [{ oversize }],
  };
}

// windows 0.87515 to 0.87588 and 0.8753 to 0.8760: together 0.8753 to 0.87588, their middle 0.87559
const line = [journal(0.87428, 0.87435), journal(0.8744, 0.8745)];

describe("reamers of the crib", () => {
  test("the surest first, then those that don't serve", () => {
    const ranked = known(
      rankReamers(line, [
        reamer(0.875),
        reamer(0.8752),
        reamer(0.8755),
        reamer(0.8757),
        reamer(0.88),
      ]),
    );
    expect(ranked.map(({ index }) => index)).toEqual([2, 3, 1, 0, 4]);
    expect(ranked.map(({ serves }) => serves)).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
    expect(ranked[0]?.chance).toBeCloseTo(1, 3);
    expect(ranked.at(-1)?.chance).toBe(0);
  });

  test("each comes with its clearances and margin", () => {
    const [best] = known(rankReamers(line, [reamer(0.8755)]));
    // cuts 0.8755 to 0.8757
    expect((best?.clearances[0]?.low ?? NaN) / thou).toBeCloseTo(1.15, 8);
    expect((best?.clearances[0]?.high ?? NaN) / thou).toBeCloseTo(1.42, 8);
    expect((best?.clearances[1]?.low ?? NaN) / thou).toBeCloseTo(1.0, 8);
    expect((best?.margin.metres ?? NaN) / thou).toBeCloseTo(0.28, 8);
    expect([best?.margin.bore, best?.margin.end]).toEqual([0, "high"]);
    expect(best?.margin.deviations).toBeCloseTo(
      0.28 / (0.2 / Math.sqrt(12)),
      6,
    );
  });

  test("one whose chance isn't known comes after those of a good chance and before those of a poor one", () => {
    // of windows 0.8753 to 0.87588: cuts 0.8755 to 0.8757, 0.8755, and 0.8757 to 0.8760, of which a half to nine of ten land in
    const poor = reamer(0.8757, over(0, 0.3));
    const ranked = known(
      rankReamers(line, [poor, reamer(0.8755, assumed), reamer(0.8755)]),
    );
    expect(ranked.map(({ index }) => index)).toEqual([2, 1, 0]);
    expect(ranked.map(({ serves }) => serves)).toEqual([true, true, true]);
    const chance = ranked[2]?.chance ?? NaN;
    expect(0.5 < chance && chance < 0.9).toBe(true);
  });

  test("at nine of ten a chance is good, and any chance that is known comes first where none serves", () => {
    // a spread of width/√12 around the middle: the window's end is that many deviations away
    const at = (deviations: number): ReamerToRank => {
      const width = 0.2;
      const nominal = 0.87588 - (deviations * width) / Math.sqrt(12) / 1000;
      return reamer(nominal - width / 2000, over(0, width));
    };
    // one-sided, nine of ten is 1.28155 deviations
    const order = (deviations: number): readonly number[] =>
      known(rankReamers(line, [reamer(0.8755, assumed), at(deviations)])).map(
        ({ index }) => index,
      );
    expect(order(1.2816)).toEqual([1, 0]);
    expect(order(1.2815)).toEqual([0, 1]);
    const outside = known(
      rankReamers(line, [reamer(0.874, assumed), reamer(0.8732)]),
    );
    expect(outside.map(({ index }) => index)).toEqual([1, 0]);
  });

  test("those whose chance isn't known come by their margin, behind one of a good chance", () => {
    const ranked = known(
      rankReamers(line, [
        reamer(0.8754, assumed),
        reamer(0.8755, assumed),
        reamer(0.8757),
      ]),
    );
    expect(ranked.map(({ index }) => index)).toEqual([2, 1, 0]);
    expect(ranked[1]?.chance).toBeUndefined();
  });

  test("between two as good as sure the margin decides", () => {
    const sure = over(0.1, 0.101);
    const ranked = known(
      rankReamers(line, [
        reamer(0.8754, sure),
        reamer(0.8755, sure),
        reamer(0.87565, sure),
      ]),
    );
    expect(ranked.map(({ index }) => index)).toEqual([1, 0, 2]);
  });

  test("bores of two materials are each judged by their own oversize", () => {
    const cuts = [{ oversize: over(0, 0) }, { oversize: over(0.6, 0.6) }];
    const apart: ReamerToRank = {
      size: { kind: "written", low: 0.8752 * inch, high: 0.8752 * inch },
      cuts,
    };
    const [ranked] = known(rankReamers(line, [apart]));
    expect(
      ranked?.cuts.map((cut) => Math.round((cut.nominal / inch) * 1e5)),
    ).toEqual([87520, 87580]);
    expect(ranked?.serves).toBe(true);
    expect((ranked?.margin.metres ?? NaN) / thou).toBeCloseTo(0.05, 6);
  });

  test("an adjustable reamer comes with its setting: the middle of what serves, or its nearest end", () => {
    const adjustable = (low: number, high: number): ReamerToRank => ({
      size: undefined,
      expands: { low: low * inch, high: high * inch },
      cuts: [{ oversize: over(0, 0.2) }],
    });
    const ranked = known(
      rankReamers(line, [adjustable(0.86, 0.9), adjustable(0.76, 0.8754)]),
    );
    expect(ranked.map(({ index }) => index)).toEqual([0, 1]);
    expect((ranked[0]?.setting ?? NaN) / inch).toBeCloseTo(0.87549, 9);
    expect((ranked[1]?.setting ?? NaN) / inch).toBeCloseTo(0.8754, 9);
    const [tooSmall] = known(rankReamers(line, [adjustable(0.76, 0.8)]));
    expect(tooSmall?.serves).toBe(false);
  });

  test("a reamer without a size is left out; a line without bores is refused", () => {
    expect(
      known(
        rankReamers(line, [{ size: undefined, cuts: [{ oversize: assumed }] }]),
      ),
    ).toEqual([]);
    expect(known(rankReamers(line, [{ ...reamer(0.8755), cuts: [] }]))).toEqual(
      [],
    );
    expect(refusal(rankReamers([], [reamer(0.8755)]))).toContain("no bore");
    expect(
      refusal(rankReamers([journal(0.9, 0.8)], [reamer(0.8755)])),
    ).toContain("journal");
  });

  test("where no reamer can serve all, none does", () => {
    const apart = [journal(0.8742, 0.8743), journal(0.8755, 0.8755)];
    const ranked = known(rankReamers(apart, [reamer(0.8755), reamer(0.876)]));
    expect(ranked.every(({ serves, chance }) => !serves && chance === 0)).toBe(
      true,
    );
  });
});

describe("sizes to buy", () => {
  test("are ranked as reamers of their limits, the others fall out", () => {
    const wide = [journal(0.87385, 0.87395)]; // window 0.87475 to 0.87545
    const sizes = sizesToBuy({ low: 0.86 * inch, high: 0.89 * inch });
    const ranked = known(
      rankReamers(
        wide,
        sizes.map(({ limits }) => ({
          size: { kind: "written", ...limits },
          cuts: [{ oversize: assumed }],
        })),
      ),
    );
    const serving = ranked
      .filter(({ serves }) => serves)
      .map(({ index }) => sizes[index]?.designation);
    expect(serving).toEqual(["7/8"]);
  });
});

describe("the size to have ground", () => {
  test("the middle of the sizes whose whole cut is in", () => {
    const ground = known(sizeToGrind(line, [{ oversize: over(0, 0.2) }]));
    expect(ground.size / inch).toBeCloseTo(0.87549, 9);
    expect((ground.limits?.low ?? NaN) / inch).toBeCloseTo(0.8753, 9);
    expect((ground.limits?.high ?? NaN) / inch).toBeCloseTo(0.87568, 9);
  });

  test("where no size is sure, the one whose likeliest cut is in the middle, without limits", () => {
    const ground = known(sizeToGrind(line, [{ oversize: over(0, 1) }]));
    expect(ground.limits).toBeUndefined();
    expect(ground.size / inch).toBeCloseTo(0.87559 - 0.0005, 9);
  });

  test("its limits cut to the window's ends, heat and two materials included", () => {
    const oversize = fc
      .tuple(fc.integer({ min: -3, max: 3 }), fc.nat(2))
      .map(([low, width]) => over(low / 10, (low + width) / 10));
    const temperature = fc.double({ min: -10, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        oversize,
        oversize,
        temperature,
        temperature,
        (first, second, part, tool) => {
          const heat = {
            partTemperature: part,
            partExpansion: 19e-6,
            toolTemperature: tool,
            toolExpansion: 11.5e-6,
          };
          const cuts = [
            { oversize: first, heat },
            { oversize: second, heat },
          ];
          const wide = [journal(0.874, 0.874), journal(0.8741, 0.8741)];
          const ground = sizeToGrind(wide, cuts);
          if (!ground.valid) return;
          const { size, limits } = ground.value;
          const at = (tool: number) => {
            const [one] = known(
              rankReamers(wide, [
                { size: { kind: "written", low: tool, high: tool }, cuts },
              ]),
            );
            const within = (one?.cuts ?? []).map((cut, index) => {
              const one = wide[index] ?? journal(1, 1);
              return Math.min(
                cut.low - (one.greatest + one.wanted.low),
                one.least + one.wanted.high - cut.high,
              );
            });
            return { serves: one?.serves, room: Math.min(...within) };
          };
          expect(at(size).serves).toBe(true);
          if (limits) {
            expect(at(limits.low).room).toBeCloseTo(0, 12);
            expect(at(limits.high).room).toBeCloseTo(0, 12);
            expect(0 <= at(size).room).toBe(true);
          }
        },
      ),
    );
  });

  test("refuses a line that no one size serves", () => {
    const apart = [journal(0.8742, 0.8743), journal(0.8755, 0.8755)];
    expect(refusal(sizeToGrind(apart, [{ oversize: assumed }]))).toContain(
      "no one size",
    );
    expect(refusal(sizeToGrind([], [{ oversize: assumed }]))).toContain(
      "no bore",
    );
    expect(refusal(sizeToGrind(line, []))).toContain("neither one for all");
  });
});

test("the order is total: any two lists of the same reamers come out alike", () => {
  const anyReamer = fc
    .tuple(
      fc.integer({ min: 8745, max: 8765 }),
      fc.integer({ min: 0, max: 3 }),
      fc.boolean(),
    )
    .map(([size, spread, written]) =>
      reamer(size / 1e4, written ? over(0, spread / 10) : assumed),
    );
  fc.assert(
    fc.property(
      fc.uniqueArray(anyReamer, {
        maxLength: 12,
        selector: (one) => JSON.stringify(one),
      }),
      (reamers) => {
        const order = (list: readonly ReamerToRank[]) =>
          known(rankReamers(line, list)).map(({ serves, chance, margin }) => [
            serves,
            chance?.toFixed(6),
            margin.metres.toFixed(12),
          ]);
        expect(order([...reamers].reverse())).toEqual(order(reamers));
      },
    ),
  );
});
