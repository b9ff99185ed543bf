// More usual questions for the functions of the engineering: other branches of those in questions.ts, and functions that give their value as
// it is, or that are no answer to a number that is none.
import * as bearingFilm from "../../server/core/film/bearing-film.ts";
import * as sweep from "../../server/core/film/clearance-sweep.ts";
import * as filmPoint from "../../server/core/film/film-point.ts";
import * as filmRatio from "../../server/core/film/film-ratio.ts";
import * as heatBalance from "../../server/core/film/heat-balance.ts";
import * as viscosity from "../../server/core/film/viscosity.ts";
import * as inch from "../../server/core/fits/b4-1.ts";
import * as iso from "../../server/core/fits/iso-286.ts";
import * as nearest from "../../server/core/fits/nearest.ts";
import * as drift from "../../server/core/learning/drift.ts";
import * as lineFit from "../../server/core/learning/line-fit.ts";
import * as oddGroups from "../../server/core/learning/odd-groups.ts";
import * as wild from "../../server/core/learning/wild.ts";
import * as chance from "../../server/core/line/chance.ts";
import * as clearance from "../../server/core/line/clearance.ts";
import * as cutSize from "../../server/core/line/cut-size.ts";
import * as pilot from "../../server/core/line/pilot.ts";
import * as ranking from "../../server/core/line/reamer-ranking.ts";
import * as reamerWindow from "../../server/core/line/reamer-window.ts";
import * as reamingAdvice from "../../server/core/line/reaming-advice.ts";
import * as sizesToBuy from "../../server/core/line/sizes-to-buy.ts";
import * as spread from "../../server/core/line/spread.ts";
import * as stock from "../../server/core/line/stock.ts";
import * as boss from "../../server/core/press/boss.ts";
import * as dropIn from "../../server/core/press/drop-in.ts";
import * as interference from "../../server/core/press/interference.ts";
import * as budget from "../../server/core/readings/budget.ts";
import * as expected from "../../server/core/readings/expected.ts";
import * as form from "../../server/core/readings/form.ts";
import * as lobing from "../../server/core/readings/lobing.ts";
import * as stray from "../../server/core/readings/stray.ts";
import * as temperature from "../../server/core/readings/temperature.ts";
import * as verdict from "../../server/core/readings/verdict.ts";
import * as draws from "../../server/core/stack/draws.ts";
import * as shims from "../../server/core/stack/shims.ts";
import * as reaching from "../../server/core/trend/reaching.ts";
import type { Question } from "./asking.ts";

// SI units throughout: m, N, Pa, 1/K, and °C
const band = (low: number, high: number) => ({ low, high });
const bearing = {
  ...{ diameter: 0.05, length: 0.04, diametralClearance: 6e-5 },
  ...{ load: 3000, turnsPerSecond: 12 },
};
const oil = { line: { height: 8.9, slope: 3.4 }, density: 870 };
const pair = {
  ...{ bore: 0.03, od: 0.04, boss: 0.06 },
  bushMaterial: { modulus: 1e11, poisson: 0.34 },
  caseMaterial: { modulus: 1.1e11, poisson: 0.26 },
};
const drop = {
  ...{ od: 0.04003, hole: 0.04, gap: 2e-5 },
  ...{ bushExpansion: 18e-6, caseExpansion: 11e-6 },
};
const cutOf = (nominal: number, deviation: number, degrees: number) => ({
  ...{ low: nominal - 2e-6, nominal, high: nominal + 2e-6 },
  spread: { standardDeviation: deviation, degreesOfFreedom: degrees },
  oversizeAssumed: false,
});
const landings = [
  { cut: cutOf(0.020004, 2e-6, 9), window: band(0.02, 0.02001) },
  { cut: cutOf(0.030006, 3e-6, 5), window: band(0.03, 0.03001) },
];
const journal = (
  least: number,
  greatest: number,
  low: number,
  high: number,
) => ({
  least,
  greatest,
  wanted: band(low, high),
});
const journals = [
  journal(0.02, 0.020004, 2e-5, 5e-5),
  journal(0.020003, 0.020008, 2e-5, 6e-5),
];
const learned = { kind: "learned", mean: 6e-6, spread: 3e-6, count: 8 };
const heat = {
  ...{ partTemperature: 25, partExpansion: 18e-6 },
  ...{ toolTemperature: 30, toolExpansion: 11e-6 },
};
const oneCut = [{ oversize: learned, heat }];
const wear = [0.02, 0.020001, 0.020004, 0.020005, 0.020009, 0.02001, 0.020012];
const steady = [1, 1.1, 0.9, 1.05, 0.98, 1.02, 0.97];
const asPoints = (values: readonly number[]) =>
  values.map((y, x) => ({ x: 10 * x, y }));
