// Kinds of result that no table gives: each against a computation that shares no code with ours, by another way where there is one.
import { gaugeRatio } from "../../server/core/readings/gauge.ts";
import { taper } from "../../server/core/readings/form.ts";
import { bushOdToMake } from "../../server/core/press/interference.ts";
import {
  oscillatingSpeed,
  pressureTimesSpeed,
  specificLoad,
  turningSpeed,
} from "../../server/core/film/running.ts";
import { filmRatio } from "../../server/core/film/film-ratio.ts";
import { ledgeOf } from "../../server/core/line/blind-bore.ts";
import { lineWindow } from "../../server/core/line/reamer-window.ts";
import { stockToCut } from "../../server/core/line/stock.ts";
import { createProject } from "../../server/rules/check.ts";
import { readLines } from "../../grammar/lines.ts";
import type { Answer } from "../../server/core/answer.ts";
import type { Check } from "./check.ts";

function known<T>(answer: Answer<T>): T {
  if (!answer.valid) throw new Error(answer.because);
  return answer.value;
}

const journals = [
  { least: 0.022206, greatest: 0.022209, wanted: { low: 20e-6, high: 41e-6 } },
  { least: 0.0222, greatest: 0.022212, wanted: { low: 18e-6, high: 45e-6 } },
  { least: 0.022203, greatest: 0.022204, wanted: { low: 25e-6, high: 50e-6 } },
];

/** Every bore size by a hundredth of a micrometre, asked one by one whether all journals have what they want. */
function windowByTrying(): { readonly low: number; readonly high: number } {
  const fitting: number[] = [];
  for (let step = 0; step <= 10_000; step++) {
    const bore = 0.0222 + step * 1e-8;
    const serves = journals.every(({ least, greatest, wanted }) =>
      [least, greatest].every((journal) => {
        const gap = bore - journal;
        return wanted.low - 1e-12 <= gap && gap <= wanted.high + 1e-12;
      }),
    );
    if (serves) fitting.push(bore);
  }
  return { low: Math.min(...fitting), high: Math.max(...fitting) };
}

function openWindow(): { readonly low: number; readonly high: number } {
  const found = known(lineWindow(journals));
  if (!found.open) throw new Error("no window");
  return found.window;
}

/** The distance that a point of the journal's surface goes in a minute of swinging, added up step by step. */
function distanceOfSwinging(
  diameter: number,
  degrees: number,
  cyclesPerMinute: number,
): number {
  let distance = 0;
  const steps = 20_000;
  const at = (step: number): readonly [number, number] => {
    const angle =
      ((degrees / 2) * Math.PI * Math.sin((2 * Math.PI * step) / steps)) / 180;
    return [(diameter / 2) * Math.cos(angle), (diameter / 2) * Math.sin(angle)];
  };
  for (let step = 0; step < steps; step++) {
    const [x0, y0] = at(step);
    const [x1, y1] = at(step + 1);
    distance += Math.hypot(x1 - x0, y1 - y0);
  }
  return distance * cyclesPerMinute;
}

/** Where the tip of a reamer's edges has been, slice by slice: the length of bore below the last slice cut to size. */
function ledgeBySlices(): number {
  const [depth, boreEnd, chamfer, point, gap] = [
    0.0343, 0.03175, 0.0015, 0.0005, 0.0008,
  ];
  let uncut = 0;
  const slice = 1e-7;
  const bottom = depth - gap;
  for (let at = slice / 2; at < boreEnd; at += slice) {
    const fromTip = bottom - at;
    if (fromTip < point + chamfer) uncut += slice;
  }
  return uncut;
}

