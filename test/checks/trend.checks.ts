// When a line is at a level: the likeliest place and both ends of the interval against worked examples of a textbook.
import { fitLine } from "../../server/core/learning/line-fit.ts";
import { reachOf, type Reaching } from "../../server/core/trend/reaching.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";

interface Example {
  readonly of: string;
  readonly source: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly level: number;
  readonly coverage: number;
  /** As printed; half of the last digit is what may be between. */
  readonly printed: Readonly<Record<keyof Reaching, readonly [number, number]>>;
}

const evenly = (from: number, step: number, count: number): number[] =>
  Array.from({ length: count }, (_, index) => from + step * index);

const GRAYBILL =
  "Graybill & Iyer, Regression Analysis (1994), chapter 6, worked examples (data and answers seen as restated in the tests of the R package investr";

/** Fourteen crystals, grams by hours grown. */
const CRYSTALS = {
  x: evenly(2, 2, 14),
  y: [
    ...[0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57],
    ...[8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04],
  ],
};

const EXAMPLES: readonly Example[] = [
  {
    of: "a chamber at 400, 99 %",
    source: `${GRAYBILL}, p. 433)`,
    x: evenly(0, 10, 11),
    y: [
      ...[206.36, 225.52, 252.18, 289.33, 318.11, 349.49],
      ...[383.03, 410.7, 444.4, 469.14, 501.16],
    ],
    level: 400,
    coverage: 0.99,
    printed: {
      likeliest: [66.5, 0.1],
      earliest: [65.07, 0.01],
      latest: [68.03, 0.01],
    },
  },
  {
    of: "crystals at 5 g, 90 %",
    source: `${GRAYBILL}, p. 434; the crystals' weights as a page of exercises gives them)`,
    ...CRYSTALS,
    level: 5,
    coverage: 0.9,
    printed: {
      likeliest: [9.93, 0.01],
      earliest: [8.65, 0.01],
      latest: [11.05, 0.01],
    },
  },
  {
    of: "crystals at 8 g, 95 %",
    source:
      "R package investr, help page of calibrate, example of a mean response (output as printed there)",
    ...CRYSTALS,
    level: 8,
    coverage: 0.95,
    printed: {
      likeliest: [15.8882, 0.00001],
      earliest: [14.65896, 0.00001],
      latest: [17.15963, 0.00001],
    },
  },
];

const ENDS = ["likeliest", "earliest", "latest"] as const;

const checks: readonly Check[] = EXAMPLES.flatMap((example) =>
  ENDS.map((end): Check => {
    const [value, digit] = example.printed[end];
    return {
      kinds: [],
      what: `${end} place of ${example.of}`,
      method: "when a line is at a level, Fieller's interval",
      against: "published",
      source: example.source,
      unit: "1",
      ours: () => reached(example)[end] ?? NaN,
      theirs: () => value,
      within: { absolute: 0.5001 * digit },
    };
  }),
);
export default checks;

function reached({ x, y, level, coverage }: Example): Reaching {
  const points = x.map((each, index) => ({ x: each, y: y[index] ?? NaN }));
  return got(reachOf(got(fitLine(points)), level, 1, coverage));
}
