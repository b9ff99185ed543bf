// Owns the rules of ISO 286: from a nominal size and a tolerance class to its limits. The numbers are in iso-286-tables.ts. It does not read class words (class-words.ts).
import { notValid, valid, type Answer } from "../answer.ts";
import { metresToTenths, tenthsToMetres } from "../quantity/exact.ts";
import {
  clearanceRows,
  holeJRows,
  interferenceRows,
  mainSteps,
  shaftJRows,
  shaftLetters,
  standardTolerances,
  type DeviationRow,
  type IsoGrade,
} from "./iso-286-tables.ts";
import {
  stepOf,
  tenthsPerMicrometre,
  tenthsPerMillimetre,
  zoneOf,
  type Feature,
  type Zone,
} from "./limits.ts";

export type { IsoGrade } from "./iso-286-tables.ts";

/**
 * Limits of size and deviations of an ISO tolerance class.
 * @param sizeMetres nominal size, m; taken to the nearest 0.1 nm. Steps are "over … up to and including …".
 * @param letters fundamental deviation as written: capitals for a hole (A to ZC), small for a shaft (a to zc).
 * @param grade standard tolerance grade, "01" or 0 to 18.
 * Results are the doubles nearest to the exact decimal values. js and JS are ±IT/2 unrounded, as the 2010 edition has it.
 * Refuses by name: sizes of 0 or less and over 3150 mm; letters that are none; a letter or grade that the standard does not give at
 * that size (cd, ef, fg over 50 mm; a, b, c and v to zc over 500 mm; t to 24, v to 14, y to 18 mm; j but in its grades; K over IT8 from
 * 3 to 500 mm; K to ZC below IT3 where the delta rule holds); IT14 to IT18, a, b, A, B and N over IT8 up to 1 mm.
 * Source: ISO 286-1:2010, Tables 1 to 5 and the rules above them (rules from memory; BS 4500:1969 as printed agrees).
 */
export function isoLimits(
  sizeMetres: number,
  letters: string,
  grade: IsoGrade,
): Answer<Zone> {
  const feature = featureOf(letters);
  if (feature === undefined)
    return notValid(`ISO 286 has no deviation letters “${letters}”`);
  const size = metresToTenths(sizeMetres);
  const tolerance = toleranceAt(size, grade);
  if (!tolerance.valid) return tolerance;
  const named = { size, letters, grade, tolerance: tolerance.value };
  const deviation =
    feature === "shaft" ? shaftDeviation(named) : holeDeviation(named);
  if (!deviation.valid) return deviation;
  const { fixed, side } = deviation.value;
  return valid(
    side === "lower"
      ? zoneOf(feature, size, fixed, fixed + tolerance.value)
      : zoneOf(feature, size, fixed - tolerance.value, fixed),
  );
}

/**
 * Standard tolerance IT of a grade at a nominal size, m.
 * Refuses sizes of 0 or less and over 3150 mm, grades that are none, IT01 and IT0 over 500 mm, IT14 to IT18 up to 1 mm.
 * Source: ISO 286-1:2010, Table 1; the 1 mm rule as in the 1988 edition.
 */
export function isoTolerance(
  sizeMetres: number,
  grade: IsoGrade,
): Answer<number> {
  const tolerance = toleranceAt(metresToTenths(sizeMetres), grade);
  return tolerance.valid ? valid(tenthsToMetres(tolerance.value)) : tolerance;
}

/** Hole for capitals, shaft for small letters, undefined where ISO 286 has no such letters (case matters). */
export function featureOf(letters: string): Feature | undefined {
  const small = letters.toLowerCase();
  if (!shaftLetters.some((known) => known === small)) return undefined;
  if (letters === small) return "shaft";
  return letters === letters.toUpperCase() ? "hole" : undefined;
}

/** The grades that ISO 286 knows at all, finest first. */
export const isoGrades: readonly IsoGrade[] = [...standardTolerances.keys()];

// ---- in whole tenths of a nanometre from here on

interface Named {
  readonly size: number;
  readonly letters: string;
  readonly grade: IsoGrade;
  readonly tolerance: number;
}

/** The deviation that the tables give, and which of the two it is; the other follows by the tolerance. */
interface Fundamental {
  readonly fixed: number;
  readonly side: "lower" | "upper";
}

const limitOfDelta = 500 * tenthsPerMillimetre;

function toleranceAt(size: number, grade: IsoGrade): Answer<number> {
  const row = standardTolerances.get(grade);
  if (row === undefined)
    return notValid(
      `ISO 286 has the grades IT01, IT0 and IT1 to IT18, and no IT${grade}`,
    );
  if (!(0 < size)) return notValid("a nominal size must be greater than 0");
  const step = stepOf(size, mainSteps, tenthsPerMillimetre);
  if (step < 0) return notValid("ISO 286 ends at a nominal size of 3150 mm");
  const value = row[step];
  if (value === undefined)
    return notValid(`ISO 286 gives IT${grade} up to 500 mm only`);
  if (14 <= rank(grade) && upTo(size, 1))
    return notValid(
      `ISO 286 does not use IT14 to IT18 up to 1 mm, and this is IT${grade}`,
    );
  return valid(Math.round(value * tenthsPerMicrometre));
}

