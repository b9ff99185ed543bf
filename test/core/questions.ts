// A usual question for each function of the engineering that answers or refuses, with numbers that it takes: for tests that then ask otherwise.
import type { Answer } from "../../server/core/answer.ts";
import type { Band } from "../../server/core/quantity/band.ts";
import * as bearingFilm from "../../server/core/film/bearing-film.ts";
import * as filmPoint from "../../server/core/film/film-point.ts";
import * as filmRatio from "../../server/core/film/film-ratio.ts";
import * as heatBalance from "../../server/core/film/heat-balance.ts";
import * as running from "../../server/core/film/running.ts";
import * as viscosity from "../../server/core/film/viscosity.ts";
import * as wantedClearance from "../../server/core/film/wanted-clearance.ts";
import * as inch from "../../server/core/fits/b4-1.ts";
import * as iso from "../../server/core/fits/iso-286.ts";
import * as lineFit from "../../server/core/learning/line-fit.ts";
import * as sample from "../../server/core/learning/sample.ts";
import * as blindBore from "../../server/core/line/blind-bore.ts";
import * as clearance from "../../server/core/line/clearance.ts";
import * as cutSize from "../../server/core/line/cut-size.ts";
import * as pilot from "../../server/core/line/pilot.ts";
import * as reamerLimits from "../../server/core/line/reamer-limits.ts";
import * as reamerWindow from "../../server/core/line/reamer-window.ts";
import * as reamingAdvice from "../../server/core/line/reaming-advice.ts";
import * as stock from "../../server/core/line/stock.ts";
import * as straightShaft from "../../server/core/line/straight-shaft.ts";
import * as wantingJournal from "../../server/core/line/wanting-journal.ts";
import * as boss from "../../server/core/press/boss.ts";
import * as dropIn from "../../server/core/press/drop-in.ts";
import * as force from "../../server/core/press/force.ts";
import * as interference from "../../server/core/press/interference.ts";
import * as ring from "../../server/core/press/ring.ts";
import * as smoothing from "../../server/core/press/smoothing.ts";
import * as temperature from "../../server/core/press/temperature.ts";
import * as firstYield from "../../server/core/press/yield.ts";
import * as student from "../../server/core/quantity/student.ts";
import * as budget from "../../server/core/readings/budget.ts";
import * as components from "../../server/core/readings/components.ts";
import * as form from "../../server/core/readings/form.ts";
import * as gauge from "../../server/core/readings/gauge.ts";
import * as lobing from "../../server/core/readings/lobing.ts";
import * as statistics from "../../server/core/readings/statistics.ts";
import * as stray from "../../server/core/readings/stray.ts";
import * as swingBudget from "../../server/core/readings/swing-budget.ts";
import * as verdict from "../../server/core/readings/verdict.ts";
import * as chain from "../../server/core/stack/chain.ts";
import * as shims from "../../server/core/stack/shims.ts";
import * as reaching from "../../server/core/trend/reaching.ts";

type Warmed = Omit<chain.WarmMember, "sign">;