/** A job of random steps; how many are ready as the tool says, and as a plain count says. */
function readySteps(seed: number): {
  readonly ours: number;
  readonly theirs: number;
} {
  let state = seed;
  const random = (below: number): number => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
  const steps = Array.from({ length: 40 }, (_, index) => ({
    after: Array.from({ length: random(3) }, () => random(40)).filter(
      (each) => each < index,
    ),
    done: random(2) === 0,
  }));
  const text = steps
    .map(({ after, done }, index) =>
      [
        `step s${String(index)}`,
        ...after.map((each) => `  after s${String(each)}`),
        ...(done ? ["  done 2026-11-05"] : []),
      ].join("\n"),
    )
    .join("\n");
  const project = createProject({ root: "/" });
  project.setFile("/a.thou", readLines(`job a\n  units mm\n${text}\n`));
  const ready = project
    .check("/a.thou")
    .results.filter((result) => result.kind === "ready");
  return {
    ours: ready.reduce((sum, result) => sum + Number(result.low), 0),
    theirs: steps.filter(
      ({ after, done }) =>
        !done && after.every((each) => steps[each]?.done === true),
    ).length,
  };
}

function independent(
  kind: string,
  what: string,
  method: string,
  source: string,
  unit: string,
  within: Check["within"],
  ours: () => number,
  theirs: () => number,
): Check {
  return {
    kinds: [kind],
    what,
    method,
    against: "independent",
    source,
    unit,
    ours,
    theirs,
    within,
  };
}

