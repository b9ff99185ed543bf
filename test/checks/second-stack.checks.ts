// A second look at server/core/stack by other ways: every corner of a chain, and every sum that shims can make.
import {
  endFloat,
  endFloatAtTemperature,
  type WarmMember,
} from "../../server/core/stack/chain.ts";
import { chooseShims } from "../../server/core/stack/shims.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import { between, evenNumbers } from "./second/chance.ts";

const chainChecks = Array.from({ length: 8 }, (_, index) => {
  const even = evenNumbers(index + 70);
  const members = Array.from(
    { length: 3 + (index % 5) },
    (_, i): WarmMember => {
      const length = between(even, 0.01, 0.12);
      const half = between(even, 0, 60e-6);
      return {
        sign: i % 2 === 0 ? 1 : -1,
        length: { low: length - half, high: length + half },
        expansion: between(even, 9e-6, 25e-6),
        temperature: between(even, -40, 120),
      };
    },
  );
  // Every member at one end or the other: 2^n floats.
  const floats = (warm: boolean) =>
    members.reduce<number[]>(
      (sums, { sign, length, expansion, temperature }) =>
        sums.flatMap((sum) =>
          [length.low, length.high].map(
            (one) =>
              sum +
              sign * one * (warm ? 1 + expansion * (temperature - 20) : 1),
          ),
        ),
      [0],
    );
  const one = (
    what: string,
    ours: () => number,
    theirs: () => number,
  ): Check => ({
    kinds: ["end-float"],
    what: `${what}, chain ${String(index + 1)}`,
    method: "worst case and root-sum-square",
    against: "independent",
    source:
      "second look: every corner of the chain; the root of the mean square of all corners is the root-sum-square exactly",
    unit: "µm",
    ours: () => 1e6 * ours(),
    theirs: () => 1e6 * theirs(),
    within: { absolute: 1e-6 },
  });
  const high = (warm: boolean) => Math.max(...floats(warm));
  const rss = () => {
    const all = floats(true);
    const mean = all.reduce((a, b) => a + b, 0) / all.length;
    return (
      mean +
      Math.sqrt(all.reduce((sum, f) => sum + (f - mean) ** 2, 0) / all.length)
    );
  };
  return [
    one(
      "most float cold",
      () => got(endFloat(members)).worst.high,
      () => high(false),
    ),
    one(
      "most float warm",
      () => got(endFloatAtTemperature(members)).worst.high,
      () => high(true),
    ),
    one(
      "least float warm",
      () => got(endFloatAtTemperature(members)).worst.low,
      () => Math.min(...floats(true)),
    ),
    one(
      "likely float warm",
      () => got(endFloatAtTemperature(members)).rootSumSquare.high,
      rss,
    ),
  ];
}).flat();

const shimChecks = Array.from({ length: 10 }, (_, index): Check[] => {
  const even = evenNumbers(index + 170);
  const whole = (low: number, high: number) =>
    Math.round(between(even, low, high));
  // Hundredths of a millimetre.
  const float = { low: whole(60, 90), high: 0 };
  float.high = float.low + whole(0, 5);
  const want = { low: whole(8, 14), high: 0 };
  want.high = want.low + whole(6, 14);
  const sizes = [10, 15, 20, 30, 50].filter((_, i) => i === 0 || even() < 0.8);
  const twice = (sum: number) =>
    Math.abs(float.low + float.high - 2 * sum - want.low - want.high);
  // Sums that so many shims can make, grown shim by shim; the first count that fits, then the middle, then the lesser sum.
  let sums = new Set([0]);
  for (let count = 0; count <= 6; count++) {
    const fits = [...sums].filter(
      (sum) => want.low <= float.low - sum && float.high - sum <= want.high,
    );
    if (0 < fits.length) {
      fits.sort((a, b) => twice(a) - twice(b) || a - b);
      const best = fits[0] ?? NaN;
      const mm = (n: number) => n * 1e-5;
      const ours = () =>
        got(
          chooseShims(
            { low: mm(float.low), high: mm(float.high) },
            { low: mm(want.low), high: mm(want.high) },
            sizes.map(mm),
          ),
        );
      const common = {
        kinds: ["shim"],
        method: "packs in order of the rules",
        against: "independent",
        source:
          "second look: all sums that one shim more can make, in whole hundredths of a millimetre",
        within: { absolute: 1e-9 },
      } as const;
      return [
        {
          ...common,
          what: `shims of stack ${String(index + 1)}`,
          unit: "1",
          ours: () => ours().shims.length,
          theirs: () => count,
        },
        {
          ...common,
          what: `sum of shims of stack ${String(index + 1)}`,
          unit: "mm",
          ours: () => 1e3 * ours().sum,
          theirs: () => best / 100,
        },
      ];
    }
    sums = new Set([...sums].flatMap((sum) => sizes.map((size) => sum + size)));
  }
  return [];
}).flat();

export default [...chainChecks, ...shimChecks] satisfies readonly Check[];
