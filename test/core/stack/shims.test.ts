// The choice of shims: against every pack there is, and each rule of ties by itself.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chooseShims } from "../../../server/core/stack/shims.ts";
import { got } from "../readings/got.ts";

const mm = 1e-3;
const sure = (value: number) => ({ low: value * mm, high: value * mm });
const between = (low: number, high: number) => ({
  low: low * mm,
  high: high * mm,
});
const choose = (float: number, want: [number, number], sizes: number[]) =>
  chooseShims(
    sure(float),
    between(...want),
    sizes.map((size) => size * mm),
  );

/** In whole micrometres, so that sums are exact. */
const micrometres = (max: number) => fc.integer({ min: 1, max });

test("no pack of as few shims comes nearer, and no pack of fewer serves, of all there are", () => {
  fc.assert(
    fc.property(
      micrometres(3000),
      fc.nat(80),
      micrometres(400),
      micrometres(300),
      fc.uniqueArray(micrometres(1000), { minLength: 1, maxLength: 5 }),
      (low, spread, wantLow, wantWidth, sizes) => {
        const high = low + spread;
        const wantHigh = wantLow + wantWidth;
        const answer = chooseShims(
          between(low / 1000, high / 1000),
          between(wantLow / 1000, wantHigh / 1000),
          sizes.map((size) => (size / 1000) * mm),
        );
        // every pack, by count, with no cutting of branches
        let packs: number[] = [0];
        let best: { count: number; off: number } | undefined;
        for (let count = 0; count <= 6 && best === undefined; count++) {
          for (const sum of packs) {
            if (low - sum < wantLow || wantHigh < high - sum) continue;
            const off = Math.abs(low + high - 2 * sum - wantLow - wantHigh);
            if (best === undefined || off < best.off) best = { count, off };
          }
          packs = [
            ...new Set(packs.flatMap((sum) => sizes.map((s) => sum + s))),
          ];
        }
        expect(answer.valid).toBe(best !== undefined);
        if (!answer.valid || best === undefined) return;
        const { shims, sum, float } = answer.value;
        expect(shims.length).toBe(best.count);
        expect(sum).toBeCloseTo(
          shims.reduce((a, b) => a + b, 0),
          12,
        );
        const ours = Math.abs(float.low + float.high) * 1e6;
        expect(Math.abs(ours - wantLow - wantHigh)).toBeCloseTo(best.off, 3);
      },
    ),
    { numRuns: 300 },
  );
});

describe("the rules, one by one", () => {
  test("no shim where the float is right without", () => {
    expect(got(choose(0.15, [0.1, 0.2], [0.1, 0.2])).shims).toEqual([]);
  });
  test("fewest before nearest: one shim off the middle beats two on it", () => {
    expect(got(choose(0.45, [0.05, 0.25], [0.2, 0.15])).shims).toEqual([
      0.2 * mm,
    ]);
    expect(got(choose(0.45, [0.05, 0.25], [0.22, 0.15])).shims).toEqual([
      0.22 * mm,
    ]);
  });
  test("then the nearest to the middle", () => {
    expect(got(choose(0.5, [0.1, 0.3], [0.25, 0.29])).shims).toEqual([
      0.29 * mm,
    ]);
  });
  test("then the lesser sum, which leaves more float", () => {
    expect(got(choose(0.5, [0.1, 0.3], [0.25, 0.35])).shims).toEqual([
      0.25 * mm,
    ]);
  });
  test("then the thickest shim: 0.4 with 0.1 rather than 0.25 twice", () => {
    expect(got(choose(0.6, [0.05, 0.15], [0.1, 0.25, 0.4])).shims).toEqual([
      0.4 * mm,
      0.1 * mm,
    ]);
  });
  test("repeats are allowed, thickest first", () => {
    expect(got(choose(1.3, [0.05, 0.15], [0.2, 0.5])).shims).toEqual([
      0.5 * mm,
      0.5 * mm,
      0.2 * mm,
    ]);
  });
  test("the limits themselves are in, to a tenth of a nanometre", () => {
    expect(got(choose(0.3, [0.1, 0.15], [0.2])).float.low).toBeCloseTo(
      1e-4,
      12,
    );
    expect(choose(0.3, [0.1000002, 0.15], [0.2]).valid).toBe(false);
  });
});

describe("refusals", () => {
  const because = (answer: ReturnType<typeof choose>) =>
    answer.valid ? "" : answer.because;
  test("none that will do", () => {
    expect(because(choose(0.5, [0.1, 0.12], [0.3]))).toMatch(/no pack/);
    expect(because(choose(0.05, [0.1, 0.2], [0.1]))).toMatch(/no pack/);
    expect(because(choose(0.5, [0.1, 0.2], []))).toMatch(/no pack/);
    // seven would, six is the most
    expect(because(choose(0.75, [0.04, 0.06], [0.1]))).toMatch(/no pack/);
    expect(got(choose(0.65, [0.04, 0.06], [0.1])).shims.length).toBe(6);
  });
  test("a float wider than what is wanted", () => {
    expect(
      because(chooseShims(between(0.3, 0.5), between(0.1, 0.2), [0.1 * mm])),
    ).toMatch(/varies by more/);
  });
  test("shims and limits that are none", () => {
    expect(choose(0.5, [0.2, 0.1], [0.1]).valid).toBe(false);
    expect(choose(0.5, [0.1, 0.2], [0.1, -0.1]).valid).toBe(false);
    expect(choose(0.5, [0.1, 0.2], [NaN]).valid).toBe(false);
    expect(choose(NaN, [0.1, 0.2], [0.1]).valid).toBe(false);
    const many = Array.from({ length: 31 }, (_, i) => 0.1 + i / 100);
    expect(choose(0.5, [0.1, 0.2], many).valid).toBe(false);
  });
});
