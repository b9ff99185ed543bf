// Owns the inch fits of ANSI B4.1: from a nominal size and a class to the limits of hole and shaft. The numbers are in b4-1-tables.ts.
import { notValid, valid, type Answer } from "../answer.ts";
import { metresToTenths, tenthsToMetres } from "../quantity/exact.ts";
import {
  fitSteps,
  gradeSteps,
  inchFits,
  inchGrades,
  type InchFitRow,
} from "./b4-1-tables.ts";
import { fitOf, type FitLimits } from "./fit.ts";
import {
  stepOf,
  tenthsPerHundredThousandthInch,
  tenthsPerInch,
  zoneOf,
} from "./limits.ts";

/** Running and sliding, locational clearance, locational transition, locational interference, force and shrink fits. */
export type InchSeries = "RC" | "LC" | "LT" | "LN" | "FN";

/** How many classes each series has, numbered from 1. */
export const inchSeries: ReadonlyMap<InchSeries, number> = new Map<
  InchSeries,
  number
>([
  ["RC", 9],
  ["LC", 11],
  ["LT", 6],
  ["LN", 3],
  ["FN", 5],
]);

/**
 * Limits of hole and shaft of an inch fit, and the clearance between them (diametral, negative for interference), m.
 * @param sizeMetres nominal size, m, taken to the nearest 0.1 nm; steps are "over … to and including …" in inches.
 * Every class is on the hole basis: the hole's lower limit is the nominal size.
 * Refuses: a class that is none; sizes of 0 or less and over 19.69 in (LC 1 to LC 4: over 200 in); LT 3 and LT 4 up to 0.24 in and
 * FN 3 up to 0.95 in, where the standard gives none.
 * Source: ANSI B4.1-1967, Tables 2 to 6; over 19.69 in Table 1 (see b4-1-tables.ts).
 */
export function inchFitLimits(
  sizeMetres: number,
  series: InchSeries,
  number: number,
): Answer<FitLimits> {
  const name = `${series}${number}`;
  const row = inchFits.get(name);
  if (row === undefined)
    return notValid(
      `ANSI B4.1 has ${series}1 to ${series}${inchSeries.get(series) ?? 0}, and no ${name}`,
    );
  const size = metresToTenths(sizeMetres);
  if (!(0 < size)) return notValid("a nominal size must be greater than 0");
  const step = stepOf(size, gradeSteps, tenthsPerInch);
  if (step < 0) return notValid("ANSI B4.1 ends at a nominal size of 200 in");
  if (fitSteps.length <= step) return onBasicSize(size, step, row, name);
  const pair = shaftLimits(row)[stepOf(size, row.steps, tenthsPerInch)];
  if (pair === undefined)
    return notValid(`ANSI B4.1 gives no ${name} up to ${firstStep(row)} in`);
  const hole = row.holeInstead?.[step] ?? gradeThousandths(row.hole, step);
  return valid(
    fitFrom(size, tenthsOf(hole), tenthsOf(pair.lower), tenthsOf(pair.upper)),
  );
}

/**
 * Tolerance of a grade of ANSI B4.1, m: grades 4 to 13, nominal sizes over 0 to 200 in; refuses others. Source: ANSI B4.1-1967, Table 1.
 */
export function inchTolerance(
  sizeMetres: number,
  grade: number,
): Answer<number> {
  const size = metresToTenths(sizeMetres);
  if (!inchGrades.has(grade))
    return notValid(`ANSI B4.1 has the grades 4 to 13, and no ${grade}`);
  if (!(0 < size)) return notValid("a nominal size must be greater than 0");
  const step = stepOf(size, gradeSteps, tenthsPerInch);
  if (step < 0) return notValid("ANSI B4.1 ends at a nominal size of 200 in");
  return valid(tenthsToMetres(tenthsOf(gradeThousandths(grade, step))));
}

function onBasicSize(
  size: number,
  step: number,
  row: InchFitRow,
  name: string,
): Answer<FitLimits> {
  if (row.onBasicSize === undefined)
    return notValid(
      `of ANSI B4.1 over 19.69 in only LC1 to LC4 are held here, and this is ${name}`,
    );
  const shaft = tenthsOf(gradeThousandths(row.onBasicSize, step));
  return valid(
    fitFrom(size, tenthsOf(gradeThousandths(row.hole, step)), -shaft, 0),
  );
}

function fitFrom(
  size: number,
  holeUpper: number,
  shaftLower: number,
  shaftUpper: number,
): FitLimits {
  const hole = zoneOf("hole", size, 0, holeUpper);
  const shaft = zoneOf("shaft", size, shaftLower, shaftUpper);
  return { hole, shaft, ...fitOf(hole, shaft) };
}

interface Pair {
  readonly upper: number;
  readonly lower: number;
}

const pairs = new Map<InchFitRow, readonly (Pair | undefined)[]>();

/** The row's text as numbers, read once. */
function shaftLimits(row: InchFitRow): readonly (Pair | undefined)[] {
  const known = pairs.get(row);
  if (known !== undefined) return known;
  const made = row.limits.split(", ").map((pair) => {
    const [upper, lower] = pair.split(" ");
    return lower === undefined
      ? undefined
      : { upper: Number(upper), lower: Number(lower) };
  });
  pairs.set(row, made);
  return made;
}

/** The size up to which the row has no entry. */
function firstStep(row: InchFitRow): number {
  return (
    row.steps[shaftLimits(row).findIndex((pair) => pair !== undefined) - 1] ?? 0
  );
}

function gradeThousandths(grade: number, step: number): number {
  const value = inchGrades.get(grade)?.[step];
  if (value === undefined)
    throw new Error(`no tolerance for grade ${grade}, step ${step}`); // a fault in the tables
  return value;
}

/** Thousandths of an inch, which the tables print to two places at most, to whole tenths of a nanometre. */
function tenthsOf(thousandths: number): number {
  return Math.round(thousandths * 100) * tenthsPerHundredThousandthInch;
}
