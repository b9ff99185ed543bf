// From sizes to interference and bore, and back to the bush to make; smoothing of the two surfaces.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  boreAfterPress,
  bushOdToMake,
  effectiveInterference,
  interferenceBand,
} from "../../../server/core/press/interference.ts";
import { smoothing } from "../../../server/core/press/smoothing.ts";
import { minimalStandard } from "../../../server/core/stack/draws.ts";
import { got } from "../readings/got.ts";

const inch = 0.0254;
const sizes = {
  id: { low: 0.8715 * inch, high: 0.872 * inch },
  od: { low: 1.0011 * inch, high: 1.0012 * inch },
  hole: { low: 1.00018 * inch, high: 1.00021 * inch },
};
const C = { low: 0.62, high: 0.62 };

const band = (min: number, max: number) =>
  fc
    .tuple(
      fc.double({ min, max, noNaN: true }),
      fc.double({ min, max, noNaN: true }),
    )
    .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }));

describe("bore after press", () => {
  test("every combination of sizes and closures lies within the worst case, and its corners reach it", () => {
    fc.assert(
      fc.property(
        band(0.02, 0.0201),
        band(0.025, 0.0251),
        band(0.025, 0.0251),
        band(0, 1.05),
        fc.double({ min: 0, max: 1e-5, noNaN: true }),
        (id, od, hole, closure, loss) => {
          const { worst, nominal } = got(
            boreAfterPress({ id, od, hole }, closure, loss),
          );
          const corners = [id.low, id.high].flatMap((i) =>
            [od.low, od.high].flatMap((o) =>
              [hole.low, hole.high].flatMap((h) =>
                [closure.low, closure.high].map(
                  (c) => i - c * Math.max(0, o - h - loss),
                ),
              ),
            ),
          );
          expect(Math.min(...corners)).toBeCloseTo(worst.low, 12);
          expect(Math.max(...corners)).toBeCloseTo(worst.high, 12);
          expect(nominal).toBeGreaterThanOrEqual(worst.low - 1e-12);
          expect(nominal).toBeLessThanOrEqual(worst.high + 1e-12);
        },
      ),
    );
  });

  test("root-sum-square agrees with sizes drawn at random, their limits at three deviations", () => {
    const { rootSumSquare, nominal } = got(boreAfterPress(sizes, C, 0));
    const uniform = minimalStandard(7);
    // twelve even numbers less six: near enough normal, and not the generator's own transform
    const normal = () => {
      let sum = -6;
      for (let i = 0; i < 12; i++) sum += uniform();
      return sum;
    };
    const draw = ({ low, high }: { low: number; high: number }) =>
      (low + high) / 2 + ((high - low) / 6) * normal();
    const bores = Array.from(
      { length: 20000 },
      () =>
        draw(sizes.id) - C.low * Math.max(0, draw(sizes.od) - draw(sizes.hole)),
    );
    const mean = bores.reduce((a, b) => a + b) / bores.length;
    const deviation = Math.sqrt(
      bores.reduce((sum, b) => sum + (b - mean) ** 2, 0) / bores.length,
    );
    const { low, high } = got(rootSumSquare);
    expect(mean).toBeCloseTo(nominal, 7);
    expect(Math.abs((high - low) / (6 * deviation) - 1)).toBeLessThan(0.02);
  });

  test("root-sum-square holds what sizes reach at either bound of a wide closure, and no more", () => {
    const wide = { low: 0.4, high: 0.9 };
    const { low, high } = got(
      got(boreAfterPress(sizes, wide, 0)).rootSumSquare,
    );
    const ends = [wide.low, wide.high].map((c) => {
      const exact = got(boreAfterPress(sizes, { low: c, high: c }, 0));
      return got(exact.rootSumSquare);
    });
    expect(low).toBeCloseTo(Math.min(...ends.map((end) => end.low)), 12);
    expect(high).toBeCloseTo(Math.max(...ends.map((end) => end.high)), 12);
  });

  test("root-sum-square lies within the worst case, and is refused where the bush may be loose", () => {
    const { worst, rootSumSquare } = got(boreAfterPress(sizes, C, 0));
    const rss = got(rootSumSquare);
    expect(worst.low).toBeLessThan(rss.low);
    expect(rss.high).toBeLessThan(worst.high);
    const loose = { ...sizes, od: { low: 1 * inch, high: 1.0012 * inch } };
    const answer = got(boreAfterPress(loose, C, 0));
    expect(answer.rootSumSquare.valid).toBe(false);
    expect(answer.worst.high).toBe(sizes.id.high);
  });

  test("past the elastic limit it says to measure", () => {
    const limit = 1.0e-3 * inch;
    const answer = boreAfterPress(sizes, C, 0, limit);
    expect(answer.valid).toBe(false);
    expect(!answer.valid && answer.because).toMatch(/measure after pressing/);
    expect(boreAfterPress(sizes, C, 2e-6, limit).valid).toBe(true);
  });

  test("reversed limits, negative closure or smoothing are refused", () => {
    const reversed = { low: 2, high: 1 };
    expect(boreAfterPress({ ...sizes, id: reversed }, C, 0).valid).toBe(false);
    expect(boreAfterPress({ ...sizes, od: reversed }, C, 0).valid).toBe(false);
    expect(boreAfterPress(sizes, { low: -0.1, high: 1 }, 0).valid).toBe(false);
    expect(boreAfterPress(sizes, C, -1e-6).valid).toBe(false);
    expect(boreAfterPress(sizes, C, NaN).valid).toBe(false);
  });

  test("a bush without a bore or without a wall is refused", () => {
    const { id, od, hole } = sizes;
    for (const [wrong, isRefused] of [
      [{ id: { low: 0, high: id.high } }, true],
      [{ id: { low: -1e-3, high: id.high } }, true],
      [{ id: { low: id.low, high: od.low } }, true],
      [{ id: { low: id.low, high: od.low - 1e-6 } }, false],
      [{ hole: { low: 0, high: hole.high } }, true],
    ] as const) {
      const answer = boreAfterPress({ ...sizes, ...wrong }, C, 0);
      expect(answer.valid).toBe(!isRefused);
      if (!answer.valid) expect(answer.because).toMatch(/no wall/u);
    }
  });
});

