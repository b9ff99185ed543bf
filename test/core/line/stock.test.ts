import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cleanUp,
  passPlan,
  stockAllowance,
  stockToCut,
  stockVerdict,
} from "../../../server/core/line/stock.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;
const thou = inch / 1000;
const range = (low: number, high: number) => ({
  low: low * inch,
  high: high * inch,
});

describe("how much there should be", () => {
  test("by hand 2 to 5 thou at 7/8 in, 7 at 1 1/2, 10 at 2 1/2 (Modern Shop Practice)", () => {
    const most = (size: number) =>
      known(stockAllowance(size * inch, "bronze", "hand")).most / thou;
    expect(
      [0.875, 1.5, 2.5].map(most).map((value) => Math.round(value * 100) / 100),
    ).toEqual([5, 7, 10]);
    expect(
      known(stockAllowance(0.875 * inch, "steel", "hand")).least / thou,
    ).toBeCloseTo(2, 9);
  });

  test("by machine more, and more for soft materials; a size on the step is in the lower row", () => {
    const at = (size: number) =>
      known(stockAllowance(size * inch, "steel", "machine"));
    expect(at(0.875).least / thou).toBeCloseTo(10, 9);
    expect(at(0.875).most / thou).toBeCloseTo(16, 9);
    expect(at(0.88).most / thou).toBeCloseTo(16, 9);
    expect(
      known(stockAllowance(0.875 * inch, "aluminium", "machine")).most / thou,
    ).toBeCloseTo(24, 9);
  });

  test("refuses beyond its tables", () => {
    expect(refusal(stockAllowance(3.1 * inch, "steel", "hand"))).toContain(
      "3 in",
    );
    expect(refusal(stockAllowance(2.6 * inch, "steel", "machine"))).toContain(
      "2.5 in",
    );
    expect(refusal(stockAllowance(0, "steel", "hand"))).toContain("above zero");
  });
});

describe("how much there is", () => {
  test("least over the largest bore, most over the smallest", () => {
    const stock = known(
      stockToCut(range(0.8705, 0.8708), range(0.8755, 0.8757)),
    );
    expect(stock.low / thou).toBeCloseTo(4.7, 9);
    expect(stock.high / thou).toBeCloseTo(5.2, 9);
    expect(refusal(stockToCut(range(0.9, 0.8), range(1, 1)))).toContain("bore");
    expect(refusal(stockToCut(range(0.8, 0.9), range(0, 1)))).toContain("cut");
  });

  test("thin and heavy, by hand, by machine and by a job's own threshold", () => {
    const verdict = (
      low: number,
      high: number,
      drive: "hand" | "machine",
      own = {},
    ) => {
      const { thin, heavy } = known(
        stockVerdict(
          { low: low * thou, high: high * thou },
          0.875 * inch,
          "steel",
          drive,
          own,
        ),
      );
      return [thin, heavy];
    };
    expect(verdict(2, 10, "hand")).toEqual([false, false]);
    expect(verdict(1.9, 10.1, "hand")).toEqual([true, true]);
    expect(verdict(4, 16, "machine")).toEqual([false, false]);
    expect(verdict(3.9, 16.1, "machine")).toEqual([true, true]);
    expect(
      verdict(3.9, 16.1, "machine", { thin: 3 * thou, heavy: 20 * thou }),
    ).toEqual([false, false]);
    expect(
      refusal(stockVerdict({ low: 1, high: 0 }, 0.02, "steel", "hand")),
    ).toContain("stock");
    expect(
      refusal(stockVerdict({ low: 0, high: 0 }, 1, "steel", "machine")),
    ).toContain("2.5 in");
  });
});

