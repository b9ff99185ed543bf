// The film of whole bearings and its heat, against textbooks' worked examples and charts.
import {
  bearingFilm,
  type BearingFilm,
} from "../../server/core/film/bearing-film.ts";
import { warmFilm } from "../../server/core/film/heat-balance.ts";
import { got } from "../core/film/got.ts";
import { grade } from "../core/film/grade.ts";
import { raimondiBoyd } from "../core/film/raimondi-boyd.ts";
import type { Check } from "./check.ts";

const kinds = ["film", "relative-eccentricity", "sommerfeld", "friction-power"];

/** A worked example: 25 mm journal in 25.03 mm, L/D ½, 1.2 kN, 55 mPa·s, 1100 rpm. */
const shigley = () =>
  got(
    bearingFilm(
      {
        diameter: 0.025,
        length: 0.0125,
        diametralClearance: 0.03e-3,
        load: 1200,
        turnsPerSecond: 1100 / 60,
      },
      { viscosity: 0.055, density: 870 },
    ),
  );
/** Another: 60 mm by 60 mm, 0.06 mm radial clearance, 3 kN, 30 mPa·s, 1440 rpm. */
const jindal = () =>
  got(
    bearingFilm(
      {
        diameter: 0.06,
        length: 0.06,
        diametralClearance: 0.12e-3,
        load: 3000,
        turnsPerSecond: 24,
      },
      { viscosity: 0.03, density: 870 },
    ),
  );

function example(
  source: string,
  ours: () => BearingFilm,
  rows: readonly (readonly [
    string,
    string,
    (film: BearingFilm) => number,
    number,
    number,
  ])[],
): readonly Check[] {
  return rows.map(([what, unit, take, theirs, relative]) => ({
    kinds,
    what,
    method: "Sommerfeld number, table, metres",
    against: "published",
    source,
    unit,
    ours: () => take(ours()),
    theirs: () => theirs,
    within: { relative },
  }));
}

const workedExamples: readonly Check[] = [
  // both read two digits off the charts, or between the rows: 0.3 is 0.297, 5.4 is 5.27 in the table
  ...example(
    "Shigley's Mechanical Engineering Design, solution of problem 12-1 (10th ed.)",
    shigley,
    [
      [
        "specific load, 25 mm journal",
        "Pa",
        (f) => f.specificLoad,
        3.84e6,
        1e-6,
      ],
      [
        "Sommerfeld number, 25 mm journal",
        "1",
        (f) => f.sommerfeld,
        0.182,
        0.003,
      ],
      ["least film, 25 mm journal", "m", (f) => f.leastFilm, 0.0045e-3, 0.02],
      [
        "friction coefficient, 25 mm journal",
        "1",
        (f) => f.frictionCoefficient,
        0.00648,
        0.03,
      ],
      [
        "friction torque, 25 mm journal",
        "N·m",
        (f) => f.frictionTorque,
        0.0972,
        0.03,
      ],
      [
        "friction power, 25 mm journal",
        "W",
        (f) => f.frictionPower,
        11.2,
        0.03,
      ],
      ["flow drawn in, 25 mm journal", "m³/s", (f) => f.flow, 219e-9, 0.02],
      ["side flow, 25 mm journal", "m³/s", (f) => f.sideFlow, 177e-9, 0.02],
    ],
  ),
  // it interpolates straight between rows of a bent curve, which takes 3 % off the film
  ...example(
    "Jindal, Machine Design, example 17-4, as recomputed in an open companion",
    jindal,
    [
      ["least film, 60 mm journal", "m", (f) => f.leastFilm, 0.032e-3, 0.04],
      [
        "friction coefficient, 60 mm journal",
        "1",
        (f) => f.frictionCoefficient,
        0.00985,
        0.02,
      ],
      [
        "friction power, 60 mm journal",
        "W",
        (f) => f.frictionPower,
        133.7,
        0.02,
      ],
      [
        "flow drawn in, 60 mm journal",
        "m³/s",
        (f) => f.flow,
        0.638e-3 / 60,
        0.02,
      ],
      [
        "rise with the whole flow warmed alike, 60 mm journal",
        "K",
        // 8.3·p: a volumetric heat of 4π·1e6/8.3
        (f) => f.frictionPower / (((4 * Math.PI * 1e6) / 8.3) * f.flow),
        8.3,
        0.02,
      ],
    ],
  ),
  ...example(
    "a pump handbook's estimate of bearing losses: 5 in by 5 in, 0.0025 in radial, 5000 rpm, 2e-6 lbf·s/in²: 16.32 hp",
    () => {
      const inch = 0.0254;
      const reyn = 4.4482216152605 / inch ** 2;
      return got(
        bearingFilm(
          // Petroff's drag is that of a journal without load; this one runs at 3 % of its clearance
          {
            diameter: 5 * inch,
            length: 5 * inch,
            diametralClearance: 0.005 * inch,
            load: 4200,
            turnsPerSecond: 5000 / 60,
          },
          { viscosity: 2e-6 * reyn, density: 870 },
        ),
      );
    },
    [
      [
        "friction power of a nearly centred journal",
        "W",
        (f) => f.frictionPower,
        16.32 * 745.69987,
        0.01,
      ],
    ],
  ),
];

