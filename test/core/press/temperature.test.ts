// Press fits hot and cold: against finite elements with thermal strain, at 20 °C, at release; and dropping bushes in.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  bushTemperatureToDropIn,
  caseTemperatureToDropIn,
  temperaturesToDropIn,
} from "../../../server/core/press/drop-in.ts";
import { closure } from "../../../server/core/press/ring.ts";
import {
  pressAtTemperature,
  releaseTemperature,
  sizeAtTemperature,
} from "../../../server/core/press/temperature.ts";
import { got } from "../readings/got.ts";
import { pressTogether } from "./elastic-rings.ts";
import { anyPair } from "./pairs.ts";

const bronze = 18e-6;
const aluminium = 21.5e-6;
const iron = 11.4e-6;
const expansion = fc.double({ min: 9e-6, max: 30e-6, noNaN: true });
const warmth = fc.double({ min: -40, max: 150, noNaN: true });

describe("the press at temperature", () => {
  test("finite elements with thermal strain give the same bore and interference", () => {
    fc.assert(
      fc.property(
        anyPair,
        expansion,
        expansion,
        warmth,
        warmth,
        (pair, bushExpansion, caseExpansion, bush, housing) => {
          const boss = Math.min(pair.boss, 4 * pair.od);
          const ring = { ...pair, boss };
          const delta = 3e-3 * pair.od;
          const at = (hot: boolean) =>
            pressTogether(
              {
                innerRadius: pair.bore / 2,
                outerRadius: pair.od / 2,
                ...pair.bushMaterial,
                freeStrain: hot ? bushExpansion * (bush - 20) : 0,
              },
              {
                innerRadius: pair.od / 2,
                outerRadius: boss / 2,
                ...pair.caseMaterial,
                freeStrain: hot ? caseExpansion * (housing - 20) : 0,
              },
              delta / 2,
            );
          const cold = at(false);
          const hot = at(true);
          fc.pre(0 < hot.pressure);
          const press = {
            bore: pair.bore + 2 * cold.boreMoves,
            od: pair.od,
            interference: delta,
            closure: got(closure(ring)),
            bushExpansion,
            caseExpansion,
          };
          const state = got(pressAtTemperature(press, bush, housing));
          expect(state.released).toBe(false);
          expect(
            Math.abs(state.interference / delta - hot.pressure / cold.pressure),
          ).toBeLessThan(1e-3);
          // left out is the growth of the closure itself, C·δ20·αb·(Tb−20); the elements' own error is the rest
          const left =
            press.closure * delta * bushExpansion * Math.abs(bush - 20);
          expect(
            Math.abs(state.bore - (pair.bore + 2 * hot.boreMoves)),
          ).toBeLessThan(1.01 * left + 1e-4 * press.closure * delta);
        },
      ),
      { numRuns: 60 },
    );
  });

  const press = {
    bore: 0.02225,
    od: 0.0254,
    interference: 12e-6,
    closure: 0.62,
    bushExpansion: bronze,
    caseExpansion: aluminium,
  };

  test("at 20 °C nothing changes", () => {
    expect(got(pressAtTemperature(press, 20, 20))).toEqual({
      interference: press.interference,
      bore: press.bore,
      released: false,
    });
  });

  test("bronze in aluminium loosens as it warms and lets go at the release temperature", () => {
    const release = got(releaseTemperature(press));
    expect(
      got(pressAtTemperature(press, release - 1, release - 1)).released,
    ).toBe(false);
    const after = got(pressAtTemperature(press, release + 1, release + 1));
    expect(after.released).toBe(true);
    expect(after.interference).toBe(0);
    // a released bush is its own free size, grown
    const free = press.bore + press.closure * press.interference;
    expect(after.bore).toBeCloseTo(
      press.bore * (1 + bronze * (release + 1 - 20)) + free - press.bore,
      12,
    );
  });

  test("bronze in iron tightens: the bore grows less than bronze does, and there is no release", () => {
    const inIron = { ...press, caseExpansion: iron };
    const hot = got(pressAtTemperature(inIron, 80, 80));
    expect(hot.interference).toBeGreaterThan(press.interference);
    expect(hot.bore).toBeLessThan(press.bore * (1 + bronze * 60));
    const answer = releaseTemperature(inIron);
    expect(answer.valid).toBe(false);
    expect(!answer.valid && answer.because).toMatch(/heat does not loosen/);
  });

  test("the same metal throughout at one temperature keeps its interference", () => {
    fc.assert(
      fc.property(warmth, expansion, (t, alpha) => {
        const same = { ...press, bushExpansion: alpha, caseExpansion: alpha };
        const state = got(pressAtTemperature(same, t, t));
        expect(state.interference).toBeCloseTo(press.interference, 12);
        expect(state.bore).toBeCloseTo(press.bore * (1 + alpha * (t - 20)), 10);
        expect(releaseTemperature(same).valid).toBe(false);
      }),
    );
  });

  test("a journal, or a bore that has no bush, just grows", () => {
    expect(got(sizeAtTemperature(0.025, 12e-6, 120))).toBeCloseTo(0.02503, 12);
    expect(got(sizeAtTemperature(0.025, 12e-6, 20))).toBe(0.025);
  });

  test("an expansion is from none up to a thousandth a degree, which no metal reaches", () => {
    for (const [alpha, holds] of [
      [-1e-12, false],
      [0, true],
      [0.999e-3, true],
      [1e-3, false],
      [NaN, false],
    ] as const) {
      expect([alpha, sizeAtTemperature(0.025, alpha, 21).valid]).toEqual([
        alpha,
        holds,
      ]);
      const grows = { ...press, caseExpansion: alpha };
      expect([alpha, pressAtTemperature(grows, 20, 20).valid]).toEqual([
        alpha,
        holds,
      ]);
    }
    // of none nothing grows
    expect(got(sizeAtTemperature(0.025, 0, 120))).toBe(0.025);
  });

  test("a bush has a wall: its bore is more than nothing and less than its outside", () => {
    const because = "a diameter is missing or the bush has no wall";
    for (const bore of [0, -0.01, press.od, NaN])
      expect(pressAtTemperature({ ...press, bore }, 20, 20)).toEqual({
        valid: false,
        because,
      });
    for (const bore of [1e-6, press.od - 1e-6])
      expect(pressAtTemperature({ ...press, bore }, 20, 20).valid).toBe(true);
  });

  test("what is out of range is refused", () => {
    expect(pressAtTemperature(press, 301, 20).valid).toBe(false);
    expect(pressAtTemperature(press, 20, NaN).valid).toBe(false);
    expect(pressAtTemperature({ ...press, bore: 0.03 }, 20, 20).valid).toBe(
      false,
    );
    expect(
      pressAtTemperature({ ...press, interference: -1e-6 }, 20, 20).valid,
    ).toBe(false);
    expect(pressAtTemperature({ ...press, closure: 3 }, 20, 20).valid).toBe(
      false,
    );
    expect(
      pressAtTemperature({ ...press, bushExpansion: 0.01 }, 20, 20).valid,
    ).toBe(false);
    expect(sizeAtTemperature(-1, 12e-6, 20).valid).toBe(false);
    expect(sizeAtTemperature(1, 12e-6, -100).valid).toBe(false);
    expect(sizeAtTemperature(1, 12, 20).valid).toBe(false);
    expect(releaseTemperature({ ...press, interference: 1e-3 }).valid).toBe(
      false,
    );
  });
});

