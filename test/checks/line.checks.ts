// Reamers and sizes to buy against published tables and independent computations.
import { chanceOfLanding } from "../../server/core/line/chance.ts";
import { clearance } from "../../server/core/line/clearance.ts";
import { cutSize } from "../../server/core/line/cut-size.ts";
import { reamerLimits } from "../../server/core/line/reamer-limits.ts";
import { sizesToBuy } from "../../server/core/line/sizes-to-buy.ts";
import { known } from "../core/line/answers.ts";
import {
  h7Reamers,
  inchesOfClearanceDrills,
  inchesOfTapDrills,
  millimetresOfLetters,
  millimetresOfNumbers,
} from "../core/line/gauge-sizes.published.ts";
import type { Check } from "./check.ts";

const inch = 0.0254;

const din1420 =
  'DIN 1420, as reprinted in a reamer maker\'s technical pages, "Tolerance limits"';

/** IT7 of ISO 286-1 in µm by the upper end of its step, from memory: the reamer's limits are what is published. */
const it7: Readonly<Record<number, number>> = {
  3: 10,
  6: 12,
  10: 15,
  18: 18,
  30: 21,
  50: 25,
  80: 30,
};

const reamerChecks: Check[] = h7Reamers.flatMap(([upTo, greatest, least]) => {
  const size = upTo * 1e-3;
  const tolerance = (it7[upTo] ?? NaN) * 1e-6;
  const limits = () =>
    known(reamerLimits({ low: size, high: size + tolerance }, tolerance));
  const check = (
    what: string,
    method: string,
    ours: () => number,
    theirs: number,
  ): Check => ({
    kinds: ["cut-size"],
    what: `${what} deviation of an H7 reamer of ${upTo} mm`,
    method,
    against: "published",
    source: `${din1420}, point 1`,
    unit: "µm",
    ours,
    theirs: () => theirs,
    within: { absolute: 1e-6 },
  });
  return [
    check(
      "greatest",
      "0.15 IT, rounded up",
      () => (limits().high - size) * 1e6,
      greatest,
    ),
    check(
      "least",
      "0.35 IT, rounded up",
      () => (limits().low - size) * 1e6,
      least,
    ),
  ];
});

const d8 = () => known(reamerLimits({ low: 10.04e-3, high: 10.062e-3 }, 22e-6));
const d8Checks: Check[] = (["high", "low"] as const).map((end) => ({
  kinds: ["cut-size"],
  what: `${end === "high" ? "greatest" : "least"} size of a reamer for 10 D8`,
  method: "0.15 IT and 0.35 IT, rounded up",
  against: "published",
  source: `${din1420}, point 3, worked example`,
  unit: "mm",
  ours: () => d8()[end] * 1e3,
  theirs: () => (end === "high" ? 10.058 : 10.05),
  within: { absolute: 1e-9 },
}));

/** The worst of a list, in the published unit: one row for many sizes. */
function sizeCheck(
  what: string,
  source: string,
  table: Readonly<Record<string | number, number>>,
  unit: "in" | "mm",
  within: number,
): Check {
  const metres = unit === "in" ? inch : 1e-3;
  const entries = Object.entries(table);
  const worst = () => {
    const all = sizesToBuy({ low: 0, high: 1 }).filter(
      ({ series }) => series === "number" || series === "letter",
    );
    const nominal = (name: string) =>
      (all.find(({ designation }) => designation === name)?.nominal ?? NaN) /
      metres;
    return entries
      .map(([name, theirs]) => ({ ours: nominal(name), theirs }))
      .reduce((most, one) =>
        Math.abs(most.ours - most.theirs) < Math.abs(one.ours - one.theirs)
          ? one
          : most,
      );
  };
  return {
    kinds: ["cut-size"],
    what: `${what}: the worst of ${entries.length}`,
    method: "table of sizes to buy",
    against: "published",
    source,
    unit,
    ours: () => worst().ours,
    theirs: () => worst().theirs,
    within: { absolute: within },
  };
}

const sizeChecks: Check[] = [
  sizeCheck(
    "number sizes 80 to 54",
    "Metric, Inch & Fractional Inch: Drills, Sizes, Threads & Preferred Sizes, v. 2, 2007 (public domain)",
    millimetresOfNumbers,
    "mm",
    1e-7,
  ),
  sizeCheck(
    "number and letter sizes of tap drills",
    "Tap drill sizes, unified thread: technical pages of a tap maker",
    inchesOfTapDrills,
    "in",
    1e-9,
  ),
  sizeCheck(
    "number and letter sizes of clearance drills",
    "two tables of tap and clearance drills for machine screws, and one of the most used number sizes",
    inchesOfClearanceDrills,
    "in",
    1e-9,
  ),
  sizeCheck(
    "letter sizes A to Z",
    'public drill chart made from the table of the encyclopaedia article "Drill bit sizes", printed to 0.005 mm',
    millimetresOfLetters,
    "mm",
    0.005,
  ),
];

