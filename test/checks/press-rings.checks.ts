// The press fit of the winch's bush against finite elements with thermal strain (test/core/press/elastic-rings.ts), which share no
// formula with it. Textbook examples are in press.checks.ts.
import {
  bushTemperatureToDropIn,
  caseTemperatureToDropIn,
} from "../../server/core/press/drop-in.ts";
import { pressForce } from "../../server/core/press/force.ts";
import { boreAfterPress } from "../../server/core/press/interference.ts";
import {
  closure,
  contactPressure,
  pressStresses,
  type PressedPair,
} from "../../server/core/press/ring.ts";
import {
  pressAtTemperature,
  releaseTemperature,
} from "../../server/core/press/temperature.ts";
import { pressTogether, type Ring } from "../core/press/elastic-rings.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";

const inch = 0.0254;
const mm = 1e-3;

/** 7/8 in bronze bush in a 1 in hole of an aluminium boss, as the winch's. */
const winch: PressedPair = {
  bore: 0.875 * inch,
  od: 1 * inch,
  boss: 1.75 * inch,
  bushMaterial: { modulus: 100e9, poisson: 0.35 },
  caseMaterial: { modulus: 72.4e9, poisson: 0.33 },
};
const bronze = 18e-6;
const aluminium = 21.5e-6;
const winchInterference = 1e-3 * inch;

function solved(
  bush = 20,
  housing = 20,
  count = 800,
  interference = winchInterference,
) {
  const ring = (
    inner: number,
    outer: number,
    material: { modulus: number; poisson: number },
    freeStrain: number,
  ): Ring => ({
    innerRadius: inner / 2,
    outerRadius: outer / 2,
    ...material,
    freeStrain,
  });
  return pressTogether(
    ring(winch.bore, winch.od, winch.bushMaterial, bronze * (bush - 20)),
    ring(winch.od, winch.boss, winch.caseMaterial, aluminium * (housing - 20)),
    interference / 2,
    count,
  );
}

const elements =
  "two rings by linear finite elements along the radius, plane stress, thermal strain";