// SI units throughout: m, N, Pa, 1/K, and °C
const band = (low: number, high: number) => ({ low, high });
const bearing = {
  diameter: 0.05,
  length: 0.05,
  diametralClearance: 5e-5,
  load: 2000,
  turnsPerSecond: 10,
  roundGrooveWidth: 0.005,
};
const oil = { line: { height: 8.9, slope: 3.4 }, density: 870 };
const pair = {
  bore: 0.03,
  od: 0.04,
  boss: 0.06,
  bushMaterial: { modulus: 1e11, poisson: 0.34 },
  caseMaterial: { modulus: 1.1e11, poisson: 0.26 },
};
const pressAt20 = {
  ...{ bore: 0.03, od: 0.04, interference: 3e-5, closure: 0.9 },
  ...{ bushExpansion: 18e-6, caseExpansion: 11e-6 },
};
const drop = {
  ...{ od: 0.04003, hole: 0.04, gap: 2e-5 },
  ...{ bushExpansion: 18e-6, caseExpansion: 11e-6 },
};
const heat = {
  ...{ partTemperature: 25, partExpansion: 18e-6 },
  ...{ toolTemperature: 20, toolExpansion: 11e-6 },
};
const component = (name: string) => ({
  name,
  sensitivity: 1,
  standardUncertainty: 1e-6,
  distribution: "normal" as const,
  degreesOfFreedom: 20,
});
const warm = {
  ...{ temperature: 22, temperatureUncertainty: 1 },
  ...{ expansion: 11e-6, expansionUncertainty: 1e-6 },
};
const wanting = {
  least: 0.02,
  greatest: 0.02001,
  wanted: band(2e-5, 6e-5),
};
const points = [
  { x: 0, y: 1 },
  { x: 1, y: 1.1 },
  { x: 2, y: 1.3 },
  { x: 3, y: 1.2 },
];
const fitted = {
  ...{ slope: 1e-6, slopeDeviation: 1e-7, spread: 1e-6 },
  ...{ degreesOfFreedom: 5, count: 7, meanX: 3, meanY: 0.02, squaresX: 28 },
};
const blind = { depth: 0.05, boreEnd: 0.045, before: 0.0249, cut: 0.025 };
const reamer = { chamfer: 0.002, point: 0.001, endClearance: 0.001 };
const centre = { x: 1e-5, y: 2e-5 };
const checked = {
  ...{ from: 0, to: 0.03, centreFrom: centre, centreTo: centre },
  ...{ bore: 0.02004, journal: 0.02, runout: 1e-5 },
};
/** Usual questions, each with an answer. */
export const QUESTIONS: Readonly<
  Record<string, readonly [(...words: never[]) => Answer<unknown>, unknown[]]>
