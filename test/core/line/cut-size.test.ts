import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cutSize,
  type CutHeat,
  type Oversize,
  type ToolSize,
} from "../../../server/core/line/cut-size.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;
const thou = inch / 1000;
const none: Oversize = { kind: "assumed-zero" };

function one(size: number): ToolSize {
  return { kind: "written", low: size, high: size };
}

describe("what a reamer cuts", () => {
  test("one written size without oversize: itself, and it says what it assumed and doesn't know", () => {
    const cut = known(cutSize(one(0.811 * inch), none));
    expect([cut.low, cut.nominal, cut.high]).toEqual([
      0.811 * inch,
      0.811 * inch,
      0.811 * inch,
    ]);
    expect(cut.oversizeAssumed).toBe(true);
    expect(cut.spread).toBeUndefined();
  });

  test("a written oversize counts whole, as a rectangle for the deviation", () => {
    const cut = known(
      cutSize(one(0.8755 * inch), {
        kind: "written",
        low: 0.2 * thou,
        high: 0.4 * thou,
      }),
    );
    expect(cut.low / inch).toBeCloseTo(0.8757, 10);
    expect(cut.nominal / inch).toBeCloseTo(0.8758, 10);
    expect(cut.high / inch).toBeCloseTo(0.8759, 10);
    expect((cut.spread?.standardDeviation ?? NaN) / thou).toBeCloseTo(
      0.2 / Math.sqrt(12),
      10,
    );
    expect(cut.spread?.degreesOfFreedom).toBe(Infinity);
    expect(cut.oversizeAssumed).toBe(false);
  });

  test("it may cut under its size", () => {
    const cut = known(
      cutSize(one(0.02), { kind: "written", low: -12e-6, high: -4e-6 }),
    );
    expect(cut.nominal).toBeCloseTo(0.02 - 8e-6, 12);
  });

  test("learned from few cuts: 95 % of the next cut, by Student's t (four cuts: 3.1824)", () => {
    // of cuts 0.1, 0.3, 0.2 and 0.4 thou over
    const s = Math.sqrt((0.15 ** 2 + 0.05 ** 2 + 0.05 ** 2 + 0.15 ** 2) / 3);
    const oversize: Oversize = {
      kind: "learned",
      mean: 0.25 * thou,
      spread: s * thou,
      count: 4,
    };
    const cut = known(cutSize(one(0.5 * inch), oversize));
    expect((cut.nominal - 0.5 * inch) / thou).toBeCloseTo(0.25, 9);
    expect((cut.high - cut.nominal) / thou).toBeCloseTo(
      3.18245 * s * Math.sqrt(1.25),
      5,
    );
    expect(cut.spread?.degreesOfFreedom).toBeCloseTo(3, 9);
    expect((cut.spread?.standardDeviation ?? NaN) / thou).toBeCloseTo(
      s * Math.sqrt(1.25),
      9,
    );
  });

  test("learned from a single cut: a mean and no spread", () => {
    const oversize: Oversize = {
      kind: "learned",
      mean: 0.3 * thou,
      spread: undefined,
      count: 1,
    };
    const cut = known(cutSize(one(0.5 * inch), oversize));
    expect(cut.spread).toBeUndefined();
    expect(cut.oversizeAssumed).toBe(false);
    expect(cut.high).toBe(cut.nominal);
  });

  test("a measured tool: the spread of its mean and the gauge's, with effective degrees of freedom", () => {
    const measured: ToolSize = {
      kind: "measured",
      mean: 0.0222,
      spread: 2e-6,
      count: 4,
      uncertainty: 1e-6,
    };
    const { spread, low, nominal } = known(cutSize(measured, none));
    expect(spread?.standardDeviation).toBeCloseTo(Math.SQRT2 * 1e-6, 14);
    // Welch–Satterthwaite: (2)²/(1²/3 + 1²/∞) = 12
    expect(spread?.degreesOfFreedom).toBeCloseTo(12, 9);
    expect((nominal - low) / (Math.SQRT2 * 1e-6)).toBeCloseTo(2.1788, 4); // t of 12 at 95 %
  });

  test("a written size and a learned oversize: ranges add, deviations by squares", () => {
    const tool: ToolSize = { kind: "written", low: 0.02, high: 0.020006 };
    const oversize: Oversize = {
      kind: "learned",
      mean: 5e-6,
      spread: 2e-6,
      count: 1000,
    };
    const cut = known(cutSize(tool, oversize));
    const s = 2e-6 * Math.sqrt(1.001);
    expect(cut.nominal).toBeCloseTo(0.020008, 12);
    expect((cut.high - cut.nominal) * 1e6).toBeCloseTo(3 + 1.9623 * s * 1e6, 3);
    expect(cut.spread?.standardDeviation).toBeCloseTo(
      Math.hypot(6e-6 / Math.sqrt(12), s),
      12,
    );
  });
});