const checks: readonly Check[] = [
  {
    kinds: ["bore-closure"],
    what: "closure of the winch's bush per unit of interference",
    method: "Lamé's rings in closed form",
    against: "independent",
    source: elements,
    unit: "1",
    ours: () => got(closure(winch)),
    theirs: () => (-2 * solved().boreMoves) / winchInterference,
    within: { relative: 1e-6 },
  },
  {
    kinds: ["contact-pressure"],
    what: "contact pressure of the winch's bush",
    method: "Lamé's rings in closed form",
    against: "independent",
    source: elements,
    unit: "Pa",
    ours: () => got(contactPressure(winch, winchInterference)),
    theirs: () => solved().pressure,
    within: { relative: 1e-6 },
  },
  {
    kinds: ["bush-stress"],
    what: "von Mises stress at the bore of the winch's bush",
    method: "Lamé's rings in closed form",
    against: "independent",
    source: elements,
    unit: "Pa",
    ours: () => {
      const pressure = got(contactPressure(winch, winchInterference));
      return got(pressStresses(winch, pressure)).bushBore.vonMises;
    },
    theirs: () => Math.abs(solved().hoopAtBore),
    within: { relative: 1e-6 },
  },
  ...(
    [
      [60, 60],
      [70, 55],
      [-10, -10],
    ] as const
  ).map(([bush, housing]): Check => {
    const press = {
      od: winch.od,
      interference: winchInterference,
      closure: got(closure(winch)),
      bushExpansion: bronze,
      caseExpansion: aluminium,
      bore: winch.bore - got(closure(winch)) * winchInterference,
    };
    return {
      kinds: ["hot-clearance", "cold-clearance"],
      what: `running bore of the winch's bush at ${bush} °C, case at ${housing} °C`,
      method: "closure let off by what is left of the interference",
      against: "independent",
      source: elements,
      unit: "m",
      ours: () => got(pressAtTemperature(press, bush, housing)).bore,
      theirs: () => winch.bore + 2 * solved(bush, housing).boreMoves,
      // second order, which the formula leaves out: closure times thermal strain, 16 µm × 1e-3
      within: { absolute: 4e-8 },
    };
  }),
  {
    kinds: ["heat-to"],
    what: "rise that opens a 438 mm aluminium ring to pass a 440 mm steel tube with 0.5 mm to spare",
    method: "hole and bush grown freely to the gap",
    against: "independent",
    source:
      "rise = interference/(expansion · hole), as Engineering ToolBox, Assembly of Shrink-Fits, states it, worked here",
    unit: "K",
    ours: () =>
      got(
        caseTemperatureToDropIn({
          od: 440 * mm,
          hole: 438 * mm,
          gap: 0.5 * mm,
          bushExpansion: 11.7e-6,
          caseExpansion: 23e-6,
        }),
      ) - 20,
    theirs: () => 2.5 / 438 / 23e-6,
    within: { absolute: 1e-9 },
  },
  {
    kinds: ["bore-after-press"],
    what: "bore of the winch's bush after pressing with 1 thou of interference",
    method: "id less closure times interference",
    against: "independent",
    source: elements,
    unit: "m",
    ours: () => {
      const C = got(closure(winch));
      const sure = (size: number) => ({ low: size, high: size });
      const sizes = {
        id: sure(winch.bore),
        od: sure(winch.od + winchInterference),
        hole: sure(winch.od),
      };
      return got(boreAfterPress(sizes, { low: C, high: C }, 0)).nominal;
    },
    theirs: () => winch.bore + 2 * solved().boreMoves,
    within: { absolute: 1e-10 },
  },
  {
    kinds: ["release-temperature"],
    what: "temperature at which the winch's case lets a bush of 0.4 thou go",
    method: "interference over the difference of growths",
    against: "independent",
    source: `${elements}; bisection for no contact pressure`,
    unit: "degC",
    ours: () =>
      got(
        releaseTemperature({
          od: winch.od,
          interference: 0.4 * winchInterference,
          bushExpansion: bronze,
          caseExpansion: aluminium,
        }),
      ),
    theirs: () =>
      root(20, 300, (t) => solved(t, t, 100, 0.4 * winchInterference).pressure),
    within: { absolute: 1e-3 },
  },
  {
    kinds: ["freeze-to"],
    what: "how cold a bush 0.8 thou over its 1 in hole must be to drop in with 0.2 thou to spare",
    method: "free growth solved for the temperature",
    against: "independent",
    source: "bisection of the gap between hole and bush, each grown by itself",
    unit: "degC",
    ours: () =>
      got(
        bushTemperatureToDropIn({
          od: 1.0008 * inch,
          hole: inch,
          gap: 0.0002 * inch,
          bushExpansion: bronze,
          caseExpansion: aluminium,
        }),
      ),
    theirs: () =>
      root(-100, 20, (t) => {
        const od = 1.0008 * inch;
        return inch - (od + od * bronze * (t - 20)) - 0.0002 * inch;
      }),
    within: { absolute: 1e-6 },
  },
  {
    kinds: ["press-force"],
    what: "force to press the winch's bush home, 1.25 in long, friction 0.1",
    method: "friction times pressure times area",
    against: "independent",
    source: `${elements}; friction summed over 100 rings of the contact`,
    unit: "N",
    ours: () => {
      const pressure = got(contactPressure(winch, winchInterference));
      return got(
        pressForce({ low: pressure, high: pressure }, winch.od, 1.25 * inch, {
          low: 0.1,
          high: 0.1,
        }),
      ).high;
    },
    theirs: () => {
      const { pressure } = solved();
      let force = 0;
      for (let i = 0; i < 100; i++)
        force += 0.1 * pressure * (Math.PI * inch) * ((1.25 * inch) / 100);
      return force;
    },
    within: { relative: 1e-6 },
  },
];

/** Where a falling or rising function is nothing, by halving. */
function root(from: number, to: number, of: (x: number) => number): number {
  const sign = Math.sign(of(from));
  let [low, high] = [from, to];
  for (let i = 0; i < 50; i++) {
    const half = (low + high) / 2;
    if (Math.sign(of(half)) === sign) low = half;
    else high = half;
  }
  return (low + high) / 2;
}

export default checks;
