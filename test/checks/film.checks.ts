// The film in ratios, against published tables, closed forms and another solver.
import { filmAtEccentricity } from "../../server/core/film/film-point.ts";
import {
  solveReynolds,
  type FilmRatios,
} from "../../server/core/film/reynolds.ts";
import { elementFilm } from "../core/film/finite-elements.ts";
import { got } from "../core/film/got.ts";
import { khonsariBooser } from "../core/film/khonsari-booser.ts";
import { longBearing, shortBearing } from "../core/film/limits.ts";
import { raimondiBoyd } from "../core/film/raimondi-boyd.ts";
import type { Check } from "./check.ts";

const degree = Math.PI / 180;

/** What ships: the table, and beyond it the solver that made it. */
function film(
  lengthOverDiameter: number,
  relativeEccentricity: number,
): FilmRatios {
  return got(
    lengthOverDiameter === Infinity
      ? solveReynolds(lengthOverDiameter, relativeEccentricity, {
          around: 256,
          along: 1,
        })
      : filmAtEccentricity(lengthOverDiameter, relativeEccentricity),
  );
}

function place(
  lengthOverDiameter: number,
  relativeEccentricity: number,
): string {
  return `L/D ${lengthOverDiameter === Infinity ? "∞" : lengthOverDiameter}, ε ${relativeEccentricity}`;
}

const table = "film from the table, two-way cubics";
const kinds = ["film", "relative-eccentricity", "sommerfeld", "friction-power"];

/**
 * Chart precision is 2 %. Beyond it stand: two flows of the bearing without ends, 3 and 5 % off the closed form
 * (which ours meets within 0.01 %); and two peak pressures at ε = 0.8, where a second solver sides with ours, as
 * Khonsari & Booser's table does at 0.7 and 0.9.
 */
function raimondiBoydTolerance(
  ratio: string,
  lengthOverDiameter: number,
  eccentricity: number,
): { readonly relative: number; readonly because?: string } {
  if (
    ratio === "flow variable" &&
    lengthOverDiameter === Infinity &&
    0.7 < eccentricity
  )
    return {
      relative: 0.06,
      because:
        "the two flows of the endless bearing at ε 0.8 and 0.9 lie 3 and 5 % off their own closed form, π times the film where the pressure peaks, which the solver meets (the row of the long bearing below)",
    };
  if (
    ratio === "P/pmax" &&
    (lengthOverDiameter === 1 || lengthOverDiameter === 0.5) &&
    eccentricity === 0.8
  )
    return {
      relative: 0.03,
      because:
        "two peak pressures at ε 0.8, L/D 1 and ½: the finite elements (below) side with ours at these very points, and so does the other book at ε 0.7 and 0.9",
    };
  return { relative: 0.02 };
}

const againstRaimondiBoyd = raimondiBoyd.flatMap((row): readonly Check[] => {
  const { lengthOverDiameter, relativeEccentricity } = row;
  const check = (
    ratio: string,
    ours: (film: FilmRatios) => number,
    theirs: number,
  ): Check => {
    const { relative, because } = raimondiBoydTolerance(
      ratio,
      lengthOverDiameter,
      relativeEccentricity,
    );
    return {
      kinds,
      what: `${ratio}, ${place(lengthOverDiameter, relativeEccentricity)}`,
      method:
        lengthOverDiameter === Infinity
          ? "finite volumes round the film"
          : table,
      against: "published",
      source:
        "Raimondi & Boyd, Trans. ASLE 1 (1958) 159–209, full bearings; read in transcriptions of the table",
      unit: "1",
      ours: () => ours(film(lengthOverDiameter, relativeEccentricity)),
      theirs: () => theirs,
      within: { relative },
      because,
    };
  };
  return [
    check("Sommerfeld number", (f) => f.sommerfeld, row.sommerfeld),
    {
      ...check("attitude", (f) => f.attitude / degree, row.attitude),
      unit: "deg",
    },
    check("friction variable", (f) => f.frictionVariable, row.frictionVariable),
    check("flow variable", (f) => f.flowVariable, row.flowVariable),
    check("P/pmax", (f) => f.meanToPeakPressure, row.meanToPeakPressure),
    ...(lengthOverDiameter === Infinity
      ? []
      : [check("side flow ratio", (f) => f.sideFlowRatio, row.sideFlowRatio)]),
  ];
});

