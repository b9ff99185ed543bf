import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  guardFactor,
  judge,
  judgeRange,
  type Rule,
} from "../../../server/core/readings/verdict.ts";
import { chance } from "./chance.ts";
import { got } from "./got.ts";

const simple: Rule = { kind: "simple" };
const guarded = (guard: number | undefined): Rule => ({
  kind: "guarded",
  guard,
});
const limits = { low: 0.025, high: 0.025021 };

describe("simple", () => {
  test("limits are in, a tenth of a nanometre past them is out", () => {
    for (const value of [
      0.025,
      0.025021,
      0.02501,
      0.025 - 4e-11,
      0.025021 + 4e-11,
    ])
      expect(got(judge(value, limits, simple))).toBe("in");
    for (const value of [0.025 - 1e-10, 0.025021 + 1e-10])
      expect(got(judge(value, limits, simple))).toBe("out");
  });

  test("a size that sums of doubles put on a limit is in", () => {
    // 0.8745 in as sum, as product and as written differ in the last digits
    const inch = 0.0254;
    const high = 0.8745 * inch;
    for (const value of [
      0.8 * inch + 0.0745 * inch,
      0.022 + 0.0002123,
      (8745 / 1e4) * 25.4e-3,
    ])
      expect(got(judge(value, { high }, simple))).toBe("in");
  });

  test("one limit is enough, and below nothing is allowed for a clearance", () => {
    expect(got(judge(-5e-6, { high: 0 }, simple))).toBe("in");
    expect(got(judge(-5e-6, { low: 0 }, simple))).toBe("out");
  });

  test("is never unsure of one value", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0249, max: 0.0251, noNaN: true }),
        (value) => {
          expect(got(judge(value, limits, simple))).not.toBe("unsure");
        },
      ),
    );
  });
});

describe("guarded", () => {
  const guard = 2e-6;

  test.each([
    [0.025 - 2.0001e-6, "out"],
    [0.025 - 2e-6, "unsure"],
    [0.025, "unsure"],
    [0.025 + 1.9999e-6, "unsure"],
    [0.025 + 2e-6, "in"],
    [0.025021 - 2e-6, "in"],
    [0.025021 - 1.9999e-6, "unsure"],
    [0.025021 + 2e-6, "unsure"],
    [0.025021 + 2.0001e-6, "out"],
  ])("%d is %s", (value, verdict) => {
    expect(got(judge(value, limits, guarded(guard)))).toBe(verdict);
  });

  test("without an uncertainty is unsure; without a guard it is the simple rule", () => {
    expect(got(judge(0.02501, limits, guarded(undefined)))).toBe("unsure");
    fc.assert(
      fc.property(
        fc.double({ min: 0.0249, max: 0.0251, noNaN: true }),
        (value) => {
          expect(got(judge(value, limits, guarded(0)))).toBe(
            got(judge(value, limits, simple)),
          );
        },
      ),
    );
  });

  test("a larger guard only ever makes unsure, and a tolerance under two guards has no in", () => {
    const value = fc.double({ min: 0.02499, max: 0.02504, noNaN: true });
    const size = fc.double({ min: 0, max: 2e-5, noNaN: true });
    fc.assert(
      fc.property(value, size, size, (at, a, b) => {
        const [small, large] = a < b ? [a, b] : [b, a];
        const wide = got(judge(at, limits, guarded(large)));
        if (wide !== "unsure")
          expect(got(judge(at, limits, guarded(small)))).toBe(wide);
        if (10.6e-6 < large) expect(wide).not.toBe("in");
      }),
    );
  });

  test("a value that just keeps the guard is truly inside 95 times in a hundred", () => {
    const { normal } = chance(14253);
    const u = 1e-6;
    const measured = limits.high - got(guardFactor()) * u;
    let inside = 0;
    for (let i = 0; i < 20_000; i++)
      if (measured + u * normal() <= limits.high) inside++;
    expect(Math.abs(inside / 20_000 - 0.95)).toBeLessThan(0.006);
  });
});

describe("a range", () => {
  const range = (low: number, high: number) => ({
    low: 0.025 + low * 1e-6,
    high: 0.025 + high * 1e-6,
  });

  test.each([
    // limits run from 0 to 21
    [range(0, 21), "in", "in"],
    [range(-1, 5), "out", "unsure"],
    [range(5, 22), "out", "unsure"],
    [range(-3, 30), "out", "unsure"],
    [range(-3, -1), "out", "out"],
    [range(22, 30), "out", "out"],
    [range(-3, 0), "out", "unsure"],
  ])("%j, all of it there: %s; one of it true: %s", (r, every, one) => {
    expect(got(judgeRange(r, limits, simple, "every"))).toBe(every);
    expect(got(judgeRange(r, limits, simple, "one"))).toBe(one);
  });

  test("guarded, an end within the guard is unsure", () => {
    expect(got(judgeRange(range(1, 10), limits, guarded(2e-6), "every"))).toBe(
      "unsure",
    );
    expect(got(judgeRange(range(-1, 10), limits, guarded(2e-6), "every"))).toBe(
      "unsure",
    );
    expect(got(judgeRange(range(-3, 10), limits, guarded(2e-6), "every"))).toBe(
      "out",
    );
    expect(got(judgeRange(range(2, 19), limits, guarded(2e-6), "every"))).toBe(
      "in",
    );
    expect(
      got(judgeRange(range(2, 19), limits, guarded(undefined), "every")),
    ).toBe("unsure");
  });

  test("of one value is that value; a wider one is never better", () => {
    const at = fc.integer({ min: -300, max: 300 });
    const rule = fc.constantFrom(simple, guarded(1e-6), guarded(4e-6));
    fc.assert(
      fc.property(
        at,
        at,
        at,
        rule,
        fc.constantFrom("every" as const, "one" as const),
        (a, b, c, how, meaning) => {
          const [low = 0, middle = 0, high = 0] = [a, b, c]
            .toSorted((x, y) => x - y)
            .map((x) => x / 10);
          const single = got(
            judgeRange(range(middle, middle), limits, how, meaning),
          );
          expect(single).toBe(
            got(judge(range(middle, middle).low, limits, how)),
          );
          const wide = got(judgeRange(range(low, high), limits, how, meaning));
          if (wide === "in") expect(single).toBe("in");
          if (meaning === "every" && single === "out") expect(wide).toBe("out");
          if (meaning === "one" && wide === "out") expect(single).toBe("out");
        },
      ),
    );
  });
});

test("refusals", () => {
  const refused = [
    judge(0.025, {}, simple),
    judge(NaN, limits, simple),
    judge(Infinity, limits, simple),
    judge(0.025, { low: NaN }, simple),
    judge(0.025, { low: 2, high: 1 }, simple),
    judge(0.025, limits, guarded(-1e-6)),
    judge(0.025, limits, guarded(NaN)),
    judgeRange({ low: 2, high: 1 }, limits, simple, "every"),
    guardFactor(0.5),
    guardFactor(1),
    guardFactor(NaN),
    guardFactor(0.95, 0),
  ];
  expect(refused.filter(({ valid }) => valid)).toEqual([]);
});

test("few degrees of freedom ask for more guard", () => {
  expect(got(guardFactor())).toBeCloseTo(1.6449, 4);
  expect(got(guardFactor(0.95, 5))).toBeCloseTo(2.015, 3);
});