function shaftDeviation({
  size,
  letters,
  grade,
  tolerance,
}: Named): Answer<Fundamental> {
  if (letters === "js") return valid({ fixed: -tolerance / 2, side: "lower" });
  if (letters === "j")
    return jDeviation(size, letters, grade, shaftJRows, -1, "lower");
  if (upTo(size, 1) && (letters === "a" || letters === "b"))
    return notUsedUpToOne(letters);
  const clearance = clearanceRows.get(letters);
  if (clearance !== undefined)
    return onSide(read(clearance, letters, size), -1, "upper");
  // k has its own deviation in IT4 to IT7 alone; finer and coarser it stands on the nominal size
  if (letters === "k" && !(4 <= rank(grade) && rank(grade) <= 7))
    return valid({ fixed: 0, side: "lower" });
  return onSide(read(interferenceRow(letters), letters, size), 1, "lower");
}

function holeDeviation(named: Named): Answer<Fundamental> {
  const { size, letters, grade, tolerance } = named;
  if (letters === "JS") return valid({ fixed: -tolerance / 2, side: "lower" });
  if (letters === "J")
    return jDeviation(size, letters, grade, holeJRows, 1, "upper");
  if (upTo(size, 1) && (letters === "A" || letters === "B"))
    return notUsedUpToOne(letters);
  const clearance = clearanceRows.get(letters.toLowerCase());
  if (clearance !== undefined)
    return onSide(read(clearance, letters, size), 1, "lower");
  return tightHoleDeviation(named);
}

/** Holes K to ZC: the mirror of the shaft, raised by delta in the finer grades so that H7/p6 and P7/h6 are the same fit. */
function tightHoleDeviation({
  size,
  letters,
  grade,
  tolerance,
}: Named): Answer<Fundamental> {
  const mirrored = onSide(
    read(interferenceRow(letters.toLowerCase()), letters, size),
    -1,
    "upper",
  );
  if (!mirrored.valid) return mirrored;
  const likeN = letters === "K" || letters === "M" || letters === "N";
  const fine = rank(grade) <= (likeN ? 8 : 7);
  if (!fine && letters === "N" && upTo(size, 1))
    return notValid("ISO 286 does not use N over IT8 up to 1 mm");
  if (upTo(size, 3) || limitOfDelta < size) return mirrored;
  if (!fine) {
    if (letters === "K")
      return notValid("ISO 286 gives no hole K over IT8 from 3 to 500 mm");
    return letters === "N" ? valid({ fixed: 0, side: "upper" }) : mirrored;
  }
  if (rank(grade) < 3)
    return notValid(
      `ISO 286 gives delta from IT3 on, so there is no ${letters}${grade} over 3 mm`,
    );
  // the one special case of the tables: M6 over 250 to 315 mm is -9 and not -11 µm
  if (letters === "M" && grade === 6 && !upTo(size, 250) && upTo(size, 315))
    return valid({ fixed: -9 * tenthsPerMicrometre, side: "upper" });
  const finer = toleranceAt(size, rank(grade) - 1);
  if (!finer.valid) return finer;
  return valid({
    fixed: mirrored.value.fixed + tolerance - finer.value,
    side: "upper",
  });
}

function jDeviation(
  size: number,
  letters: string,
  grade: IsoGrade,
  rows: ReadonlyMap<IsoGrade, DeviationRow>,
  sign: 1 | -1,
  side: "lower" | "upper",
): Answer<Fundamental> {
  const row = rows.get(grade);
  if (row === undefined)
    return notValid(
      `ISO 286 gives ${letters} in the grades ${[...rows.keys()].join(", ")} only`,
    );
  return onSide(read(row, `${letters}${grade}`, size), sign, side);
}

function interferenceRow(small: string): DeviationRow {
  const row = interferenceRows.get(small);
  if (row === undefined) throw new Error(`no row for the letters ${small}`); // featureOf let them through: a fault in the tables
  return row;
}

function read(row: DeviationRow, name: string, size: number): Answer<number> {
  const step = stepOf(size, row.steps, tenthsPerMillimetre);
  const first = row.steps[row.from - 1];
  if (step < row.from)
    return notValid(
      `ISO 286 gives no ${name} up to ${first ?? 0} mm${insteadOf(name)}`,
    );
  const value = row.values[step - row.from];
  if (value === undefined)
    return notValid(
      `ISO 286 gives no ${name} over ${row.steps[row.from + row.values.length - 1] ?? 0} mm`,
    );
  return valid(Math.round(value * tenthsPerMicrometre));
}

function insteadOf(name: string): string {
  if (name === "t") return ", and u serves there";
  return name === "T" ? ", and U serves there" : "";
}

function onSide(
  value: Answer<number>,
  sign: 1 | -1,
  side: "lower" | "upper",
): Answer<Fundamental> {
  return value.valid ? valid({ fixed: sign * value.value, side }) : value;
}

function notUsedUpToOne(letters: string): Answer<never> {
  return notValid(`ISO 286 does not use ${letters} up to 1 mm`);
}

function upTo(size: number, millimetres: number): boolean {
  return size <= millimetres * tenthsPerMillimetre;
}

/** Grades in order of width as plain numbers; IT01 comes before IT0. */
function rank(grade: IsoGrade): number {
  return grade === "01" ? -1 : grade;
}