/** A bearing that warms its own SAE 30, all of the flow fresh. */
const warmed = (lengthOverDiameter: number, load: number) =>
  got(
    warmFilm(
      {
        diameter: 0.04,
        length: 0.04 * lengthOverDiameter,
        diametralClearance: 60e-6,
        load: load * lengthOverDiameter,
        turnsPerSecond: 10,
      },
      grade("sae-30").nominal,
      { by: "whole-flow", inlet: 40, volumetricHeat: 1.8e6 },
    ),
  );

/**
 * Rise of the whole flow, made a ratio: ρcΔT/(4πP) = (R/c)f ÷ [Q/(RcNL)·(1 − ½Qs/Q)], from the tabled rows at a
 * Sommerfeld number, straight on logarithms between two of them.
 */
function tabledRise(lengthOverDiameter: number, sommerfeld: number): number {
  const rows = raimondiBoyd.filter(
    (row) => row.lengthOverDiameter === lengthOverDiameter,
  );
  const rise = (row: (typeof rows)[number]) =>
    Math.log(
      row.frictionVariable / (row.flowVariable * (1 - row.sideFlowRatio / 2)),
    );
  const after = rows.findIndex((row) => row.sommerfeld < sommerfeld);
  const [one, other] = [rows[after - 1], rows[after]];
  if (one === undefined || other === undefined)
    throw new Error("outside the tabled rows");
  const part =
    Math.log(sommerfeld / one.sommerfeld) /
    Math.log(other.sommerfeld / one.sommerfeld);
  return Math.exp(rise(one) + part * (rise(other) - rise(one)));
}

const againstRise = [1, 0.5, 0.25].flatMap((length) =>
  [600, 1200].flatMap((load): readonly Check[] => {
    const check: Check = {
      kinds: ["oil-rise"],
      what: `rise over specific load, L/D ${length}, ${load * length} N`,
      method: "heat balance with SAE 30, whole flow",
      against: "published",
      source:
        "Raimondi & Boyd's rows put into Shigley's equation for the rise (12-15), read between rows on logarithms",
      unit: "1",
      ours: () =>
        (1.8e6 * warmed(length, load).oilRise) /
        (4 * Math.PI * warmed(length, load).specificLoad),
      theirs: () => tabledRise(length, warmed(length, load).sommerfeld),
      within: { relative: 0.03 },
    };
    if (length !== 1) return [check];
    return [
      check,
      {
        ...check,
        what: `${check.what}, by the chart`,
        source:
          "Shigley, fig. 12-24, curve fit for L/D 1 and S from 0.01 to 1 (4 % off its own points)",
        theirs: () => {
          const { sommerfeld } = warmed(length, load);
          return 0.349109 + 6.0094 * sommerfeld + 0.047467 * sommerfeld ** 2;
        },
        within: { relative: 0.05 },
      },
    ];
  }),
);

const checks: readonly Check[] = [...workedExamples, ...againstRise];

export default checks;
