// A second look at server/core/film where it is warm: viscosity, the balance of heat worked out again from another solution of the film
// (second/film.ts), the clearances that carry, and the speed of a swing.
import type { Bearing } from "../../server/core/film/bearing-film.ts";
import {
  filmAtClearance,
  sweepClearance,
  type ClearanceQuestion,
} from "../../server/core/film/clearance-sweep.ts";
import { warmFilm, type Cooling } from "../../server/core/film/heat-balance.ts";
import { oscillatingSpeed } from "../../server/core/film/running.ts";
import {
  dynamicViscosity,
  waltherLine,
} from "../../server/core/film/viscosity.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";
import { simpson } from "./second/chance.ts";
import { film } from "./second/film.ts";

const VOLUMES =
  "second look: finite volumes in Vogelpohl's variable, finer in the narrow gap, two grids and Richardson";

/** ISO VG 100's 100 cSt at 40 °C and 11.2 at 100 °C, by the two-point form of a straight line: no slope, no height. */
function kinematic(celsius: number): number {
  const y = (cSt: number) => Math.log(Math.log(cSt + 0.7));
  // ln ln and log log differ by a constant that drops out, and so does the base of the temperature's.
  const x = (t: number) => Math.log(t + 273.15);
  const share = (x(celsius) - x(40)) / (x(100) - x(40));
  return Math.exp(Math.exp(y(100) + share * (y(11.2) - y(100)))) - 0.7;
}
const line = () =>
  got(
    waltherLine(
      { temperature: 40, kinematic: 100e-6 },
      { temperature: 100, kinematic: 11.2e-6 },
    ),
  );
/** dρ/ρ = −α·(1 + 1.6·α·Δ)·dΔ, Δ in °F over 60 °F, is what the exponential is the sum of. */
function densityOf(at15: number, celsius: number): number {
  const over60 = (t: number) => 1.8 * t + 32 - 60;
  const from60 = (rho60: number, t: number) => {
    const alpha = 0.34878 / rho60;
    const sum = simpson(
      (d) => alpha + 1.6 * alpha * alpha * d,
      0,
      over60(t),
      50,
    );
    return rho60 * Math.exp(-sum);
  };
  let rho60 = at15;
  for (let turn = 0; turn < 40; turn++) rho60 *= at15 / from60(rho60, 15);
  return from60(rho60, celsius);
}
const mPas = (celsius: number) =>
  1e-3 * kinematic(celsius) * densityOf(880, celsius);

const viscosityChecks = [-20, 0, 23, 40, 71.5, 100, 120].map(
  (celsius): Check => ({
    kinds: ["film"],
    what: `dynamic viscosity at ${String(celsius)} °C`,
    method: "Walther's line by height and slope, density by its exponential",
    against: "independent",
    source:
      "second look: the two-point form in other logarithms, density by quadrature and by repeated shots at 60 °F",
    unit: "mPa·s",
    ours: () =>
      1e3 * got(dynamicViscosity({ line: line(), density: 880 }, celsius)),
    theirs: () => mPas(celsius),
    within: { relative: 1e-6 },
  }),
);

const coolings: readonly Cooling[] = [
  { by: "side-flow", inlet: 45, volumetricHeat: 1.75e6 },
  { by: "whole-flow", inlet: 38, volumetricHeat: 1.6e6 },
  { by: "case", ambient: 22, area: 0.06, transfer: 17 },
];
const warm = {
  diameter: 0.05,
  length: 0.04,
  diametralClearance: 70e-6,
  load: 3500,
  turnsPerSecond: 12,
} as const satisfies Bearing;

