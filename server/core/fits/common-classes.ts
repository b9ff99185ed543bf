// Owns the choice: which classes and fits a shop commonly uses, as data, and their limits at a size, for completion and advice.
// Every class that the standards define can be written; these are those worth offering.
import {
  classClearance,
  parseClass,
  classZones,
  type FitClass,
} from "./class-words.ts";
import { inchSeries } from "./b4-1.ts";
import type { Clearance } from "./fit.ts";
import type { Feature, Zone } from "./limits.ts";

/** Tolerance classes for general use, holes and shafts. Source: ISO 286-1:2010, the two selections of clause 4.4 (from memory). */
// prettier-ignore
export const commonHoles: readonly string[] = [
  "G6", "H6", "JS6", "K6", "M6", "N6", "P6", "R6", "S6", "T6",
  "F7", "G7", "H7", "JS7", "K7", "M7", "N7", "P7", "R7", "S7", "T7", "U7", "X7",
  "E8", "F8", "H8", "JS8", "K8", "M8", "N8", "P8", "R8",
  "D9", "E9", "F9", "H9", "C10", "D10", "E10", "H10", "A11", "B11", "C11", "D11", "H11",
];
// prettier-ignore
export const commonShafts: readonly string[] = [
  "g5", "h5", "js5", "k5", "m5", "n5", "p5", "r5", "s5", "t5",
  "f6", "g6", "h6", "js6", "k6", "m6", "n6", "p6", "r6", "s6", "t6", "u6", "x6",
  "e7", "f7", "h7", "js7", "k7", "m7", "n7", "p7", "r7", "s7", "t7", "u7",
  "d8", "e8", "f8", "h8", "d9", "e9", "h9", "d10", "h10", "a11", "b11", "c11", "h11",
];

/** Of these the ones to take first. Source: as above, the framed ones (from memory). */
// prettier-ignore
export const preferredHoles: readonly string[] = [
  "G7", "H7", "JS7", "K7", "N7", "P7", "R7", "S7", "F8", "H8", "E9", "H9", "D10", "H10", "A11", "B11", "C11", "H11",
];
// prettier-ignore
export const preferredShafts: readonly string[] = [
  "g6", "h6", "js6", "k6", "n6", "p6", "r6", "s6", "f7", "h7", "e8", "d9", "h9", "a11", "b11", "c11", "h11",
];

/** Fits on the hole basis, loose to tight. Source: BS 4500's selected fits and ANSI B4.2's preferred ones (from memory). */
// prettier-ignore
export const commonIsoFits: readonly string[] = [
  "H11/c11", "H9/d10", "H9/d9", "H9/e9", "H8/e8", "H8/f7", "H7/f7", "H7/g6", "H7/h6", "H8/h7", "H7/js6", "H7/k6", "H7/n6", "H7/p6", "H7/r6", "H7/s6", "H7/u6",
];

/** Every fit of ANSI B4.1, in the standard's order. */
export const inchFitWords: readonly string[] = [...inchSeries].flatMap(
  ([series, count]) =>
    Array.from({ length: count }, (_, index) => `${series}${index + 1}`),
);

/** The common classes of a feature that the standard defines at a nominal size (m), with their limits; none out of range. */
export function commonClassesAt(
  sizeMetres: number,
  feature: Feature,
): readonly { readonly word: string; readonly zone: Zone }[] {
  return (feature === "hole" ? commonHoles : commonShafts).flatMap((word) => {
    const zones = classZones(sizeMetres, classOf(word));
    const zone = zones.valid ? zones.value[0] : undefined;
    return zone === undefined ? [] : [{ word, zone }];
  });
}

/** The common fits of a system that its standard defines at a nominal size (m), with their clearance; none out of range. */
export function commonFitsAt(
  sizeMetres: number,
  system: FitClass["system"],
): readonly { readonly word: string; readonly clearance: Clearance }[] {
  return (system === "iso" ? commonIsoFits : inchFitWords).flatMap((word) => {
    const clearance = classClearance(sizeMetres, classOf(word));
    return clearance.valid ? [{ word, clearance: clearance.value }] : [];
  });
}

function classOf(word: string): FitClass {
  const read = parseClass(word);
  if (!read.valid) throw new Error(`${word}: ${read.because}`); // a fault in the lists above
  return read.value;
}
