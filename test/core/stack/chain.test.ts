// End float: worst case by corners, root-sum-square against chains drawn at random, growth, refusals.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  endFloat,
  endFloatAtTemperature,
  type Member,
} from "../../../server/core/stack/chain.ts";
import { drawEndFloats } from "../../../server/core/stack/draws.ts";
import { got } from "../readings/got.ts";

const member: fc.Arbitrary<Member> = fc
  .record({
    sign: fc.constantFrom<1 | -1>(1, -1),
    low: fc.double({ min: 0, max: 0.2, noNaN: true }),
    width: fc.double({ min: 0, max: 2e-4, noNaN: true }),
  })
  .map(({ sign, low, width }) => ({
    sign,
    length: { low, high: low + width },
  }));
const chain = fc.array(member, { minLength: 1, maxLength: 7 });

const winchChain: readonly Member[] = [
  { sign: 1, length: { low: 0.12, high: 0.1202 } },
  { sign: -1, length: { low: 0.0799, high: 0.08 } },
  { sign: -1, length: { low: 0.0199, high: 0.02 } },
  { sign: -1, length: { low: 0.0198, high: 0.0199 } },
];

describe("cold", () => {
  test("every corner of the members' limits lies within the worst case, and two reach it", () => {
    fc.assert(
      fc.property(chain, (members) => {
        const { worst, nominal, rootSumSquare } = got(endFloat(members));
        let corners = [0];
        for (const { sign, length } of members)
          corners = corners.flatMap((sum) => [
            sum + sign * length.low,
            sum + sign * length.high,
          ]);
        expect(worst.low).toBeCloseTo(Math.min(...corners), 12);
        expect(worst.high).toBeCloseTo(Math.max(...corners), 12);
        expect(rootSumSquare.low).toBeGreaterThanOrEqual(worst.low - 1e-15);
        expect(rootSumSquare.high).toBeLessThanOrEqual(worst.high + 1e-15);
        expect((worst.low + worst.high) / 2).toBeCloseTo(nominal, 12);
      }),
    );
  });

  test("turning every sign turns the float", () => {
    fc.assert(
      fc.property(chain, (members) => {
        const { worst } = got(endFloat(members));
        const turned = members.map(({ sign, length }): Member => ({
          sign: sign === 1 ? -1 : 1,
          length,
        }));
        const other = got(endFloat(turned));
        expect(other.worst.low).toBeCloseTo(-worst.high, 14);
      }),
    );
  });

  test("read members leave nothing open", () => {
    const read = winchChain.map(({ sign, length }): Member => ({
      sign,
      length: { low: length.low, high: length.low },
    }));
    const { nominal, worst, rootSumSquare } = got(endFloat(read));
    expect(nominal).toBeCloseTo(0.0004, 12);
    expect(worst).toEqual({ low: nominal, high: nominal });
    expect(rootSumSquare).toEqual(worst);
  });
});