const heatChecks = coolings.flatMap((cooling): Check[] => {
  const found = () =>
    got(warmFilm(warm, { line: line(), density: 880 }, cooling));
  // From the eccentricity that was answered everything else is worked out again.
  const again = () => {
    const { relativeEccentricity, effectiveTemperature } = found();
    const one = film(warm.length / warm.diameter, relativeEccentricity);
    const gap = warm.diametralClearance / 2;
    const radius = warm.diameter / 2;
    const power =
      one.friction *
      (gap / radius) *
      warm.load *
      2 *
      Math.PI *
      radius *
      warm.turnsPerSecond;
    const drawn = one.flow * radius * gap * warm.turnsPerSecond * warm.length;
    const carried = (() => {
      switch (cooling.by) {
        case "side-flow":
          return cooling.volumetricHeat * drawn * one.sideFlow;
        case "whole-flow":
          // The ends' share leaves with half of the rise, the rest with all of it.
          return (
            cooling.volumetricHeat *
            drawn *
            (one.sideFlow / 2 + (1 - one.sideFlow))
          );
        case "case":
          return cooling.area * cooling.transfer;
        case "held":
          return Infinity;
      }
    })();
    const rise = power / carried;
    return {
      rise,
      temperature:
        cooling.by === "case"
          ? cooling.ambient + rise
          : cooling.by === "held"
            ? cooling.temperature
            : cooling.inlet + rise / 2,
      load:
        (1e-3 *
          mPas(effectiveTemperature) *
          warm.turnsPerSecond *
          (radius / gap) ** 2 *
          warm.diameter *
          warm.length) /
        one.sommerfeld,
    };
  };
  const common = {
    method: `heat balance, ${cooling.by}`,
    against: "independent",
    source: `${VOLUMES}; friction, flow and load worked out again at the eccentricity that was answered`,
  } as const;
  return [
    {
      ...common,
      kinds: ["oil-rise"],
      what: `rise, ${cooling.by}`,
      unit: "K",
      ours: () => found().oilRise,
      theirs: () => again().rise,
      within: { relative: 0.015 },
    },
    {
      ...common,
      kinds: ["oil-rise"],
      what: `temperature in the gap, ${cooling.by}`,
      unit: "K",
      ours: () => found().effectiveTemperature,
      theirs: () => again().temperature,
      within: { absolute: 0.5 },
    },
    {
      ...common,
      kinds: ["film"],
      what: `load that the film carries, ${cooling.by}`,
      unit: "N",
      ours: () => warm.load,
      theirs: () => again().load,
      within: { relative: 0.01 },
    },
  ];
});

const question: ClearanceQuestion = {
  bearing: { diameter: 0.05, length: 0.04, load: 3500, turnsPerSecond: 12 },
  oil: { line: line(), density: 880 },
  cooling: { by: "side-flow", inlet: 45, volumetricHeat: 1.75e6 },
  loss: { form: 1e-6 },
  journalRa: 0.4e-6,
  boreRa: 0.8e-6,
  needs: { film: 8e-6, filmRatio: 5, hottest: 90 },
};

const sweepChecks = (["least", "most"] as const).map((end): Check => {
  const [from, to] = [20e-6, 400e-6];
  return {
    kinds: ["film"],
    what: `${end} clearance that carries`,
    method: "sweep in even ratios, edges closed in on",
    against: "independent",
    source: "second look: every 0.1 µm from 20 to 400 µm, one by one",
    unit: "µm",
    ours: () =>
      1e6 * (got(sweepClearance(question, from, to))[0]?.[end] ?? NaN),
    theirs: () => {
      const carrying: number[] = [];
      for (let tenths = 200; tenths <= 4000; tenths++) {
        const at = filmAtClearance(question, tenths * 1e-7);
        if (at.valid && at.value.carries) carrying.push(tenths / 10);
      }
      return end === "least" ? Math.min(...carrying) : Math.max(...carrying);
    },
    within: { relative: 0.003 },
  };
});

const swingCheck: Check = {
  kinds: ["surface-speed"],
  what: "mean speed of a swing",
  method: "twice the angle, radius, cycles",
  against: "independent",
  source: "second look: the speed of a sine swing summed over a cycle",
  unit: "m/s",
  ours: () => got(oscillatingSpeed(0.04, 1.2, 0.7)),
  theirs: () => {
    const omega = 2 * Math.PI * 0.7;
    const speed = (t: number) =>
      Math.abs(0.02 * 0.6 * omega * Math.cos(omega * t));
    // From rest to rest, so that the sum has no corner in it.
    const quarter = 1 / 0.7 / 4;
    return simpson(speed, 0, quarter, 200) / quarter;
  },
  within: { relative: 1e-6 },
};

export default [
  ...viscosityChecks,
  ...heatChecks,
  ...sweepChecks,
  swingCheck,
] satisfies readonly Check[];