describe("passes", () => {
  const hand = { least: 2 * thou, most: 5 * thou };

  test("one where the stock is right", () => {
    expect(
      known(passPlan(range(0.872, 0.8722), 0.8755 * inch, hand)),
    ).toMatchObject({
      enough: true,
      passes: [{ kind: "finish" }],
    });
  });

  test("rough and finish where it is more", () => {
    const plan = known(passPlan(range(0.866, 0.8665), 0.8755 * inch, hand));
    if (!plan.enough) throw new Error("not enough");
    expect(plan.passes.map(({ kind }) => kind)).toEqual(["rough", "finish"]);
    expect((plan.passes[0]?.to ?? NaN) / inch).toBeCloseTo(0.872, 9);
    expect((plan.passes[1]?.stock ?? NaN) / thou).toBeCloseTo(3.5, 6);
  });

  test("opened out first where it is far more", () => {
    const plan = known(passPlan(range(0.8, 0.801), 0.8755 * inch, hand));
    if (!plan.enough) throw new Error("not enough");
    expect(plan.passes.map(({ kind }) => kind)).toEqual([
      "bore",
      "rough",
      "finish",
    ]);
    expect((plan.passes[0]?.to ?? NaN) / inch).toBeCloseTo(0.862, 9);
  });

  test("short where the largest bore is too near", () => {
    const plan = known(passPlan(range(0.87, 0.8745), 0.8755 * inch, hand));
    expect(plan.enough ? 0 : plan.shortBy / thou).toBeCloseTo(1, 6);
  });

  test("refuses reversed sizes", () => {
    expect(refusal(passPlan(range(1, 0.9), inch, hand))).toContain("bore");
    expect(refusal(passPlan(range(0.9, 1), 0, hand))).toContain("cut");
    expect(
      refusal(passPlan(range(0.9, 0.95), inch, { least: 2, most: 1 })),
    ).toContain("allowance");
  });

  test("any plan goes up to the cut, no finishing pass over the most or under the least", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 900 }),
        fc.nat(30),
        fc.integer({ min: 1, max: 30 }),
        fc.nat(40),
        (under, oval, least, band) => {
          const cut = inch;
          const bore = {
            low: cut - (under + oval) * 0.1 * thou,
            high: cut - under * 0.1 * thou,
          };
          const allowance = {
            least: least * 0.1 * thou,
            most: (least + band) * 0.1 * thou,
          };
          const plan = known(passPlan(bore, cut, allowance));
          if (!plan.enough) {
            expect(under < least).toBe(true);
            return;
          }
          let at = bore.low;
          for (const pass of plan.passes) {
            expect(pass.to - at).toBeCloseTo(pass.stock, 12);
            expect(at < pass.to).toBe(true);
            at = pass.to;
          }
          expect(at).toBe(cut);
          const finish = plan.passes.at(-1)?.stock ?? NaN;
          expect(
            finish <= Math.max(allowance.most, oval * 0.1 * thou) + 1e-11,
          ).toBe(true);
          expect(allowance.least - 1e-11 <= finish).toBe(true);
        },
      ),
    );
  });
});

describe("clean-up", () => {
  test("twice the offset comes off besides the least", () => {
    const out = known(cleanUp(2 * thou, 2 * thou, 5 * thou));
    expect(out.cleansUp).toBe(false);
    expect(out.needed / thou).toBeCloseTo(6, 9);
    expect(out.shortBy / thou).toBeCloseTo(1, 9);
    expect(known(cleanUp(2 * thou, 2 * thou, 6 * thou))).toMatchObject({
      cleansUp: true,
      shortBy: 0,
    });
  });

  test("agrees with a circle laid over an oval off its centre, tried all round", () => {
    // an old hole of radius r + h·cos 2φ has r + h, half of its largest diameter, at φ = 0, and the cut's axis lies the other way
    for (const [mean, half, offset, cut] of [
      [20, 0.02, 0, 20.041],
      [20, 0.02, 0, 20.039],
      [20, 0.02, 0.05, 20.141],
      [20, 0.02, 0.05, 20.139],
    ] as const) {
      const inside = Array.from(
        { length: 720 },
        (_, step) => (step * Math.PI) / 360,
      ).every((angle) => {
        const radius = mean / 2 + half * Math.cos(2 * angle);
        return (
          Math.hypot(
            offset + radius * Math.cos(angle),
            radius * Math.sin(angle),
          ) <=
          cut / 2
        );
      });
      const largest = mean + 2 * half;
      expect(
        known(cleanUp(offset * 1e-3, 0, (cut - largest) * 1e-3)).cleansUp,
      ).toBe(inside);
    }
  });

  test("agrees with a circle laid over an off-centre one, tried all round", () => {
    // an old hole of diameter d, its centre off by e, is wholly inside a cut of D where D ≥ d + 2e
    for (const [diameter, offset, cut] of [
      [20, 0.05, 20.1],
      [20, 0.05, 20.099],
      [20, 0.02, 20.2],
    ] as const) {
      const inside = Array.from(
        { length: 720 },
        (_, step) => (step * Math.PI) / 360,
      ).every(
        (angle) =>
          Math.hypot(
            offset + (diameter / 2) * Math.cos(angle),
            (diameter / 2) * Math.sin(angle),
          ) <=
          cut / 2 + 1e-12,
      );
      expect(
        known(cleanUp(offset * 1e-3, 0, (cut - diameter) * 1e-3)).cleansUp,
      ).toBe(inside);
    }
  });

  test("refuses numbers below zero", () => {
    expect(refusal(cleanUp(-1, 0, 1))).toContain("not below zero");
    expect(refusal(cleanUp(0, 0, NaN))).toContain("not below zero");
  });
});