> = {
  bearingFilm: [
    bearingFilm.bearingFilm,
    [bearing, { viscosity: 0.03, density: 870 }],
  ],
  filmAtEccentricity: [filmPoint.filmAtEccentricity, [1, 0.6]],
  filmAtSommerfeld: [filmPoint.filmAtSommerfeld, [1, 0.3]],
  filmRatio: [filmRatio.filmRatio, [1e-5, 4e-7, 8e-7]],
  "warmFilm, held": [
    heatBalance.warmFilm,
    [bearing, oil, { by: "held", temperature: 50 }],
  ],
  "warmFilm, side flow": [
    heatBalance.warmFilm,
    [bearing, oil, { by: "side-flow", inlet: 40, volumetricHeat: 1.7e6 }],
  ],
  turningSpeed: [running.turningSpeed, [0.05, 10]],
  oscillatingSpeed: [running.oscillatingSpeed, [0.05, 1, 0.5]],
  specificLoad: [running.specificLoad, [2000, 0.05, 0.05]],
  pressureTimesSpeed: [running.pressureTimesSpeed, [8e5, 1.5]],
  waltherLine: [
    viscosity.waltherLine,
    [
      { temperature: 40, kinematic: 46e-6 },
      { temperature: 100, kinematic: 6.8e-6 },
    ],
  ],
  kinematicViscosity: [viscosity.kinematicViscosity, [oil.line, 60]],
  densityAt: [viscosity.densityAt, [870, 60]],
  dynamicViscosity: [viscosity.dynamicViscosity, [oil, 60]],
  clearanceBySpeed: [wantedClearance.clearanceBySpeed, [0.05, 1.5]],
  clearanceByShopRule: [wantedClearance.clearanceByShopRule, [0.05]],
  inchFitLimits: [inch.inchFitLimits, [0.0254, "RC", 4]],
  inchTolerance: [inch.inchTolerance, [0.0254, 7]],
  isoLimits: [iso.isoLimits, [0.025, "H", 7]],
  isoTolerance: [iso.isoTolerance, [0.025, 7]],
  fitLine: [lineFit.fitLine, [points]],
  sampleOf: [sample.sampleOf, [[1, 1.1, 0.9]]],
  meanInterval: [
    sample.meanInterval,
    [{ mean: 1, spread: 0.1, count: 5 }, 0.95],
  ],
  nextInterval: [
    sample.nextInterval,
    [{ mean: 1, spread: 0.1, count: 5 }, 0.95],
  ],
  ledgeOf: [blindBore.ledgeOf, [blind, reamer]],
  ledgeFoul: [
    blindBore.ledgeFoul,
    [blind, reamer, { reach: 0.048, diameter: 0.02496 }],
  ],
  filletFoul: [blindBore.filletFoul, [0.002, 0.0005, 0.001]],
  clearance: [
    clearance.clearance,
    [
      { smallest: 0.02003, largest: 0.02004 },
      { smallest: 0.02, largest: 0.02001 },
    ],
  ],
  "cutSize, written": [
    cutSize.cutSize,
    [
      { kind: "written", low: 0.02, high: 0.02001 },
      { kind: "written", low: 0, high: 1e-5 },
      heat,
    ],
  ],
  "cutSize, measured and learned": [
    cutSize.cutSize,
    [
      ...[
        { kind: "measured", mean: 0.02, spread: 1e-6, count: 5 },
        { kind: "learned", mean: 1e-5, spread: 2e-6, count: 6 },
      ],
    ],
  ],
  oversizeOfCut: [cutSize.oversizeOfCut, [0.02001, 0.02, heat]],
  pilotReach: [
    pilot.pilotReach,
    [band(0.02, 0.02001), band(0.025, 0.02502), 0.03],
  ],
  reamerLimits: [reamerLimits.reamerLimits, [band(0.02, 0.020021), 2.1e-5]],
  reamerLimitsH7: [reamerLimits.reamerLimitsH7, [0.02]],
  reamerLimitsInch: [reamerLimits.reamerLimitsInch, [0.0254]],
  lineWindow: [reamerWindow.lineWindow, [[wanting], 1e-6]],
  boreLimits: [wantingJournal.boreLimits, [wanting]],
  reamingAdvice: [
    reamingAdvice.reamingAdvice,
    [0.02, "bronze", "machine", "hss", 6],
  ],
  stockAllowance: [stock.stockAllowance, [0.02, "bronze", "machine"]],
  stockToCut: [stock.stockToCut, [band(0.0198, 0.0199), band(0.02, 0.02001)]],
  passPlan: [
    stock.passPlan,
    [band(0.0198, 0.0199), 0.02, { least: 5e-5, most: 3e-4 }],
  ],
  cleanUp: [stock.cleanUp, [3e-5, 5e-5, 3e-4]],
  straightShaft: [
    straightShaft.straightShaft,
    [[checked, { ...checked, from: 0.1, to: 0.13 }]],
  ],
  closureBand: [boss.closureBand, [pair, "plain"]],
  pressureBand: [boss.pressureBand, [pair, band(2e-5, 4e-5), "plain"]],
  holeStressBand: [boss.holeStressBand, [pair, band(2e-5, 4e-5), "plain"]],
  elasticLimit: [
    boss.elasticLimit,
    [pair, { bush: 2e8, case: 2.5e8 }, "plain"],
  ],
  caseTemperatureToDropIn: [dropIn.caseTemperatureToDropIn, [drop, 20]],
  bushTemperatureToDropIn: [dropIn.bushTemperatureToDropIn, [drop, 120]],
  pressForce: [
    force.pressForce,
    [band(5e6, 1e7), 0.04, 0.05, band(0.05, 0.15)],
  ],
  torqueCapacity: [
    force.torqueCapacity,
    [band(5e6, 1e7), 0.04, 0.05, band(0.05, 0.15)],
  ],
  interferenceBand: [
    interference.interferenceBand,
    [band(0.04003, 0.04004), band(0.04, 0.04001)],
  ],
  boreAfterPress: [
    interference.boreAfterPress,
    [
      {
        id: band(0.03, 0.03001),
        od: band(0.04003, 0.04004),
        hole: band(0.04, 0.04001),
      },
      band(0.8, 0.9),
      4e-6,
      5e-5,
    ],
  ],
  bushOdToMake: [
    interference.bushOdToMake,
    [band(0.04, 0.04001), band(2e-5, 5e-5)],
  ],
  contactPressure: [ring.contactPressure, [pair, 3e-5]],
  interferenceFor: [ring.interferenceFor, [pair, 1e7]],
  closure: [ring.closure, [pair]],
  pressStresses: [ring.pressStresses, [pair, 1e7]],
  smoothing: [
    smoothing.smoothing,
    [
      { parameter: "Rz", value: 6e-6 },
      { parameter: "Ra", value: 1e-6 },
    ],
  ],
  pressAtTemperature: [temperature.pressAtTemperature, [pressAt20, 60, 50]],
  sizeAtTemperature: [temperature.sizeAtTemperature, [0.04, 11e-6, 60]],
  releaseTemperature: [
    temperature.releaseTemperature,
    [
      {
        ...{ od: 0.04, interference: 3e-5 },
        ...{ bushExpansion: 11e-6, caseExpansion: 23e-6 },
      },
    ],
  ],
  firstYield: [firstYield.firstYield, [pair, { bush: 2e8, case: 2.5e8 }]],
  studentQuantile: [student.studentQuantile, [0.975, 6]],
  studentCoverage: [student.studentCoverage, [0.95, 6]],
  budget: [budget.budget, [[component("scale"), component("touch")], 0.95]],
  resolutionComponent: [components.resolutionComponent, [1e-6]],
  calibrationComponent: [components.calibrationComponent, [2e-6, 2, 30]],
  permissibleErrorComponent: [components.permissibleErrorComponent, [4e-6]],
  repeatabilityComponent: [
    components.repeatabilityComponent,
    [{ standardDeviation: 1e-6, degreesOfFreedom: 9 }, 3],
  ],
  settingComponent: [components.settingComponent, [1e-6, 10]],
  temperatureComponents: [
    components.temperatureComponents,
    ["part", 0.04, warm],
  ],
  sizeComponents: [
    components.sizeComponents,
    [
      {
        ...{ length: 0.04, resolution: 1e-6, calibration: 2e-6 },
        repeatability: { standardDeviation: 1e-6, degreesOfFreedom: 9 },
        ...{ count: 3, setting: 1e-6, part: warm },
      },
    ],
  ],
  outOfRound: [form.outOfRound, [[0.04, 0.04001]]],
  taper: [
    form.taper,
    [
      [
        { diameters: [0.04, 0.04001], position: 0 },
        { diameters: [0.04002, 0.04003], position: 0.05 },
      ],
    ],
  ],
  gaugeRatio: [gauge.gaugeRatio, [2e-5, 2e-6]],
  discrimination: [gauge.discrimination, [1e-6, 2e-5]],
  lobingFactor: [
    lobing.lobingFactor,
    [{ kind: "vee", angle: Math.PI / 3, indicator: "opposite" }, 3],
  ],
  radialRoundness: [
    lobing.radialRoundness,
    [6e-6, { kind: "vee", angle: Math.PI / 3, indicator: "opposite" }, 3],
  ],
  mean: [statistics.mean, [[1, 2, 4]]],
  standardDeviation: [statistics.standardDeviation, [[1, 2, 4]]],
  largest: [statistics.largest, [[1, 2, 4]]],
  smallest: [statistics.smallest, [[1, 2, 4]]],
  pooledRepeatability: [
    statistics.pooledRepeatability,
    [
      [
        [1, 2, 4],
        [3, 5],
      ],
    ],
  ],
  grubbsTest: [stray.grubbsTest, [[1, 1.1, 0.9, 3], 0.05]],
  "swingBudget, calibrated": [
    swingBudget.swingBudget,
    [{ resolution: 1e-6, calibration: 2e-6 }, 2],
  ],
  "swingBudget, within its error": [
    swingBudget.swingBudget,
    [{ resolution: 1e-6, mpe: 4e-6 }, 2],
  ],
  guardFactor: [verdict.guardFactor, [0.95, 10]],
  judge: [
    verdict.judge,
    [2, { low: 1, high: 3 }, { kind: "guarded", guard: 0.1 }],
  ],
  endFloat: [
    (one: Band, other: Band) =>
      chain.endFloat([
        { sign: 1, length: one },
        { sign: -1, length: other },
      ]),
    [band(0.1, 0.1001), band(0.0998, 0.0999)],
  ],
  endFloatAtTemperature: [
    (one: Warmed, other: Warmed) =>
      chain.endFloatAtTemperature([
        { sign: 1, ...one },
        { sign: -1, ...other },
      ]),
    [
      { length: band(0.1, 0.1001), expansion: 23e-6, temperature: 60 },
      { length: band(0.0998, 0.0999), expansion: 11e-6, temperature: 50 },
    ],
  ],
  chooseShims: [
    shims.chooseShims,
    [band(4e-4, 5e-4), band(1e-4, 2e-4), [1e-4, 2e-4]],
  ],
  // the line is one that was fitted, and goes up
  reachOf: [
    (level: number, coverage: number) =>
      reaching.reachOf(fitted, level, 1, coverage),
    [0.03, 0.95],
  ],
};
