// Owns the words for classes as they stand in a record: "H7", "f7", "H7/f7", "RC4". It reads a word into its parts, or says
// why it is none and which words were perhaps meant. Whether a class exists at a size is iso-286.ts's and b4-1.ts's to say.
import { notValid, valid, type Answer } from "../answer.ts";
import { inchFitLimits, inchSeries, type InchSeries } from "./b4-1.ts";
import { fitOf, type Clearance } from "./fit.ts";
import { featureOf, isoGrades, isoLimits, type IsoGrade } from "./iso-286.ts";
import { holeJRows, shaftJRows } from "./iso-286-tables.ts";
import type { Feature, Zone } from "./limits.ts";
import { nearWords } from "./near-words.ts";

export interface IsoClass {
  readonly system: "iso";
  readonly feature: Feature;
  readonly letters: string;
  readonly grade: IsoGrade;
}

/** A hole class over a shaft class, "H7/f7". */
export interface IsoFit {
  readonly system: "iso";
  readonly feature: "fit";
  readonly hole: IsoClass;
  readonly shaft: IsoClass;
}

/** An inch class names a whole fit. */
export interface InchFit {
  readonly system: "inch";
  readonly feature: "fit";
  readonly series: InchSeries;
  readonly number: number;
}

export type FitClass = IsoClass | IsoFit | InchFit;

/** The class, or why the word is none, with the classes that it may have meant, likeliest first (each of them reads). */
export type ClassRead =
  | { readonly valid: true; readonly value: FitClass }
  | {
      readonly valid: false;
      readonly because: string;
      readonly near: readonly string[];
    };

/**
 * Reads a class word. Case matters in ISO classes: capitals are holes, small letters shafts. Inch classes are in capitals without
 * a blank. Grades have no leading zero but in 01. Any other text is refused with a reason and near words; nothing throws.
 * Source: class codes as in ISO 286-1:2010, 4.2, and the fit symbols of ANSI B4.1-1967 (from memory).
 */
export function parseClass(word: string): ClassRead {
  const read = readWord(word);
  if (read.valid) return read;
  const near = nearWords(word).filter(
    (each) => each !== word && readWord(each).valid,
  );
  return { ...read, near: [...new Set(near)].slice(0, 11) };
}

/** The word of a class, as `parseClass` reads it. */
export function classWord(fitClass: FitClass): string {
  if (fitClass.system === "inch") return `${fitClass.series}${fitClass.number}`;
  if (fitClass.feature === "fit")
    return `${classWord(fitClass.hole)}/${classWord(fitClass.shaft)}`;
  return `${fitClass.letters}${fitClass.grade}`;
}

/**
 * The zones of a class at a nominal size (m): one for an ISO class, hole then shaft for a fit or an inch class. Refuses what
 * `isoLimits` and `inchFitLimits` refuse.
 */
export function classZones(
  sizeMetres: number,
  fitClass: FitClass,
): Answer<readonly Zone[]> {
  if (fitClass.system === "inch") {
    const fit = inchFitLimits(sizeMetres, fitClass.series, fitClass.number);
    return fit.valid ? valid([fit.value.hole, fit.value.shaft]) : fit;
  }
  const zones: Zone[] = [];
  for (const part of fitClass.feature === "fit"
    ? [fitClass.hole, fitClass.shaft]
    : [fitClass]) {
    const zone = isoLimits(sizeMetres, part.letters, part.grade);
    if (!zone.valid) return zone;
    zones.push(zone.value);
  }
  return valid(zones);
}

/** Least and most diametral clearance (m) of a class that names a fit; refuses a single hole or shaft class besides. */
export function classClearance(
  sizeMetres: number,
  fitClass: FitClass,
): Answer<Clearance> {
  const zones = classZones(sizeMetres, fitClass);
  if (!zones.valid) return zones;
  const [hole, shaft] = zones.value;
  if (hole === undefined || shaft === undefined)
    return notValid(`${classWord(fitClass)} is one part of a fit only`);
  return valid(fitOf(hole, shaft));
}

function readWord(word: string): Answer<FitClass> {
  const [first = "", second, third] = word.split("/");
  if (third !== undefined)
    return notValid("a fit is one hole class and one shaft class, as H7/f7");
  return second === undefined ? readSingle(word) : readFit(first, second);
}

function readSingle(word: string): Answer<IsoClass | InchFit> {
  const [, letters, digits] = /^([A-Za-z]+)(\d+)$/.exec(word) ?? [];
  if (letters === undefined || digits === undefined)
    return notValid(
      `“${word}” is no class: a class is letters and a number, as H7, f7, H7/f7 or RC4`,
    );
  const series = [...inchSeries.keys()].find(
    (each) => each === letters.toUpperCase(),
  );
  return series === undefined
    ? readIso(letters, digits)
    : readInch(letters, series, digits);
}

function readInch(
  letters: string,
  series: InchSeries,
  digits: string,
): Answer<InchFit> {
  const count = inchSeries.get(series) ?? 0;
  const number = Number(digits);
  if (letters !== series)
    return notValid(`an inch class is written in capitals, ${series}`);
  if (!(1 <= number && number <= count) || String(number) !== digits)
    return notValid(
      `ANSI B4.1 has ${series}1 to ${series}${count}, and no ${letters}${digits}`,
    );
  return valid({ system: "inch", feature: "fit", series, number });
}

function readIso(letters: string, digits: string): Answer<IsoClass> {
  const feature = featureOf(letters);
  if (feature === undefined)
    return notValid(`ISO 286 has no deviation letters “${letters}”`);
  const grade = isoGrades.find((each) => String(each) === digits);
  if (grade === undefined)
    return notValid(`ISO 286 has the grades 01 and 0 to 18, and no ${digits}`);
  const rows =
    letters === "j" ? shaftJRows : letters === "J" ? holeJRows : undefined;
  if (rows !== undefined && !rows.has(grade))
    return notValid(
      `ISO 286 gives ${letters} in the grades ${[...rows.keys()].join(", ")} only`,
    );
  return valid({ system: "iso", feature, letters, grade });
}

function readFit(first: string, second: string): Answer<IsoFit> {
  const hole = readSingle(first);
  if (!hole.valid) return hole;
  const shaft = readSingle(second);
  if (!shaft.valid) return shaft;
  if (hole.value.system === "inch" || shaft.value.system === "inch")
    return notValid("an inch class names the whole fit and stands alone");
  if (hole.value.feature !== "hole" || shaft.value.feature !== "shaft")
    return notValid(
      "a fit is a hole class in capitals, then a shaft class in small letters, as H7/f7",
    );
  return valid({
    system: "iso",
    feature: "fit",
    hole: hole.value,
    shaft: shaft.value,
  });
}