describe("heat", () => {
  const heat: CutHeat = {
    partTemperature: (75 - 32) / 1.8,
    partExpansion: 21.4e-6,
    toolTemperature: (80 - 32) / 1.8,
    toolExpansion: 11.5e-6,
  };

  test("the same in inches and degrees Fahrenheit, from 68 °F", () => {
    const cut = known(
      cutSize(
        one(0.8755 * inch),
        { kind: "written", low: 0.3 * thou, high: 0.3 * thou },
        heat,
      ),
    );
    const warmTool = 0.8755 * (1 + (11.5e-6 / 1.8) * (80 - 68));
    const warmBore = warmTool + 0.0003;
    expect(cut.nominal / inch).toBeCloseTo(
      warmBore / (1 + (21.4e-6 / 1.8) * (75 - 68)),
      12,
    );
  });

  test("a warm part comes out smaller, a warm tool cuts larger, and alike both do nothing", () => {
    const at = (partTemperature: number, toolTemperature: number) =>
      known(
        cutSize(one(0.03), none, {
          partTemperature,
          partExpansion: 12e-6,
          toolTemperature,
          toolExpansion: 12e-6,
        }),
      ).nominal;
    expect(at(35, 20)).toBeLessThan(0.03);
    expect(0.03).toBeLessThan(at(20, 35));
    expect(at(35, 35)).toBeCloseTo(0.03, 14);
    expect(at(20, 20)).toBe(0.03);
  });
});

test("refuses what can't be", () => {
  expect(refusal(cutSize(one(0), none))).toContain("not above zero");
  expect(
    refusal(cutSize({ kind: "written", low: 2, high: 1 }, none)),
  ).toContain("larger to the smaller");
  expect(
    refusal(cutSize(one(0.01), { kind: "written", low: 0, high: 0.003 })),
  ).toContain("tenth");
  expect(
    refusal(cutSize(one(0.01), { kind: "written", low: 1e-6, high: 0 })),
  ).toContain("oversize");
  const learned = (mean: number, spread: number, count: number): Oversize => ({
    kind: "learned",
    mean,
    spread,
    count,
  });
  expect(refusal(cutSize(one(0.01), learned(0, -1e-6, 3)))).toContain("spread");
  expect(refusal(cutSize(one(0.01), learned(0, 1e-6, 0)))).toContain("no cut");
  expect(refusal(cutSize(one(0.01), learned(NaN, 1e-6, 2)))).toContain(
    "not a number",
  );
  expect(
    refusal(
      cutSize({ kind: "measured", mean: 0.01, spread: 1e-6, count: 0 }, none),
    ),
  ).toContain("no reading");
  expect(
    refusal(
      cutSize({ kind: "measured", mean: 0.01, spread: -1e-6, count: 3 }, none),
    ),
  ).toContain("spread");
  expect(
    refusal(
      cutSize({ kind: "measured", mean: NaN, spread: 0, count: 3 }, none),
    ),
  ).toContain("above zero");
  const heat = {
    partTemperature: 20,
    partExpansion: 1e-5,
    toolTemperature: 20,
    toolExpansion: 1e-5,
  };
  expect(
    refusal(cutSize(one(0.01), none, { ...heat, toolTemperature: 900 })),
  ).toContain("300 °C");
  expect(
    refusal(cutSize(one(0.01), none, { ...heat, partExpansion: 1 })),
  ).toContain("expansion");
});

test("low ≤ nominal ≤ high, and a cut scales with its unit", () => {
  const oversize = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.nat(50));
  fc.assert(
    fc.property(
      fc.integer({ min: 3000, max: 90000 }),
      fc.nat(40),
      oversize,
      (size, width, [low, over]) => {
        const cutIn = (unit: number) =>
          known(
            cutSize(
              {
                kind: "written",
                low: size * unit,
                high: (size + width) * unit,
              },
              { kind: "written", low: low * unit, high: (low + over) * unit },
            ),
          );
        const inMicrometres = cutIn(1e-6);
        expect(
          inMicrometres.low <= inMicrometres.nominal &&
            inMicrometres.nominal <= inMicrometres.high,
        ).toBe(true);
        expect(cutIn(2.54e-6).high / 2.54).toBeCloseTo(inMicrometres.high, 12);
      },
    ),
  );
});
