import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clearance } from "../../../server/core/line/clearance.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;

describe("clearance", () => {
  test("a bore of 0.8110 in over journals of 0.80995 and 0.8097 in leaves 1.05 and 1.3 thou (common practice, no source)", () => {
    const bore = { smallest: 0.811 * inch, largest: 0.811 * inch };
    const over = (journal: number) =>
      known(
        clearance(bore, { smallest: journal * inch, largest: journal * inch }),
      );
    expect(over(0.80995).least / inch).toBeCloseTo(0.00105, 12);
    expect(over(0.8097).least / inch).toBeCloseTo(0.0013, 12);
  });

  test("largest journal and smallest bore set the least, the means the mean", () => {
    const bore = { smallest: 22.23e-3, largest: 22.25e-3, mean: 22.235e-3 };
    const journal = { smallest: 22.2e-3, largest: 22.21e-3 };
    const { least, mean, most } = known(clearance(bore, journal));
    expect(least).toBeCloseTo(20e-6, 12);
    expect(mean).toBeCloseTo(30e-6, 12);
    expect(most).toBeCloseTo(50e-6, 12);
  });

  test("radial roundness takes from the least clearance at both parts and leaves the rest", () => {
    const bare = known(
      clearance(
        { smallest: 0.03, largest: 0.03 },
        { smallest: 0.02997, largest: 0.02997 },
      ),
    );
    const round = known(
      clearance(
        { smallest: 0.03, largest: 0.03, roundness: 4e-6 },
        { smallest: 0.02997, largest: 0.02997, roundness: 3e-6 },
      ),
    );
    expect(bare.least - round.least).toBeCloseTo(7e-6, 14);
    expect(round.mean).toBe(bare.mean);
    expect(round.most).toBe(bare.most);
  });

  test("a three-lobed journal of constant width is larger by its radial roundness: the surrounding circle says so", () => {
    // constant-width curve with support function h = R + a·cos 3θ: every two-point diameter is 2R, radii vary by 2a
    const [radius, a] = [10, 0.01];
    const points = Array.from({ length: 3600 }, (_, step) => {
      const angle = (step * Math.PI) / 1800;
      const h = radius + a * Math.cos(3 * angle);
      const slope = -3 * a * Math.sin(3 * angle);
      return Math.hypot(h, slope);
    });
    const surrounding = 2 * Math.max(...points);
    const roundness = Math.max(...points) - Math.min(...points);
    expect(surrounding - 2 * radius).toBeCloseTo(roundness, 4);
  });

  test("refuses what is no size", () => {
    const bore = { smallest: 0.03, largest: 0.03 };
    expect(
      refusal(clearance(bore, { smallest: 0.02, largest: 0.01 })),
    ).toContain("larger to the smaller");
    expect(refusal(clearance({ smallest: 0, largest: 1 }, bore))).toContain(
      "not above zero",
    );
    expect(refusal(clearance({ ...bore, mean: 0.04 }, bore))).toContain(
      "outside its sizes",
    );
    expect(refusal(clearance({ ...bore, roundness: -1e-6 }, bore))).toContain(
      "roundness",
    );
    expect(refusal(clearance({ smallest: NaN, largest: 1 }, bore))).toContain(
      "not a number",
    );
  });

  test("least ≤ mean ≤ most, and the same in inches as in millimetres", () => {
    const sizes = fc
      .tuple(fc.integer({ min: 1e4, max: 1e7 }), fc.nat(1e4))
      .map(([low, width]) => ({
        smallest: low,
        largest: low + width,
      }));
    fc.assert(
      fc.property(sizes, sizes, (bore, journal) => {
        const scaled = (unit: number) => {
          const of = (one: typeof bore) => ({
            smallest: one.smallest * unit,
            largest: one.largest * unit,
          });
          return known(clearance(of(bore), of(journal)));
        };
        const tenths = scaled(2.54e-6);
        expect(tenths.least <= tenths.mean && tenths.mean <= tenths.most).toBe(
          true,
        );
        const microns = scaled(1e-6);
        expect(tenths.mean / 2.54).toBeCloseTo(microns.mean, 12);
        expect(tenths.least / 2.54).toBeCloseTo(microns.least, 12);
      }),
    );
  });
});
