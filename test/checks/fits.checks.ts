// Limits and fits against printed tables, corrections and worked examples, and against the formulas of the system. Where a whole table
// is compared, both numbers are counts: how many of its values agree, and how many it has.
import { inchFitLimits } from "../../server/core/fits/b4-1.ts";
import { isoLimits, isoTolerance } from "../../server/core/fits/iso-286.ts";
import type { Answer } from "../../server/core/answer.ts";
import * as compare from "../core/fits/comparisons.ts";
import {
  deviationExceptions,
  toleranceExceptions,
} from "../core/fits/iso-exceptions.ts";
import * as inch from "../core/fits/printed-inch.ts";
import {
  corrigendum,
  handbook31,
  machineDrawing,
  mouldBases,
} from "../core/fits/printed-iso.ts";
import type { Check } from "./check.ts";

const kinds: readonly string[] = [];
const exact = { absolute: 1e-12 };

function value<T>(answer: Answer<T>, pick: (value: T) => number): number {
  if (!answer.valid) throw new Error(answer.because);
  return pick(answer.value);
}

/** All values of a printed table. */
function table(
  what: string,
  pairs: readonly compare.Pair[],
  source: string,
): Check {
  return {
    kinds,
    what: `values that agree, ${what}`,
    method: "table lookup and the rules of the standard",
    against: "published",
    source,
    unit: "1",
    ours: () => compare.agreeing(pairs),
    theirs: () => pairs.length,
    within: { absolute: 0 },
  };
}

function length(
  what: string,
  ours: () => number,
  theirs: number,
  source: string,
): Check {
  return {
    kinds,
    what,
    method: "table lookup and the rules of the standard",
    against: "published",
    source,
    unit: "m",
    ours,
    theirs: () => theirs,
    within: exact,
  };
}

const corrections = corrigendum.map(
  ({ word, upTo, side, value: micrometres }) =>
    length(
      `${side} deviation of ${word}, up to ${upTo} mm`,
      () => {
        const limits = isoLimits(
          upTo / 1000,
          word.slice(0, 1),
          Number(word.slice(1)),
        );
        return value(limits, (zone) =>
          side === "upper" ? zone.upperDeviation : zone.lowerDeviation,
        );
      },
      micrometres / 1e6,
      "ISO 286-2:1988, Technical Corrigendum 1 (2006)",
    ),
);

function running(
  what: string,
  pick: "least" | "most",
  theirsThousandths: number,
): Check {
  return length(
    what,
    () => value(inchFitLimits(0.875 * 0.0254, "RC", 4), (fit) => fit[pick]),
    theirsThousandths * 25.4e-6,
    inch.handbook31,
  );
}

const allowedOff = (exceptions: typeof deviationExceptions): number =>
  exceptions.flatMap(({ rows }) => rows).length;

const byRule: readonly Check[] = [
  {
    kinds,
    what: "ISO 286: tabulated deviations of shafts a to zc within a rounding step of the formula",
    method:
      "count; the others are the rows named with a reason in test/core/fits/iso-exceptions.ts",
    against: "independent",
    source: `formulas to 500 mm as printed in ${machineDrawing}, Table 15.4, p. 222; over 500 mm and rounding from memory`,
    unit: "1",
    ours: () =>
      compare.deviationsByRule.length -
      compare.beyondRounding(compare.deviationsByRule).length,
    theirs: () =>
      compare.deviationsByRule.length - allowedOff(deviationExceptions),
    within: { absolute: 0 },
  },
  {
    kinds,
    what: "ISO 286: tabulated IT5 to IT11 within a rounding step of the formula",
    method:
      "count; the others are the rows named with a reason in test/core/fits/iso-exceptions.ts",
    against: "independent",
    source:
      "i = 0.45 D^(1/3) + 0.001 D, I = 0.004 D + 2.1, factors 7 to 100 and rounding from memory",
    unit: "1",
    ours: () =>
      compare.tolerancesByRule.length -
      compare.beyondRounding(compare.tolerancesByRule).length,
    theirs: () =>
      compare.tolerancesByRule.length - allowedOff(toleranceExceptions),
    within: { absolute: 0 },
  },
];

