// A second look at server/core/line by other ways: every size on a grid, rods laid in rings, and chances by quadrature.
import { chanceOfLanding } from "../../server/core/line/chance.ts";
import { cutSize } from "../../server/core/line/cut-size.ts";
import { pilotGuide } from "../../server/core/line/pilot.ts";
import { lineWindow } from "../../server/core/line/reamer-window.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import {
  between,
  evenNumbers,
  studentBelow,
  studentWithin,
} from "./second/chance.ts";

/** Journals in whole steps of 0.1 µm. */
interface Journal {
  least: number;
  greatest: number;
  low: number;
  high: number;
}
const STEP = 1e-7;
const asked = ({ least, greatest, low, high }: Journal) => ({
  least: least * STEP,
  greatest: greatest * STEP,
  wanted: { low: low * STEP, high: high * STEP },
});
function journals(index: number, apart: number): Journal[] {
  const even = evenNumbers(index + 5);
  const whole = (low: number, high: number) =>
    Math.round(between(even, low, high));
  return Array.from({ length: 2 + (index % 4) }, () => {
    const least = 200_000 + whole(0, apart);
    const low = whole(150, 200);
    return {
      least,
      greatest: least + whole(0, 40),
      low,
      high: low + whole(120, 300),
    };
  });
}
/** Whether a bore of that size gives each journal what it wants, at its largest and its smallest. */
const suits = (bore: number, { least, greatest, low, high }: Journal) =>
  low <= bore - greatest && bore - least <= high;
const GRID = Array.from({ length: 2500 }, (_, i) => 199_800 + i);
const GRIDDED =
  "second look: every bore in steps of 0.1 µm tried on every journal";

const windowChecks = Array.from({ length: 20 }, (_, index) => {
  const all = journals(index, 60);
  const good = GRID.filter((bore) => all.every((one) => suits(bore, one)));
  if (good.length === 0) return [];
  return (["low", "high"] as const).map((end): Check => ({
    kinds: ["reamer-window"],
    what: `window of line ${String(index + 1)}, ${end}`,
    method: "what each journal allows, shared",
    against: "independent",
    source: GRIDDED,
    unit: "µm",
    ours: () => {
      const found = got(lineWindow(all.map(asked)));
      return found.open ? 1e6 * found.window[end] : NaN;
    },
    theirs: () => (end === "low" ? Math.min(...good) : Math.max(...good)) / 10,
    within: { absolute: 1e-6 },
  }));
}).flat();

/** The fewest bores of the grid that serve all: how many, by trying one, then two, then three. */
function fewest(all: readonly Journal[]): number {
  const served = [
    ...new Set(
      GRID.map((bore) =>
        all.reduce(
          (mask, one, i) => (suits(bore, one) ? mask | (1 << i) : mask),
          0,
        ),
      ),
    ),
  ];
  const whole = (1 << all.length) - 1;
  let reach = new Set([0]);
  for (let count = 1; count <= all.length; count++) {
    reach = new Set(
      [...reach].flatMap((mask) => served.map((one) => mask | one)),
    );
    if (reach.has(whole)) return count;
  }
  return NaN;
}
/** How far the worst journal's clearance passes its want, at that bore. */
const beyond = (bore: number, all: readonly Journal[]) =>
  Math.max(
    ...all.map(({ least, greatest, low, high }) =>
      Math.max(low - (bore - greatest), bore - least - high),
    ),
  );

const ROOM = 50;
const conflictChecks = Array.from({ length: 16 }, (_, index): Check[] => {
  const all = journals(index + 100, 500);
  const found = got(lineWindow(all.map(asked), ROOM * STEP));
  if (found.open) return [];
  const { conflict } = found;
  const name = `line ${String(index + 1)} without a window`;
  const common = { kinds: ["reamer-window"], against: "independent" } as const;
  const sized = () => {
    const down = new Map(
      (conflict.sizeDown ?? []).map((one) => [one.journal, one.by / STEP]),
    );
    const made = all.map((one, i) => {
      const by = down.get(i) ?? 0;
      return { ...one, least: one.least - by, greatest: one.greatest - by };
    });
    const low = Math.max(...made.map((one) => one.greatest + one.low));
    const high = Math.min(...made.map((one) => one.least + one.high));
    return (high - low) / 10;
  };
  return [
    {
      ...common,
      what: `reamers for ${name}`,
      method: "sizes that pierce every window",
      source: `${GRIDDED}; then every two, three of them`,
      unit: "1",
      ours: () => conflict.reamers.length,
      theirs: () => fewest(all),
      within: { absolute: 0 },
    },
    {
      ...common,
      what: `least error of one size for ${name}`,
      method: "half way between the ends in conflict",
      source: GRIDDED,
      unit: "µm",
      ours: () => 1e6 * conflict.accept.beyond,
      theirs: () => Math.min(...GRID.map((bore) => beyond(bore, all))) / 10,
      within: { absolute: 0.051 },
      because: "the best size may lie half a step off the grid",
    },
    {
      ...common,
      what: `window once sized down, ${name}`,
      method: "each journal's own end brought down, and the room",
      source: "second look: the journals made so, and what is then shared",
      unit: "µm",
      ours: () => ROOM * STEP * 1e6,
      theirs: sized,
      within: { absolute: 1e-6 },
    },
  ];
}).flat();