const stepped = (values: readonly number[]) =>
  values.map((value, x) => ({ x, value, step: 0.01 }));
const fitted = {
  ...{ slope: -1e-6, slopeDeviation: 1e-7, spread: 1e-6 },
  ...{ degreesOfFreedom: 5, count: 7, meanX: 3, meanY: 0.02, squaresX: 28 },
};
const rows = (name: string, uncertainty: number) =>
  [
    {
      ...{ name, sensitivity: 1, standardUncertainty: uncertainty },
      ...{
        distribution: "normal",
        degreesOfFreedom: 12,
        contribution: uncertainty,
      },
    },
  ] as const;
const budgetOf = (name: string, uncertainty: number) => ({
  rows: rows(name, uncertainty),
  ...{ combined: uncertainty, effectiveDegreesOfFreedom: 12 },
  ...{ coverage: 0.95, coverageFactor: 2.18, expanded: 2.18 * uncertainty },
});
const vee = { kind: "vee", angle: Math.PI / 2, indicator: "between" };
const stations = [
  { diameters: [0.04, 0.04001], position: 0.01 },
  { diameters: [0.04002], position: 0.05 },
  { diameters: [0.04003, 0.04007, 0.04004], position: 0.08 },
];

export const MORE: Readonly<Record<string, Question>> = {
  landsOf: [bearingFilm.landsOf, [{ ...bearing, roundGrooveWidth: 0.006 }]],
  sommerfeldNumber: [filmPoint.sommerfeldNumber, [0.03, 12, 1.5e6, 1.2e-3]],
  filmLeft: [filmRatio.filmLeft, [1.2e-5, 0.04, { tilt: 1e-4, form: 2e-6 }]],
  trumplerLeastFilm: [filmRatio.trumplerLeastFilm, [0.05]],
  regimeOf: [filmRatio.regimeOf, [3]],
  typicalCaseArea: [heatBalance.typicalCaseArea, [0.05, 0.04]],
  "warmFilm, whole flow": [
    heatBalance.warmFilm,
    [bearing, oil, { by: "whole-flow", inlet: 40, volumetricHeat: 1.7e6 }],
  ],
  "warmFilm, case": [
    heatBalance.warmFilm,
    [bearing, oil, { by: "case", ambient: 20, area: 0.3, transfer: 18 }],
  ],
  filmAtClearance: [
    sweep.filmAtClearance,
    [
      {
        ...{ bearing, oil, journalRa: 4e-7, boreRa: 8e-7 },
        cooling: { by: "held", temperature: 50 },
        loss: { tilt: 1e-5, form: 1e-6 },
        needs: { film: 4e-6, filmRatio: 3, hottest: 90 },
      },
      6e-5,
    ],
  ],
  oilBand: [
    viscosity.oilBand,
    [
      {
        at40: { value: 46e-6, low: 41e-6, high: 51e-6 },
        at100: { value: 6.8e-6, low: 6.2e-6, high: 7.4e-6 },
        density: { value: 875, low: 860, high: 890 },
      },
    ],
  ],
  "isoLimits, shaft": [iso.isoLimits, [0.062, "f", 7]],
  "isoLimits, hole K": [iso.isoLimits, [0.025, "K", 7]],
  "isoLimits, force": [iso.isoLimits, [0.125, "s", 6]],
  "inchFitLimits, locational": [inch.inchFitLimits, [0.05, "LN", 2]],
  "inchFitLimits, force": [inch.inchFitLimits, [0.05, "FN", 2]],
  "roundSize, iso": [nearest.roundSize, [0.0251, "iso"]],
  "roundSize, inch": [nearest.roundSize, [0.0251, "inch"]],
  nearestClasses: [
    (size: number, lower: number, upper: number) =>
      nearest.nearestClasses(size, "hole", { lower, upper }).slice(0, 3),
    [0.025, 0.025, 0.025018],
  ],
  fitsHolding: [
    (size: number, least: number, most: number) =>
      nearest.fitsHolding(size, "iso", { least, most }).slice(0, 3),
    [0.025, 2.5e-5, 4e-5],
  ],
  "learnOverTime, steady": [drift.learnOverTime, [asPoints(steady), 70]],
  "learnOverTime, drifting": [drift.learnOverTime, [asPoints(wear), 70]],
  slopeInterval: [lineFit.slopeInterval, [fitted, 0.95]],
  heightAt: [lineFit.heightAt, [fitted, 5]],
  oddGroups: [
    oddGroups.oddGroups,
    [
      [
        [1, 1.1, 0.9],
        [1.05, 0.95, 1],
        [2, 2.1, 1.9],
      ],
    ],
  ],
  distance: [oddGroups.distance, [[1, 1.2], [2, 2.1, 1.9], 0.1]],
  wildAmong: [wild.wildAmong, [stepped([...steady, 3])]],
  wildAlong: [
    wild.wildAlong,
    [stepped([1, 2.1, 2.9, 4.05, 4.98, 6.02, 12, 8])],
  ],
  margin: [chance.margin, [landings]],
  chanceOfLanding: [chance.chanceOfLanding, [landings]],
  chanceBetween: [spread.chanceBetween, [-1.2, 2.1, 6]],
  "clearance, with all": [
    clearance.clearance,
    [
      {
        ...{ smallest: 0.02003, largest: 0.02004, mean: 0.020036 },
        roundness: 2e-6,
      },
      {
        ...{ smallest: 0.02, largest: 0.02001, mean: 0.020004 },
        roundness: 1e-6,
      },
    ],
  ],
  "cutSize, measured with its gauge": [
    cutSize.cutSize,
    [
      {
        ...{ kind: "measured", mean: 0.02, spread: 1e-6, count: 5 },
        uncertainty: 1.5e-6,
      },
      { kind: "assumed-zero" },
      heat,
    ],
  ],
  cutPerToolSize: [cutSize.cutPerToolSize, [heat]],
  pilotGuide: [
    pilot.pilotGuide,
    [
      ...[band(0.0199, 0.01991), band(0.01993, 0.01995)],
      { engagedLength: 0.02, overhang: 0.05 },
      { count: 3, roundness: 5e-6 },
    ],
  ],
  isPilotSlack: [pilot.isPilotSlack, [8e-6, band(2e-5, 5e-5), 0.25]],
  "pilotReach, before": [
    pilot.pilotReach,
    [band(0.1, 0.12), band(0.05, 0.08), 0.015],
  ],
  rankReamers: [
    (low: number, measured: number, from: number, to: number) =>
      ranking.rankReamers(journals, [
        {
          size: { kind: "written", low, high: low + 4e-6 },
          cuts: oneCut as ranking.CutConditions[],
        },
        {
          size: { kind: "measured", mean: measured, spread: 1e-6, count: 4 },
          cuts: [{ oversize: { kind: "assumed-zero" } }],
        },
        {
          size: undefined,
          expands: { low: from, high: to },
          cuts: oneCut as ranking.CutConditions[],
        },
      ]),
    [0.02003, 0.020035, 0.0195, 0.0205],
  ],
  sizeToGrind: [ranking.sizeToGrind, [journals, oneCut]],
  "lineWindow, closed": [
    reamerWindow.lineWindow,
    [
      [
        journal(0.02, 0.020002, 2e-5, 3e-5),
        journal(0.02001, 0.020014, 2e-5, 4e-5),
        journal(0.02002, 0.020022, 2e-5, 5e-5),
      ],
      2e-6,
    ],
  ],
  "reamingAdvice, hand": [
    reamingAdvice.reamingAdvice,
    [0.02, "bronze", "hand", "hss", 6],
  ],
  sizesToBuy: [
    (low: number, high: number) => sizesToBuy.sizesToBuy({ low, high }),
    [0.02535, 0.02605],
  ],
  "stockAllowance, hand": [stock.stockAllowance, [0.03, "steel", "hand"]],
  "stockVerdict, machine": [
    stock.stockVerdict,
    [band(1.5e-4, 3e-4), 0.02, "steel", "machine"],
  ],
  "stockVerdict, own": [
    stock.stockVerdict,
    [band(1.5e-4, 3e-4), 0.02, "steel", "hand", { thin: 1e-4, heavy: 4e-4 }],
  ],
  "passPlan, one": [
    stock.passPlan,
    [band(0.0198, 0.01985), 0.02, { least: 5e-5, most: 3e-4 }],
  ],
  "passPlan, three": [
    stock.passPlan,
    [band(0.0185, 0.0186), 0.02, { least: 5e-5, most: 3e-4 }],
  ],
  "passPlan, too little": [
    stock.passPlan,
    [band(0.0198, 0.01998), 0.02, { least: 5e-5, most: 3e-4 }],
  ],
  "cleanUp, short": [stock.cleanUp, [9e-5, 5e-5, 2e-4]],
  "closureBand, stiffer": [boss.closureBand, [pair, "stiffer"]],
  "closureBand, overhanging": [boss.closureBand, [pair, "bush-overhangs"]],
  "pressureBand, stiffer": [
    boss.pressureBand,
    [pair, band(2e-5, 4e-5), "stiffer"],
  ],
  "holeStressBand, overhanging": [
    boss.holeStressBand,
    [pair, band(2e-5, 4e-5), "bush-overhangs"],
  ],
  "elasticLimit, stiffer": [
    boss.elasticLimit,
    [pair, { bush: 2e8, case: 2.5e8 }, "stiffer"],
  ],
  temperaturesToDropIn: [dropIn.temperaturesToDropIn, [drop, 90]],
  effectiveInterference: [interference.effectiveInterference, [3e-5, 4e-6]],
  interferenceOfShare: [interference.interferenceOfShare, [0.04, 0.001]],
  clearanceBudget: [
    budget.clearanceBudget,
    [budgetOf("bore", 1e-6), budgetOf("journal", 7e-7), 0.3],
  ],
  lessOthers: [
    budget.lessOthers,
    [
      { ...budgetOf("clearance", 1e-6), correlation: 0.2 },
      [{ name: "form", budget: budgetOf("swing", 5e-7) }],
    ],
  ],
  commonCorrelation: [
    budget.commonCorrelation,
    [
      ...[budgetOf("bore", 1e-6), budgetOf("journal", 7e-7)],
      { bore: 6e-7, journal: 5e-7 },
    ],
  ],
  bandOf: [expected.bandOf, [band(0.02, 0.0201)]],
  factorOf: [expected.factorOf, [0.508, band(0.02, 0.0201)]],
  largestOutOfRound: [form.largestOutOfRound, [stations]],
  "taper, of three": [form.taper, [stations]],
  "lobingFactor, between": [lobing.lobingFactor, [vee, 5]],
  "lobingFactor, two points": [lobing.lobingFactor, [{ kind: "two-point" }, 4]],
  "lobingFactor, three contacts": [
    lobing.lobingFactor,
    [{ kind: "three-contacts" }, 9],
  ],
  bestVee: [lobing.bestVee, [5]],
  strayAmong: [stray.strayAmong, [[1, 1.0002, 0.9999, 1.0001, 1.004], 1e-4]],
  grubbsCritical: [stray.grubbsCritical, [7, 0.05]],
  sizeAtReference: [
    temperature.sizeAtReference,
    [
      {
        ...{ reading: 0.04, correction: 1e-6 },
        part: { temperature: 24, expansion: 11e-6 },
        gauge: { temperature: 22, expansion: 11.5e-6 },
      },
    ],
  ],
  "judge, simple": [
    verdict.judge,
    [0.02, { low: 0.0199, high: 0.0201 }, { kind: "simple" }],
  ],
  "judgeRange, every": [
    verdict.judgeRange,
    [
      ...[band(0.0199, 0.02), { low: 0.0198, high: 0.0201 }],
      ...[{ kind: "guarded", guard: 1e-5 }, "every"],
    ],
  ],
  "judgeRange, one": [
    verdict.judgeRange,
    [
      ...[band(0.0199, 0.02), { low: 0.0198, high: 0.0201 }],
      ...[{ kind: "guarded", guard: 1e-5 }, "one"],
    ],
  ],
  "drawEndFloats, normal": [
    (seed: number, low: number, high: number, wanted: number) =>
      draws.drawEndFloats(
        [
          { sign: 1, length: { low, high } },
          { sign: -1, length: band(0.0998, 0.0999) },
        ],
        {
          ...{ seed, draws: 300, shape: "normal" },
          want: { low: 0, high: wanted },
        },
      ),
    [7, 0.1, 0.1001, 2e-4],
  ],
  "drawEndFloats, even": [
    (seed: number, low: number, high: number) =>
      draws.drawEndFloats([{ sign: 1, length: { low, high } }], {
        ...{ seed, draws: 300, shape: "even" },
      }),
    [7, 0.1, 0.1001],
  ],
  "chooseShims, of four": [
    shims.chooseShims,
    [band(1.3e-3, 1.4e-3), band(1e-4, 2.5e-4), [1e-4, 2e-4, 5e-4, 1e-3]],
  ],
  "reachOf, falling": [
    (level: number, coverage: number) =>
      reaching.reachOf(fitted, level, -1, coverage),
    [0.01998, 0.95],
  ],
  withSpreadOf: [reaching.withSpreadOf, [fitted, 3e-6]],
};