const checks: readonly Check[] = [
  ...corrections,
  table(
    "IT01 to IT16, sizes to 500 mm",
    compare.printedTolerances,
    `${machineDrawing}, Table 15.1, p. 213`,
  ),
  table(
    "IT5 to IT11, sizes over 400 to 3150 mm",
    compare.printedTolerancesTo3150,
    "DIN ISO 286 standard tolerance table, engineering tutorial at mechguru.com",
  ),
  table(
    "shafts m to zc, sizes to 180 mm",
    compare.printedShaftsTight,
    `${machineDrawing}, Table 15.2, p. 216`,
  ),
  table(
    "shafts a to k, sizes over 180 to 500 mm",
    compare.printedShaftsLoose,
    `${machineDrawing}, Table 15.2, p. 215`,
  ),
  table(
    "holes A to J, sizes to 225 mm",
    compare.printedHoles4500,
    `${handbook31}, Table 6a (BS 4500:1969)`,
  ),
  table(
    "holes A to M, sizes over 120 to 500 mm",
    compare.printedHolesLoose,
    `${machineDrawing}, Table 15.3, p. 219`,
  ),
  table(
    "holes P to ZC over IT7, sizes over 180 to 500 mm, but for two misprints",
    compare.printedHolesTight,
    `${machineDrawing}, Table 15.3, p. 221`,
  ),
  table(
    "delta, sizes over 180 to 500 mm",
    compare.printedDelta,
    `${machineDrawing}, Table 15.3, p. 221`,
  ),
  table(
    "holes and shafts D to U, sizes over 500 to 3150 mm",
    compare.printedOver500,
    `${mouldBases}, Table 5`,
  ),
  table(
    "both limits of holes H11 to JS9 and R7, sizes over 18 to 250 mm",
    compare.printedHoleLimits,
    `${mouldBases}, Table 6`,
  ),
  length(
    "upper deviation of P7 over 18 to 30 mm",
    () =>
      value(isoLimits(0.025, "P", 7), ({ upperDeviation }) => upperDeviation),
    -14e-6,
    `${machineDrawing}, worked below Table 15.3, p. 221`,
  ),
  length(
    "upper deviation of the shaft of 50 H7/s6",
    () =>
      value(isoLimits(0.05, "s", 6), ({ upperDeviation }) => upperDeviation),
    59e-6,
    "Scilab textbook companion 764, example 3.3 (Manufacturing considerations in design)",
  ),
  length(
    "lower deviation of the shaft of 50 H7/s6",
    () =>
      value(isoLimits(0.05, "s", 6), ({ lowerDeviation }) => lowerDeviation),
    43e-6,
    "Scilab textbook companion 764, example 3.3 (Manufacturing considerations in design)",
  ),
  length(
    "IT14 at 100 mm",
    () => value(isoTolerance(0.1, 14), (width) => width),
    0.87e-3,
    "Wikipedia, IT Grade",
  ),
  ...byRule,
  running("least clearance of 0.875 RC4", "least", 0.8),
  running("most clearance of 0.875 RC4", "most", 2.8),
  table(
    "grades 4 to 13 of ANSI B4.1, sizes to 200 in",
    compare.printedInchGrades,
    inch.handbookR1987,
  ),
  ...[inch.handbook31, inch.handbook27, inch.handbookR1987, inch.tableSite].map(
    (source) =>
      table(
        "limits and clearances of ANSI B4.1 fits",
        compare.printedInchFits.filter((pair) => pair.source === source),
        source,
      ),
  ),
  table(
    "least and most clearance of RC1 to RC9 to 4.73 in, but for a misprint",
    compare.printedRunningClearances,
    inch.aeronautical,
  ),
];

export default checks;