const RODS =
  "second look: a rod with two edges turned and moved in two rings of a plane, each stand by halving";
const pilotChecks = Array.from({ length: 8 }, (_, index): Check => {
  const even = evenNumbers(index + 900);
  const pilot = between(even, 0.01, 0.04);
  const slack = between(even, 5e-6, 120e-6);
  const engagedLength = between(even, 0.015, 0.08);
  const overhang = between(even, 0, 0.2);
  return {
    kinds: ["pilot-offset"],
    what: `pilot ${String(index + 1)}`,
    method: "half the slack, and the lean over the overhang",
    against: "independent",
    source: RODS,
    unit: "µm",
    ours: () =>
      1e6 *
      got(
        pilotGuide(
          { low: pilot, high: pilot },
          { low: pilot + slack, high: pilot + slack },
          { engagedLength, overhang },
        ),
      ).offset,
    theirs: () => {
      const hole = pilot + slack;
      // A rod that leans by `angle` has its edges pilot/(2·cos) off its axis at any z. Its axis at the far end of its hole may then
      // stand hole/2 − that off the middle, at the near end the same on the other side.
      const room = (angle: number) => hole / 2 - pilot / 2 / Math.cos(angle);
      let low = 0;
      let high = 0.1;
      for (let i = 0; i < 80; i++) {
        const angle = (low + high) / 2;
        if (Math.tan(angle) * engagedLength < 2 * room(angle)) low = angle;
        else high = angle;
      }
      // The cut's far end is `overhang` past the near end of the hole, where the rod lies against the one side.
      return 1e6 * (room(low) + Math.tan(low) * overhang);
    },
    within: { relative: 0.002 },
  };
});

const cutChecks = Array.from({ length: 8 }, (_, index) => {
  const even = evenNumbers(index + 40);
  const size = between(even, 0.008, 0.03);
  const count = 3 + index;
  const tool = {
    kind: "measured",
    mean: size,
    spread: between(even, 0.5e-6, 2e-6),
    count: count + 2,
    uncertainty: 0.4e-6,
  } as const;
  const over = {
    kind: "learned",
    mean: between(even, -4e-6, 15e-6),
    spread: between(even, 1e-6, 5e-6),
    count,
  } as const;
  const heat = {
    partTemperature: between(even, 15, 40),
    partExpansion: between(even, 10e-6, 24e-6),
    toolTemperature: between(even, 15, 40),
    toolExpansion: 11.5e-6,
  };
  // The tool's own mean, and the next cut, each squared; degrees of freedom by Welch and Satterthwaite over the three of them.
  const ofMean = tool.spread / Math.sqrt(tool.count);
  const ofNext = over.spread * Math.sqrt(1 + 1 / over.count);
  const grows = (alpha: number, t: number) => 1 + alpha * (t - 20);
  const share = 1 / grows(heat.partExpansion, heat.partTemperature);
  const gain = share * grows(heat.toolExpansion, heat.toolTemperature);
  const parts: readonly (readonly [number, number])[] = [
    [gain * ofMean, tool.count - 1],
    [share * ofNext, over.count - 1],
    [gain * tool.uncertainty, Infinity],
  ];
  const variance = parts.reduce((sum, [u]) => sum + u ** 2, 0);
  const freedom =
    variance ** 2 / parts.reduce((sum, [u, nu]) => sum + u ** 4 / nu, 0);
  const one = (
    what: string,
    kind: string,
    ours: () => number,
    theirs: () => number,
    within: Check["within"],
    unit: string,
  ): Check => ({
    kinds: [kind],
    what: `${what}, cut ${String(index + 1)}`,
    method: "tool and oversize, heat, Welch and Satterthwaite",
    against: "independent",
    source:
      "second look: Student's t by quadrature, the sum of squares and its degrees of freedom by hand",
    unit,
    ours,
    theirs,
    within,
  });
  const cut = () => got(cutSize(tool, over, heat));
  const middle = gain * size + share * over.mean;
  const window = { low: middle - 6e-6, high: middle + 9e-6 };
  const deviation = Math.sqrt(variance);
  return [
    one(
      "likeliest",
      "cut-size",
      () => 1e6 * cut().nominal,
      () => 1e6 * middle,
      { absolute: 1e-6 },
      "µm",
    ),
    one(
      "deviation",
      "cut-size",
      () => 1e6 * (cut().spread?.standardDeviation ?? NaN),
      () => 1e6 * deviation,
      { relative: 1e-9 },
      "µm",
    ),
    one(
      "chance",
      "chance",
      () => got(chanceOfLanding([{ cut: cut(), window }])),
      () =>
        studentBelow(9e-6 / deviation, freedom) -
        studentBelow(-6e-6 / deviation, freedom),
      { absolute: 2e-6 },
      "1",
    ),
    one(
      "reach to the high end, in deviations of the learned cut alone",
      "cut-size",
      () =>
        1e6 *
        (got(cutSize({ kind: "written", low: size, high: size }, over)).high -
          size -
          over.mean),
      () => 1e6 * studentWithin(0.95, over.count - 1) * ofNext,
      { relative: 1e-6 },
      "µm",
    ),
  ];
}).flat();

export default [
  ...windowChecks,
  ...conflictChecks,
  ...pilotChecks,
  ...cutChecks,
] satisfies readonly Check[];