const againstKhonsariBooser = khonsariBooser.flatMap(
  (row): readonly Check[] => {
    const check = (
      ratio: string,
      ours: (film: FilmRatios) => number,
      theirs: number,
      within: Check["within"],
      unit = "1",
    ): Check => ({
      kinds,
      what: `${ratio}, ${place(row.lengthOverDiameter, row.relativeEccentricity)}`,
      method: table,
      against: "published",
      source:
        "Khonsari & Booser, Applied Tribology, table 8.6; read in a transcription",
      unit,
      ours: () => ours(film(row.lengthOverDiameter, row.relativeEccentricity)),
      theirs: () => theirs,
      within,
    });
    return [
      check("Sommerfeld number", (f) => f.sommerfeld, row.sommerfeld, {
        relative: 0.01,
      }),
      check(
        "friction variable",
        (f) => f.frictionVariable,
        row.frictionVariable,
        { relative: 0.01 },
      ),
      check("inflow over πRcNL", (f) => f.flowVariable / Math.PI, row.inflow, {
        relative: 0.01,
      }),
      check(
        "leakage over πRcNL",
        (f) => (f.flowVariable * f.sideFlowRatio) / Math.PI,
        row.leakage,
        { relative: 0.01 },
      ),
      check(
        "pmax over μN(R/c)²",
        (f) => 1 / (f.sommerfeld * f.meanToPeakPressure),
        row.peak,
        { relative: 0.02 },
      ),
      check(
        "attitude",
        (f) => f.attitude / degree,
        row.attitude,
        { absolute: 0.15 },
        "deg",
      ),
      // the book's angles stand on steps of 3°
      check(
        "angle of the peak",
        (f) => f.peakAngle / degree,
        row.peakAngle,
        { absolute: 1.6 },
        "deg",
      ),
      check(
        "end of the film",
        (f) => f.filmEndAngle / degree,
        row.filmEnd,
        { absolute: 1.6 },
        "deg",
      ),
    ];
  },
);

/** The flow that Raimondi & Boyd have 5 % higher; the limits below stop short of it. */
const endlessFlow: Check = {
  kinds,
  what: `flow variable, ${place(Infinity, 0.9)}`,
  method: "finite volumes round the film",
  against: "independent",
  source:
    "long bearing with Reynolds' condition, closed pressure gradient, quadrature",
  unit: "1",
  ours: () => film(Infinity, 0.9).flowVariable,
  theirs: () => longBearing(0.9).flowVariable,
  within: { relative: 5e-4 },
};

const againstLimits = [0.2, 0.5, 0.8].flatMap(
  (eccentricity): readonly Check[] => {
    const check = (
      length: number,
      ratio: string,
      ours: () => number,
      theirs: () => number,
      relative: number,
    ): Check => ({
      kinds,
      what: `${ratio}, ${place(length, eccentricity)}`,
      method: "finite volumes round the film",
      against: "independent",
      source:
        length === Infinity
          ? "long bearing with Reynolds' condition, closed pressure gradient, quadrature"
          : "short bearing (Ocvirk), closed pressure, quadrature",
      unit: "1",
      ours,
      theirs,
      within: { relative },
    });
    const short = 1 / 64;
    const ours = () =>
      got(solveReynolds(short, eccentricity, { around: 192, along: 24 }));
    const theirs = () => shortBearing(short, eccentricity);
    const endless = () => film(Infinity, eccentricity);
    const long = () => longBearing(eccentricity);
    return [
      check(
        Infinity,
        "Sommerfeld number",
        () => endless().sommerfeld,
        () => long().sommerfeld,
        5e-4,
      ),
      check(
        Infinity,
        "attitude",
        () => endless().attitude,
        () => long().attitude,
        5e-4,
      ),
      check(
        Infinity,
        "flow variable",
        () => endless().flowVariable,
        () => long().flowVariable,
        5e-4,
      ),
      check(
        Infinity,
        "P/pmax",
        () => endless().meanToPeakPressure,
        () => long().meanToPeakPressure,
        5e-4,
      ),
      check(
        short,
        "Sommerfeld number",
        () => ours().sommerfeld,
        () => theirs().sommerfeld,
        2e-3,
      ),
      check(
        short,
        "attitude",
        () => ours().attitude,
        () => theirs().attitude,
        2e-3,
      ),
      check(
        short,
        "flow variable",
        () => ours().flowVariable,
        () => theirs().flowVariable,
        2e-3,
      ),
      check(
        short,
        "side flow ratio",
        () => ours().sideFlowRatio,
        () => theirs().sideFlowRatio,
        2e-3,
      ),
    ];
  },
);

const elements = new Map<string, ReturnType<typeof elementFilm>>();
const againstElements = (
  [
    [0.6, 0.35],
    [1, 0.5],
    [1.7, 0.7],
    [0.3, 0.6],
    [1, 0.8],
    [0.5, 0.8],
  ] as const
).flatMap(([length, eccentricity]): readonly Check[] => {
  const theirs = () => {
    const key = place(length, eccentricity);
    const known = elements.get(key) ?? elementFilm(length, eccentricity);
    elements.set(key, known);
    return known;
  };
  return (
    ["sommerfeld", "attitude", "flowVariable", "meanToPeakPressure"] as const
  ).map((ratio) => ({
    kinds,
    what: `${ratio}, ${place(length, eccentricity)}`,
    method: table,
    against: "independent",
    source:
      "bilinear finite elements, clipped over-relaxation, two meshes and Richardson",
    unit: "1",
    ours: () => film(length, eccentricity)[ratio],
    theirs: () => theirs()[ratio],
    within: { relative: 0.005 },
  }));
});

const checks: readonly Check[] = [
  ...againstRaimondiBoyd,
  ...againstKhonsariBooser,
  ...againstLimits,
  endlessFlow,
  ...againstElements,
];

export default checks;