describe("the bush to make", () => {
  test("whatever od in its band meets whatever hole within the wanted interference, and no wider band would", () => {
    fc.assert(
      fc.property(band(0.0254, 0.02541), band(1e-5, 5e-5), (hole, want) => {
        const answer = bushOdToMake(hole, want);
        const narrow = hole.high - hole.low <= want.high - want.low;
        expect(answer.valid || !narrow).toBe(true);
        if (!answer.valid) return;
        const made = got(interferenceBand(answer.value, hole));
        expect(made.low).toBeCloseTo(want.low, 12);
        expect(made.high).toBeCloseTo(want.high, 12);
      }),
    );
  });
  test("the winch: hole read 1.0002 in, wanted 0.6 to 1.2 thou, is 1.0008 to 1.0014 in", () => {
    const hole = { low: 1.0002 * inch, high: 1.0002 * inch };
    const want = { low: 0.0006 * inch, high: 0.0012 * inch };
    const { low, high } = got(bushOdToMake(hole, want));
    expect(low / inch).toBeCloseTo(1.0008, 9);
    expect(high / inch).toBeCloseTo(1.0014, 9);
  });
  test("a hole that varies too much has no bush", () => {
    expect(
      bushOdToMake({ low: 0.025, high: 0.0251 }, { low: 1e-5, high: 3e-5 })
        .valid,
    ).toBe(false);
  });
});

describe("smoothing", () => {
  const rz = (value: number) => ({ parameter: "Rz", value }) as const;
  const ra = (value: number) => ({ parameter: "Ra", value }) as const;
  test("0.4 of both Rz", () => {
    const now = got(smoothing(rz(6.3e-6), rz(10e-6)));
    expect(now.loss).toBeCloseTo(6.52e-6, 12);
    expect(now.fromRa).toBe(false);
    expect([now.low, now.high]).toEqual([now.loss, now.loss]);
  });
  test("from Ra by a stated ratio, with its ends", () => {
    const { loss, low, high, fromRa } = got(smoothing(ra(0.8e-6), rz(6.3e-6)));
    expect(fromRa).toBe(true);
    expect(loss).toBeCloseTo(0.4 * (6 * 0.8e-6 + 6.3e-6), 12);
    expect(low).toBeCloseTo(0.4 * (4 * 0.8e-6 + 6.3e-6), 12);
    expect(high).toBeCloseTo(0.4 * (7 * 0.8e-6 + 6.3e-6), 12);
  });
  test("a finish that is none is refused", () => {
    expect(smoothing(rz(-1e-6), rz(1e-6)).valid).toBe(false);
    expect(smoothing(rz(NaN), rz(1e-6)).valid).toBe(false);
    expect(smoothing(rz(2e-4), rz(1e-6)).valid).toBe(false);
  });
  test("never takes more than there is", () => {
    expect(effectiveInterference(5e-6, 8e-6)).toBe(0);
    expect(effectiveInterference(-5e-6, 0)).toBe(0);
    expect(effectiveInterference(2e-5, 8e-6)).toBeCloseTo(1.2e-5, 15);
  });
});