describe("dropping in", () => {
  const sizes = {
    od: 1.00115 * 0.0254,
    hole: 1.0002 * 0.0254,
    gap: 1e-3 * 0.0254,
    bushExpansion: bronze,
    caseExpansion: aluminium,
  };
  const gapAt = (bush: number, housing: number) =>
    sizes.hole * (1 + aluminium * (housing - 20)) -
    sizes.od * (1 + bronze * (bush - 20));

  test("at the temperatures answered, the gap is as asked", () => {
    const warm = got(caseTemperatureToDropIn(sizes));
    expect(gapAt(20, warm)).toBeCloseTo(sizes.gap, 12);
    const little = { ...sizes, gap: 0.5e-3 * 0.0254 };
    const cold = got(bushTemperatureToDropIn(little));
    expect(gapAt(cold, 20)).toBeCloseTo(little.gap, 12);
    const both = got(temperaturesToDropIn(sizes, 80));
    expect(both.case).toBe(80);
    expect(both.bush).toBeLessThan(20);
    expect(gapAt(both.bush, both.case)).toBeCloseTo(sizes.gap, 12);
  });

  test("freezing the bush lets the case stay cooler", () => {
    expect(got(caseTemperatureToDropIn(sizes, -78))).toBeLessThan(
      got(caseTemperatureToDropIn(sizes)),
    );
  });

  test("a case that needs less than its limit is heated no further, and the bush stays as it is", () => {
    const { case: housing, bush } = got(temperaturesToDropIn(sizes, 200));
    expect(housing).toBe(got(caseTemperatureToDropIn(sizes)));
    expect(bush).toBe(20);
  });

  test("a bush that drops in anyway needs nothing", () => {
    const loose = { ...sizes, od: 0.025 };
    expect(got(caseTemperatureToDropIn(loose))).toBe(20);
    expect(got(bushTemperatureToDropIn(loose))).toBe(20);
  });

  test("too hot, too cold, or no such thing is refused", () => {
    const tight = { ...sizes, od: 1.01 * 0.0254 };
    expect(caseTemperatureToDropIn(tight).valid).toBe(false);
    expect(bushTemperatureToDropIn(tight).valid).toBe(false);
    expect(temperaturesToDropIn(tight, 120).valid).toBe(false);
    expect(temperaturesToDropIn(sizes, NaN).valid).toBe(false);
    expect(caseTemperatureToDropIn(sizes, -196).valid).toBe(false);
    expect(bushTemperatureToDropIn(sizes, 400).valid).toBe(false);
    expect(caseTemperatureToDropIn({ ...sizes, gap: -1 }).valid).toBe(false);
    expect(caseTemperatureToDropIn({ ...sizes, caseExpansion: 0 }).valid).toBe(
      false,
    );
    expect(caseTemperatureToDropIn({ ...sizes, hole: NaN }).valid).toBe(false);
  });
});
