// The axial chain: a textbook's worked gap, the random numbers' published landmark, and drawn chains against propagation.
import { endFloat, type Member } from "../../server/core/stack/chain.ts";
import {
  drawEndFloats,
  minimalStandard,
} from "../../server/core/stack/draws.ts";
import { chooseShims } from "../../server/core/stack/shims.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";

const inch = 0.0254;
const shigley =
  "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9th ed., example 1-3, p. 20";

function link(sign: 1 | -1, mean: number, tolerance: number): Member {
  return {
    sign,
    length: { low: (mean - tolerance) * inch, high: (mean + tolerance) * inch },
  };
}

/** Three sleeves on a shouldered screw: w = a − b − c − d. */
const screw = (d: number) => [
  link(1, 1.75, 0.003),
  link(-1, 0.75, 0.001),
  link(-1, 0.12, 0.005),
  link(-1, d, 0.001),
];

const published: readonly Check[] = (
  [
    ["mean gap", 0.875, 0.005, (f) => f.nominal],
    ["greatest gap", 0.875, 0.015, (f) => f.worst.high],
    ["least gap", 0.875, -0.005, (f) => f.worst.low],
    [
      "least gap with the sleeve made to suit",
      0.867,
      0.003,
      (f) => f.worst.low,
    ],
  ] as const satisfies readonly (readonly [
    string,
    number,
    number,
    (f: { nominal: number; worst: { low: number; high: number } }) => number,
  ])[]
).map(([what, d, theirs, pick]): Check => ({
  kinds: ["end-float"],
  what: `${what} of three sleeves on a shouldered screw`,
  method: "signed chain, worst case",
  against: "published",
  source: shigley,
  unit: "in",
  ours: () => pick(got(endFloat(screw(d)))) / inch,
  theirs: () => theirs,
  within: { absolute: 1e-9 },
}));

const drawing = { seed: 1, draws: 40000, shape: "normal" } as const;

const checks: readonly Check[] = [
  ...published,
  {
    kinds: ["end-float"],
    what: "ten thousandth number of the generator, seed 1",
    method: "minimal standard generator, multiplier 48271",
    against: "published",
    source: "ISO C++ working draft, [rand.predef], minstd_rand",
    unit: "1",
    ours: () => {
      const next = minimalStandard(1);
      let last = 0;
      for (let i = 0; i < 10000; i++) last = next();
      return Math.round(last * 2147483647);
    },
    theirs: () => 399268537,
    within: { absolute: 0 },
  },
  {
    kinds: ["end-float"],
    what: "root-sum-square of the same gap",
    method: "law of propagation for a sum",
    against: "independent",
    source:
      "three deviations of 40,000 chains drawn with normal lengths, limits at three deviations",
    unit: "in",
    ours: () => {
      const { nominal, rootSumSquare } = got(endFloat(screw(0.875)));
      return (rootSumSquare.high - nominal) / inch;
    },
    theirs: () =>
      (3 * got(drawEndFloats(screw(0.875), drawing)).deviation) / inch,
    // the deviation of 40,000 draws is itself known to 1 in 283; four times that
    within: { relative: 0.014 },
  },
  {
    kinds: ["shim"],
    what: "shims that bring a float of 1.07 mm within 0.05 to 0.15 mm, of 0.1, 0.2 and 0.5 mm",
    method: "fewest shims, branches cut",
    against: "independent",
    source: "every pack of up to six, one by one",
    unit: "mm",
    ours: () => {
      const float = { low: 1.07e-3, high: 1.07e-3 };
      const want = { low: 0.05e-3, high: 0.15e-3 };
      const sizes = [0.1e-3, 0.2e-3, 0.5e-3];
      return got(chooseShims(float, want, sizes)).sum * 1e3;
    },
    theirs: () => {
      let best = { count: Infinity, off: Infinity, sum: NaN };
      for (let a = 0; a <= 6; a++)
        for (let b = 0; a + b <= 6; b++)
          for (let c = 0; a + b + c <= 6; c++) {
            const sum = (a * 10 + b * 20 + c * 50) / 100;
            const count = a + b + c;
            const off = Math.abs(1.07 - sum - 0.1);
            if (0.0500001 < off) continue;
            if (count < best.count || (count === best.count && off < best.off))
              best = { count, off, sum };
          }
      return best.sum;
    },
    within: { absolute: 1e-9 },
  },
];
export default checks;
