// Pilots and the straight shaft against independent computations.
import { pilotGuide } from "../../server/core/line/pilot.ts";
import {
  straightShaft,
  type CheckedBore,
} from "../../server/core/line/straight-shaft.ts";
import { known } from "../core/line/answers.ts";
import {
  mostRoomBySearch,
  mostRoomInPlane,
} from "../core/line/straight-by-other-ways.ts";
import type { Check } from "./check.ts";

const pilotCheck: Check = {
  kinds: ["pilot-offset"],
  what: "offset at 140 mm overhang of a pilot with 20 µm slack over 32 mm",
  method: "slack/2 + (slack/length)·overhang",
  against: "independent",
  source:
    "the worst of all places of both ends of a bar in its ring, on a polar grid",
  unit: "µm",
  ours: () => {
    const bore = { low: 0.02202, high: 0.02202 };
    const reach = { engagedLength: 0.032, overhang: 0.14 };
    return (
      known(pilotGuide({ low: 0.022, high: 0.022 }, bore, reach)).offset * 1e6
    );
  },
  theirs: () => {
    let worst = 0;
    for (let near = 0; near < 90; near++) {
      for (let far = 0; far < 90; far++) {
        const [a, b] = [(near * Math.PI) / 45, (far * Math.PI) / 45];
        const x = Math.cos(a) + ((Math.cos(a) - Math.cos(b)) * 140) / 32;
        const y = Math.sin(a) + ((Math.sin(a) - Math.sin(b)) * 140) / 32;
        worst = Math.max(worst, 10 * Math.hypot(x, y));
      }
    }
    return worst;
  },
  within: { relative: 1e-9 },
};

/** Five bores, µm off the datum at each end; the second list leaves the plane. */
const centres = [
  [0, 0, 0, 0, 40],
  [12, 7, 15, -9, 33],
  [-8, -14, -4, -20, 28],
  [21, 3, 25, 11, 45],
  [2, -6, -3, -2, 36],
] as const;

function line(ofY: number): CheckedBore[] {
  return centres.map(([x0, y0, x1, y1, clearanceMicrometres], index) => ({
    from: index * 0.11,
    to: index * 0.11 + 0.03,
    centreFrom: { x: x0 * 1e-6, y: ofY * y0 * 1e-6 },
    centreTo: { x: x1 * 1e-6, y: ofY * y1 * 1e-6 },
    bore: 0.022 + clearanceMicrometres * 1e-6,
    journal: 0.022,
  }));
}

function ringsOf(bores: readonly CheckedBore[]) {
  return bores.flatMap(({ from, to, centreFrom, centreTo, bore, journal }) => [
    { z: from, ...centreFrom, room: bore - journal },
    { z: to, ...centreTo, room: bore - journal },
  ]);
}

const straightChecks: Check[] = [
  {
    kinds: ["effective-clearance"],
    what: "most clearance at the tightest of five bores out of line in one plane",
    method: "second-order cone programme, barrier and Newton's method",
    against: "independent",
    source:
      "every three places that could hold the shaft, by lever arms (Helly, Chebyshev)",
    unit: "µm",
    ours: () => known(straightShaft(line(0))).leastClearance * 1e6,
    theirs: () => mostRoomInPlane(ringsOf(line(0))) * 1e6,
    within: { absolute: 1e-6 },
  },
  {
    kinds: ["effective-clearance"],
    what: "most clearance at the tightest of five bores out of line in space",
    method: "second-order cone programme, barrier and Newton's method",
    against: "independent",
    source: "a grid of axes, then Nelder and Mead's simplex",
    unit: "µm",
    ours: () => known(straightShaft(line(1))).leastClearance * 1e6,
    theirs: () => mostRoomBySearch(ringsOf(line(1))) * 1e6,
    within: { absolute: 0.01 },
  },
];

export default [pilotCheck, ...straightChecks] satisfies readonly Check[];