const fitChecks: Check[] = (
  [
    [0.80995, 1.05],
    [0.8097, 1.3],
  ] as const
).map(([journal, thou]) => ({
  kinds: ["clearance", "cut-size"],
  what: `clearance that a reamer of 0.8110 in, no oversize, leaves over a journal of ${journal} in`,
  method: "cut size less journal",
  against: "independent",
  source: "subtraction in thousandths of an inch (common practice, no source)",
  unit: "thou",
  ours: () => {
    const cut = known(
      cutSize(
        { kind: "written", low: 0.811 * inch, high: 0.811 * inch },
        { kind: "assumed-zero" },
      ),
    );
    const size = journal * inch;
    return (
      (known(
        clearance(
          { smallest: cut.low, largest: cut.high },
          { smallest: size, largest: size },
        ),
      ).least *
        1e3) /
      inch
    );
  },
  theirs: () => thou,
  within: { absolute: 1e-9 },
}));

const heatCheck: Check = {
  kinds: ["cut-size"],
  what: "bore at 68 °F of a 0.8755 in reamer at 80 °F in aluminium at 75 °F, oversize 0.3 thou",
  method: "expansions per kelvin, °C, metres",
  against: "independent",
  source: "expansions per degree Fahrenheit from 68 °F, inches",
  unit: "in",
  ours: () => {
    const heat = {
      partTemperature: (75 - 32) / 1.8,
      partExpansion: 21.4e-6,
      toolTemperature: (80 - 32) / 1.8,
      toolExpansion: 11.5e-6,
    };
    const oversize = {
      kind: "written",
      low: 0.3e-3 * inch,
      high: 0.3e-3 * inch,
    } as const;
    return (
      known(
        cutSize(
          { kind: "written", low: 0.8755 * inch, high: 0.8755 * inch },
          oversize,
          heat,
        ),
      ).nominal / inch
    );
  },
  theirs: () =>
    (0.8755 * (1 + (11.5e-6 / 1.8) * 12) + 0.0003) / (1 + (21.4e-6 / 1.8) * 7),
  within: { absolute: 1e-12 },
};

const chanceCheck: Check = {
  kinds: ["chance"],
  what: "chance of a cut at 0.6 and 1.4 standard deviations from its limits",
  method: "normal distribution of jstat 1.9.6",
  against: "independent",
  source: "power series of the normal integral",
  unit: "1",
  ours: () => {
    const spread = { standardDeviation: 5e-6, degreesOfFreedom: Infinity };
    const cut = {
      low: 0.02,
      nominal: 0.02,
      high: 0.02,
      spread,
      oversizeAssumed: false,
    };
    return known(
      chanceOfLanding([
        { cut, window: { low: 0.02 - 3e-6, high: 0.02 + 7e-6 } },
      ]),
    );
  },
  theirs: () => {
    const upTo = (z: number) => {
      let [term, sum] = [z, z];
      for (let n = 1; n < 40; n++) {
        term *= -(z * z) / (2 * n);
        sum += term / (2 * n + 1);
      }
      return sum / Math.sqrt(2 * Math.PI);
    };
    return upTo(1.4) + upTo(0.6);
  },
  within: { absolute: 1e-9 },
};

/** Two-sided 95 % points of Student's t by their closed forms: t = tan(πp/2) for 1, t = p·√(2/(1 − p²)) for 2. */
const learnedChecks: Check[] = (
  [
    [2, Math.tan((Math.PI * 0.95) / 2)],
    [3, 0.95 * Math.sqrt(2 / (1 - 0.95 ** 2))],
  ] as const
).map(([count, factor]) => ({
  kinds: ["cut-size"],
  what: `how far the next cut may miss, 95 %, of a reamer learned from ${count} cuts that spread 2 µm`,
  method: "Student's t, s·√(1 + 1/n)",
  against: "independent",
  source: "closed form of the quantile for that few degrees of freedom",
  unit: "µm",
  ours: () => {
    const oversize = {
      kind: "learned",
      mean: 5e-6,
      spread: 2e-6,
      count,
    } as const;
    const cut = known(
      cutSize({ kind: "written", low: 0.022, high: 0.022 }, oversize),
    );
    return (cut.high - cut.nominal) * 1e6;
  },
  theirs: () => factor * 2 * Math.sqrt(1 + 1 / count),
  within: { absolute: 1e-4 },
}));

export default [
  ...fitChecks,
  ...reamerChecks,
  ...d8Checks,
  ...sizeChecks,
  heatCheck,
  chanceCheck,
  ...learnedChecks,
] satisfies readonly Check[];
