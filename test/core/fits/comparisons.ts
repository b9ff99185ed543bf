// Owns the row-by-row comparisons of the shipped answers with printed copies (printed-iso.ts, printed-inch.ts) and with the formulas
// (iso-by-rule.ts): one list of pairs a source, for the tests and for the page of checks.
import {
  inchFitLimits,
  inchTolerance,
  type InchSeries,
} from "../../../server/core/fits/b4-1.ts";
import { fitSteps, forceSteps } from "../../../server/core/fits/b4-1-tables.ts";
import {
  isoLimits,
  isoTolerance,
  type IsoGrade,
} from "../../../server/core/fits/iso-286.ts";
import {
  clearanceRows,
  interferenceRows,
  mainSteps,
  standardTolerances,
} from "../../../server/core/fits/iso-286-tables.ts";
import type { Answer } from "../../../server/core/answer.ts";
import {
  deviationRules,
  meanSize,
  roundingStep,
  toleranceByRule,
  toleranceStep,
} from "./iso-by-rule.ts";
import * as inch from "./printed-inch.ts";
import * as iso from "./printed-iso.ts";

/** A value of ours beside the other's, in micrometres or thousandths of an inch; NaN where we refuse. */
export interface Pair {
  readonly name: string;
  readonly ours: number;
  readonly theirs: number;
}

/** How many of the pairs agree, to a hundredth of the last printed digit. */
export function agreeing(pairs: readonly Pair[]): number {
  return pairs.filter(({ ours, theirs }) => Math.abs(ours - theirs) < 1e-4)
    .length;
}

const millimetres = (size: number): number => size / 1000;
const inches = (size: number): number => (size * 254) / 1e4;
const valueOf = <T>(answer: Answer<T>, pick: (value: T) => number): number =>
  answer.valid ? pick(answer.value) : NaN;
/** Metres to micrometres, or to thousandths of an inch, without the dust of the product. */
const inMicrometres = (metres: number): number =>
  Math.round(metres * 1e10) / 1e4;
const inThousandths = (metres: number): number =>
  Math.round(metres * 1e10) / 254000;

function deviation(
  upTo: number,
  word: string,
  side: "lower" | "upper",
): number {
  const [, letters = "", digits = ""] = /^([A-Za-z]+)(\d+)$/.exec(word) ?? [];
  const limits = isoLimits(millimetres(upTo), letters, Number(digits));
  return valueOf(limits, ({ lowerDeviation, upperDeviation }) =>
    inMicrometres(side === "lower" ? lowerDeviation : upperDeviation),
  );
}

export const printedTolerances: readonly Pair[] = iso.table151.flatMap(
  ({ upTo, values }) =>
    values.map((theirs, index) =>
      tolerancePair(upTo, index === 0 ? "01" : index - 1, theirs),
    ),
);
export const printedTolerancesTo3150: readonly Pair[] =
  iso.fiveToEleven.flatMap(({ upTo, values }) =>
    values.map((theirs, index) =>
      tolerancePair(upTo, index + 5, theirs * 1000),
    ),
  );

function tolerancePair(upTo: number, grade: IsoGrade, theirs: number): Pair {
  return {
    name: `IT${grade} ${upTo}`,
    ours: valueOf(isoTolerance(millimetres(upTo), grade), inMicrometres),
    theirs,
  };
}

/** A printed column of letters against ours in a grade of the letter's, at the top of the step. */
function columns(
  rows: readonly iso.PrintedRow[],
  ours: (letters: string, upTo: number) => number,
): readonly Pair[] {
  return rows.flatMap(({ upTo, values }) =>
    Object.entries(values).map(([letters, theirs]) => ({
      name: `${letters} ${upTo}`,
      ours: ours(letters, upTo),
      theirs,
    })),
  );
}

export const printedShaftsTight = columns(iso.table152Tight, (letters, upTo) =>
  deviation(upTo, `${letters}7`, "lower"),
);
export const printedShaftsLoose = columns(
  iso.table152Loose,
  (letters, upTo) => {
    if (letters === "k6") return deviation(upTo, letters, "lower");
    return letters.startsWith("j")
      ? -deviation(upTo, letters, "lower")
      : -deviation(upTo, `${letters}7`, "upper");
  },
);
export const printedHoles4500 = columns(iso.bs4500Holes, (letters, upTo) =>
  letters.startsWith("J")
    ? deviation(upTo, letters, "upper")
    : deviation(upTo, `${letters}7`, "lower"),
);
export const printedHolesLoose = columns(iso.table153Loose, (letters, upTo) => {
  if (letters === "M") return -deviation(upTo, "M9", "upper");
  return letters.startsWith("J")
    ? deviation(upTo, letters, "upper")
    : deviation(upTo, `${letters}7`, "lower");
});
export const printedHolesTight = columns(
  iso.table153Tight,
  (letters, upTo) => -deviation(upTo, `${letters}8`, "upper"),
);
/** What delta adds to a hole S (to IT7) or N (IT8) over the deviation without it. */
export const printedDelta: readonly Pair[] = iso.table153Delta.flatMap(
  ({ upTo, values }) =>
    values.map((theirs, index) => {
      const grade = index + 3;
      const without =
        grade === 8
          ? -deviation(upTo, "n7", "lower")
          : deviation(upTo, "S8", "upper");
      const found =
        deviation(upTo, grade === 8 ? "N8" : `S${grade}`, "upper") - without;
      return { name: `delta IT${grade} ${upTo}`, ours: found, theirs };
    }),
);
export const printedOver500: readonly Pair[] = [
  ...columns(iso.over500, (letters, upTo) =>
    letters < "H"
      ? deviation(upTo, `${letters}8`, "lower")
      : -deviation(upTo, `${letters}8`, "upper"),
  ),
  ...columns(iso.over500, (letters, upTo) =>
    letters < "H"
      ? -deviation(upTo, `${letters.toLowerCase()}8`, "upper")
      : deviation(upTo, `${letters.toLowerCase()}8`, "lower"),
  ),
];
export const printedHoleLimits: readonly Pair[] = iso.holeLimits.flatMap(
  ({ upTo, word, upper, lower }) => [
    {
      name: `${word} ${upTo} upper`,
      ours: deviation(upTo, word, "upper"),
      theirs: upper,
    },
    {
      name: `${word} ${upTo} lower`,
      ours: deviation(upTo, word, "lower"),
      theirs: lower,
    },
  ],
);
export const printedCorrigendum: readonly Pair[] = iso.corrigendum.map(
  ({ word, upTo, side, value }) => ({
    name: `${word} ${upTo} ${side}`,
    ours: deviation(upTo, word, side),
    theirs: value,
  }),
);
export const printedHoleU: Pair = {
  name: "U 225",
  ours: -deviation(225, "U8", "upper"),
  theirs: iso.holeUTo225,
};