describe("drawn at random", () => {
  const drawing = { seed: 20261102, draws: 20000, shape: "normal" } as const;

  test("normal lengths spread as root-sum-square says", () => {
    const { nominal, rootSumSquare } = got(endFloat(winchChain));
    const drawn = got(drawEndFloats(winchChain, drawing));
    const reach = rootSumSquare.high - nominal;
    // standard errors at 20000 draws: of the mean σ/141, of the deviation σ/200, of such a far quantile about σ/15
    expect(Math.abs(drawn.mean - nominal)).toBeLessThan(reach / 3 / 35);
    expect(Math.abs((3 * drawn.deviation) / reach - 1)).toBeLessThan(0.02);
    expect(Math.abs((drawn.band.high - nominal) / reach - 1)).toBeLessThan(0.1);
    expect(Math.abs((nominal - drawn.band.low) / reach - 1)).toBeLessThan(0.1);
  });

  test("even lengths spread by √3 more, and never past the worst case", () => {
    const { nominal, rootSumSquare, worst } = got(endFloat(winchChain));
    const drawn = got(drawEndFloats(winchChain, { ...drawing, shape: "even" }));
    const reach = rootSumSquare.high - nominal;
    expect(
      Math.abs((3 * drawn.deviation) / reach / Math.sqrt(3) - 1),
    ).toBeLessThan(0.02);
    expect(worst.low).toBeLessThanOrEqual(drawn.band.low);
    expect(drawn.band.high).toBeLessThanOrEqual(worst.high);
  });

  test("the chance of a wanted float: half below the middle, nearly all within three deviations", () => {
    const { nominal, rootSumSquare } = got(endFloat(winchChain));
    const chance = (low: number, high: number) =>
      got(drawEndFloats(winchChain, { ...drawing, want: { low, high } }))
        .chance;
    expect(chance(nominal, 1)).toBeCloseTo(0.5, 1);
    expect(Math.abs((chance(nominal, 1) ?? NaN) - 0.5)).toBeLessThan(0.015);
    const all = chance(rootSumSquare.low, rootSumSquare.high) ?? NaN;
    expect(Math.abs(all - 0.9973)).toBeLessThan(0.002);
    expect(got(drawEndFloats(winchChain, drawing)).chance).toBeUndefined();
  });

  test("the same seed draws the same, another seed another", () => {
    const once = got(drawEndFloats(winchChain, drawing));
    expect(got(drawEndFloats(winchChain, drawing))).toEqual(once);
    expect(
      got(drawEndFloats(winchChain, { ...drawing, seed: 2 })).mean,
    ).not.toBe(once.mean);
  });

  test("seeds, draws and wants out of range are refused", () => {
    const valid = (change: object) =>
      drawEndFloats(winchChain, { ...drawing, ...change }).valid;
    expect(valid({ seed: 0 })).toBe(false);
    expect(valid({ seed: 1.5 })).toBe(false);
    expect(valid({ seed: 2147483647 })).toBe(false);
    expect(valid({ draws: 99 })).toBe(false);
    expect(valid({ draws: 2e6 })).toBe(false);
    expect(valid({ want: { low: 1, high: 0 } })).toBe(false);
    expect(drawEndFloats([], drawing).valid).toBe(false);
  });
});

describe("hot and cold", () => {
  const warm = (temperature: number, steel = temperature) =>
    winchChain.map((link, i) => ({
      ...link,
      expansion: i === 0 ? 21.5e-6 : 12.3e-6,
      temperature: i === 0 ? temperature : steel,
    }));

  test("at 20 °C nothing changes", () => {
    expect(got(endFloatAtTemperature(warm(20)))).toEqual(
      got(endFloat(winchChain)),
    );
  });

  test("a steel shaft in an aluminium case gains float as both warm, loses it as both cool", () => {
    const cold = got(endFloat(winchChain)).nominal;
    // 120.1 mm of aluminium against 119.75 mm of steel, 40 K up
    const gain = 40 * (0.1201 * 21.5e-6 - 0.11975 * 12.3e-6);
    expect(got(endFloatAtTemperature(warm(60))).nominal).toBeCloseTo(
      cold + gain,
      12,
    );
    expect(got(endFloatAtTemperature(warm(-20))).nominal).toBeLessThan(cold);
  });

  test("a shaft that warms before its case takes float away", () => {
    expect(got(endFloatAtTemperature(warm(20, 60))).nominal).toBeLessThan(
      got(endFloat(winchChain)).nominal,
    );
  });

  test("one metal at one temperature grows the float itself and nothing else", () => {
    const same = winchChain.map((link) => ({
      ...link,
      expansion: 12e-6,
      temperature: 120,
    }));
    const cold = got(endFloat(winchChain));
    const hot = got(endFloatAtTemperature(same));
    expect(hot.nominal).toBeCloseTo(cold.nominal * 1.0012, 12);
    expect(hot.worst.low).toBeCloseTo(cold.worst.low * 1.0012, 12);
  });

  test("what is out of range is refused", () => {
    const [link] = winchChain;
    if (link === undefined) throw new Error("the chain is empty");
    const at = (expansion: number, temperature: number) =>
      endFloatAtTemperature([{ ...link, expansion, temperature }]).valid;
    expect(at(12e-6, 20)).toBe(true);
    expect(at(NaN, 20)).toBe(false);
    expect(at(0.01, 20)).toBe(false);
    expect(at(12e-6, 400)).toBe(false);
    expect(at(12e-6, NaN)).toBe(false);
    expect(endFloatAtTemperature([]).valid).toBe(false);
    const reversed = { low: 2, high: 1 };
    expect(endFloat([{ sign: 1, length: reversed }]).valid).toBe(false);
    expect(endFloat([{ sign: 1, length: { low: NaN, high: 1 } }]).valid).toBe(
      false,
    );
  });
});