const checks: readonly Check[] = [
  independent(
    "reamer-window",
    "least bore that suits three journals",
    "intersection of intervals",
    "every size by 0.01 µm tried on every journal",
    "m",
    { absolute: 1.1e-8 },
    () => openWindow().low,
    () => windowByTrying().low,
  ),
  independent(
    "reamer-window",
    "greatest bore that suits three journals",
    "intersection of intervals",
    "every size by 0.01 µm tried on every journal",
    "m",
    { absolute: 1.1e-8 },
    () => openWindow().high,
    () => windowByTrying().high,
  ),
  independent(
    "stock",
    "least stock of a bush 0.8708 to 0.8713 in under a cut of 0.87534 to 0.87564 in",
    "cut less bore",
    "hundred-thousandths of an inch, in whole numbers",
    "m",
    { absolute: 1e-12 },
    () =>
      known(
        stockToCut(
          { low: 0.8708 * 0.0254, high: 0.8713 * 0.0254 },
          { low: 0.87534 * 0.0254, high: 0.87564 * 0.0254 },
        ),
      ).low,
    () => ((87534 - 87130) * 254) / 1e9,
  ),
  independent(
    "ledge",
    "ledge in a bush 31.75 mm deep in a hole of 34.3 mm",
    "depth less bevel, point and end clearance",
    "slices of 0.1 µm under the edges",
    "m",
    { absolute: 2e-7 },
    () =>
      known(
        ledgeOf(
          { depth: 0.0343, boreEnd: 0.03175, before: 0.022, cut: 0.0222 },
          { chamfer: 0.0015, point: 0.0005, endClearance: 0.0008 },
        ),
      ).length,
    ledgeBySlices,
  ),
  independent(
    "taper",
    "taper of three places",
    "difference of means",
    "largest difference over all pairs of places",
    "m",
    { absolute: 1e-12 },
    () =>
      known(
        taper(
          [
            [0.02, 0.020002],
            [0.020004, 0.020006],
            [0.019999, 0.020001],
          ].map((diameters) => ({ diameters })),
        ),
      ).difference,
    () => {
      const means = [20.001, 20.005, 20.0];
      return Math.max(...means.flatMap((a) => means.map((b) => a - b))) / 1e3;
    },
  ),
  independent(
    "bush-od-to-make",
    "least od for 0.0006 to 0.0012 in over a hole of 1.00018 to 1.00021 in",
    "hole plus interference",
    "every od by 0.000001 in tried against both ends of the hole",
    "m",
    { absolute: 3e-8 },
    () =>
      known(
        bushOdToMake(
          { low: 1.00018 * 0.0254, high: 1.00021 * 0.0254 },
          { low: 0.0006 * 0.0254, high: 0.0012 * 0.0254 },
        ),
      ).low,
    () => {
      for (let millionths = 1_000_000; ; millionths++) {
        if (600 <= millionths - 1_000_210 && millionths - 1_000_180 <= 1200)
          return (millionths * 0.0254) / 1e6;
      }
    },
  ),
  independent(
    "surface-speed",
    "a 22.2 mm journal at 240 rpm",
    "π·d·n",
    "a wheel of that size rolled for a minute, by a polygon of 100 000 sides",
    "m/s",
    { relative: 1e-8 },
    () => known(turningSpeed(0.0222, 4)),
    () => 4 * 100_000 * 0.0222 * Math.sin(Math.PI / 100_000),
  ),
  independent(
    "surface-speed",
    "a 22.2 mm journal swinging 30° 20 times a minute",
    "2·φ·r·f",
    "the path of a point of its surface added up over a minute",
    "m/s",
    { relative: 1e-6 },
    () => known(oscillatingSpeed(0.0222, Math.PI / 6, 20 / 60)),
    () => distanceOfSwinging(0.0222, 30, 20) / 60,
  ),
  independent(
    "specific-load",
    "180 lbf on 0.875 by 1.25 in",
    "load over projected area",
    "pounds over square inches, with psi by its definition",
    "Pa",
    { relative: 1e-12 },
    () =>
      known(
        specificLoad(180 * 0.45359237 * 9.80665, 0.875 * 0.0254, 1.25 * 0.0254),
      ),
    () => (180 / (0.875 * 1.25)) * ((0.45359237 * 9.80665) / (0.0254 * 0.0254)),
  ),
  independent(
    "pv",
    "165 psi at 55 ft/min",
    "pressure times speed",
    "in foot-pounds a minute on a square inch, turned into watts on a square metre",
    "Pa·m/s",
    { relative: 1e-9 },
    () => known(pressureTimesSpeed(165 * 6894.757293168, 55 * 0.00508)),
    () => (165 * 55 * 1.35581794833) / 60 / (0.0254 * 0.0254),
  ),
  independent(
    "film-ratio",
    "a film of 5 µm over 0.4 and 0.8 µm Ra",
    "film over the root of squares of Rq",
    "the spread of 200 000 pairs of heights drawn from both surfaces",
    "1",
    { relative: 0.02 },
    () => known(filmRatio(5e-6, 0.4e-6, 0.8e-6)),
    () => {
      // seeded draws of the sum of twelve, close to normal; Rq is Ra·√(π/2) for such a surface
      let state = 12345;
      const draw = (): number => {
        let sum = -6;
        for (let n = 0; n < 12; n++) {
          state = (state * 48271) % 2147483647;
          sum += state / 2147483647;
        }
        return sum;
      };
      const scale = Math.sqrt(Math.PI / 2);
      let squares = 0;
      for (let n = 0; n < 200_000; n++)
        squares += (0.4e-6 * scale * draw() + 0.8e-6 * scale * draw()) ** 2;
      return 5e-6 / Math.sqrt(squares / 200_000);
    },
  ),
  independent(
    "ratio",
    "T = 0.0008 in, U = 0.00007 in",
    "T/(2U)",
    "how many times 2U goes into T, laid end to end with its rest",
    "1",
    { absolute: 1e-9 },
    () => known(gaugeRatio(0.0008 * 0.0254, 0.00007 * 0.0254)).ratio,
    () => {
      let [left, whole] = [80_000, 0];
      while (14_000 <= left) {
        left -= 14_000;
        whole++;
      }
      return whole + left / 14_000;
    },
  ),
  ...[11, 12, 13, 14, 15].map((seed) =>
    independent(
      "ready",
      `ready steps of a job of 40, drawn with seed ${String(seed)}`,
      "the graph of steps",
      "a plain count over the list",
      "1",
      { absolute: 0 },
      () => readySteps(seed).ours,
      () => readySteps(seed).theirs,
    ),
  ),
];

export default checks;