export const printedInchGrades: readonly Pair[] = inch.grades.flatMap(
  ({ upTo, values }) =>
    values.map((theirs, index) => ({
      name: `grade ${index + 4}, ${upTo} in`,
      ours: valueOf(inchTolerance(inches(upTo), index + 4), inThousandths),
      theirs,
    })),
);

export const printedInchFits: readonly (Pair & { readonly source: string })[] =
  [
    ...inch.columns.flatMap((column) => inchColumn(column, fitSteps)),
    ...inch.forceColumns.flatMap((column) => inchColumn(column, forceSteps)),
  ];

function inchColumn(
  column: inch.PrintedColumn,
  steps: readonly number[],
): (Pair & { readonly source: string })[] {
  const perStep = column.what === "hole" ? 1 : 2;
  return column.values.map((theirs, index) => {
    const step = column.from + Math.floor(index / perStep);
    const upTo = steps[step] ?? NaN;
    const fit = inchFit(upTo, column.word);
    const second = index % perStep === 1;
    const ours = valueOf(fit, ({ hole, shaft, least, most }) => {
      if (column.what === "hole") return inThousandths(hole.upperDeviation);
      if (column.what === "shaft")
        return inThousandths(
          second ? shaft.lowerDeviation : shaft.upperDeviation,
        );
      // force fits are printed as interference, least and most
      if (column.word.startsWith("FN"))
        return -inThousandths(second ? least : most);
      return inThousandths(second ? most : least);
    });
    return {
      name: `${column.word} ${column.what} ${upTo} in, value ${index}`,
      ours,
      theirs,
      source: column.source,
    };
  });
}

function inchFit(upTo: number, word: string): ReturnType<typeof inchFitLimits> {
  return inchFitLimits(
    inches(upTo),
    word.slice(0, 2) as InchSeries,
    Number(word.slice(2)),
  ); // the printed words are all of a series
}

export const printedRunningClearances: readonly Pair[] =
  inch.runningClearances.flatMap((row, step) =>
    row.flatMap((theirs, index) => {
      const word = `RC${Math.floor(index / 2) + 1}`;
      const fit = inchFit(fitSteps[step] ?? NaN, word);
      const ours = valueOf(fit, ({ least, most }) =>
        inThousandths(index % 2 === 0 ? least : most),
      );
      return Number.isNaN(theirs)
        ? []
        : [{ name: `${word}, row ${step}, value ${index}`, ours, theirs }];
    }),
  );

/** A tabulated value beside the computed one, with the rounding step within which they should lie. */
export interface RulePair extends Pair {
  readonly step: number;
}

export const tolerancesByRule: readonly RulePair[] = [
  5, 6, 7, 8, 9, 10, 11,
].flatMap((grade) =>
  (standardTolerances.get(grade) ?? []).map((ours, index) => {
    const theirs = toleranceByRule(grade, meanSize(mainSteps, index));
    const upTo = mainSteps[index] ?? NaN;
    return {
      name: `IT${grade} ${upTo}`,
      ours,
      theirs,
      step: toleranceStep(upTo, theirs),
    };
  }),
);

const rows = new Map([...clearanceRows, ...interferenceRows]);

export const deviationsByRule: readonly RulePair[] = [
  ...deviationRules,
].flatMap(([letters, rule]) => {
  const row = rows.get(letters);
  return (row?.values ?? []).map((ours, index) => {
    const step = index + (row?.from ?? 0);
    const upTo = row?.steps[step] ?? NaN;
    const theirs = rule(meanSize(row?.steps ?? [], step), upTo, {
      it: (grade) =>
        standardTolerances.get(grade)?.[
          mainSteps.findIndex((each) => upTo <= each)
        ] ?? NaN,
      letter: (other) => tabulated(other, upTo),
    });
    return {
      name: `${letters} ${upTo}`,
      ours,
      theirs,
      step: roundingStep(letters, upTo, theirs),
    };
  });
});

function tabulated(letters: string, upTo: number): number {
  const row = rows.get(letters);
  const step = row?.steps.findIndex((each) => upTo <= each) ?? -1;
  return row?.values[step - row.from] ?? NaN;
}

/** The pairs that lie further apart than a rounding step. */
export function beyondRounding(pairs: readonly RulePair[]): readonly string[] {
  return pairs
    .filter(({ ours, theirs, step }) => !(Math.abs(ours - theirs) <= step))
    .map(({ name }) => name);
}
