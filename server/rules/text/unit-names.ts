// What units are called, for sentences and fixes about them: the units of a dimension in the order that a shop thinks of them, and the
// ways in which people write a unit otherwise.
import {
  unitOf,
  unitWords,
  type Dimension,
} from "../../core/quantity/units.ts";
import { nearest } from "./near.ts";

/** As a sentence calls one of it: "a length", "a unit of length". */
const DIMENSION_NAMES: Readonly<Record<Dimension, string>> = {
  length: "a length",
  temperature: "a temperature",
  angle: "an angle",
  force: "a force",
  torque: "a torque",
  pressure: "a pressure",
  rotation: "a turning speed",
  frequency: "a rate of cycles",
  speed: "a speed",
  viscosity: "a viscosity",
  "dynamic-viscosity": "a viscosity",
  expansion: "an expansion",
  density: "a density",
  area: "an area",
  pv: "a pressure times a speed",
  time: "a time",
  ratio: "a share",
};

const INCH_FIRST: Readonly<Record<Dimension, readonly string[]>> = {
  length: ["in", "thou", "tenths", "mm", "um"],
  temperature: ["F", "C"],
  angle: ["deg"],
  force: ["lbf", "N", "kN"],
  torque: ["lbf-ft", "lbf-in", "N-m"],
  pressure: ["psi", "ksi", "MPa", "GPa"],
  rotation: ["rpm"],
  frequency: ["per min"],
  speed: ["ft/min", "m/min", "m/s"],
  viscosity: ["cSt"],
  "dynamic-viscosity": ["cP"],
  expansion: ["uin/in-F", "um/m-K"],
  density: ["g/cm3", "kg/m3"],
  area: ["sq-in", "sq-ft", "sq-m"],
  pv: ["psi-ft/min", "MPa-m/s"],
  time: ["h"],
  ratio: ["%"],
};

const MM_FIRST: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  length: ["mm", "um", "in", "thou"],
  temperature: ["C", "F"],
  force: ["N", "kN", "lbf"],
  torque: ["N-m", "lbf-ft"],
  pressure: ["MPa", "GPa", "psi"],
  speed: ["m/min", "m/s", "ft/min"],
  expansion: ["um/m-K", "uin/in-F"],
  area: ["sq-m", "sq-in", "sq-ft"],
  pv: ["MPa-m/s", "psi-ft/min"],
};

/** The units that a dimension is mostly written in, those of the file's system first. */
export function usualUnits(
  dimensions: readonly Dimension[],
  system: string,
): readonly string[] {
  return dimensions.flatMap(
    (dimension) =>
      (system === "mm" ? MM_FIRST[dimension] : undefined) ??
      INCH_FIRST[dimension],
  );
}

/** "a length", "a speed or a turning speed" */
export function dimensionNames(dimensions: readonly Dimension[]): string {
  return [...new Set(dimensions.map((each) => DIMENSION_NAMES[each]))].join(
    " or ",
  );
}

/** What thou.ohm calls "a unit of speed or rotation", as the dimensions that it may measure. */
export function dimensionsCalled(said: string): readonly Dimension[] {
  return said.split(" or ").flatMap((name): readonly Dimension[] => {
    if (name === "pressure times speed") return ["pv"];
    if (name === "viscosity") return ["viscosity", "dynamic-viscosity"];
    return isDimension(name) ? [name] : [];
  });
}

function isDimension(name: string): name is Dimension {
  return Object.hasOwn(DIMENSION_NAMES, name);
}

/** Other ways to write the very same unit, in small letters without blanks or points. */
const SAME: Readonly<Record<string, string>> = {
  inches: "in",
  ins: "in",
  "''": "in",
  "\u{201D}": "in",
  "\u{2033}": "in",
  thous: "thou",
  thousandths: "thou",
  microinch: "uin",
  microinches: "uin",
  uinch: "uin",
  micron: "um",
  microns: "um",
  micrometre: "um",
  micrometres: "um",
  micrometer: "um",
  micrometers: "um",
  mu: "um",
  "\u{B5}": "um",
  "\u{3BC}": "um",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  degf: "F",
  fahrenheit: "F",
  degc: "C",
  "\u00B0c": "C",
  "\u00B0f": "F",
  celsius: "C",
  centigrade: "C",
  kelvin: "K",
  degree: "deg",
  degrees: "deg",
  lb: "lbf",
  lbs: "lbf",
  pound: "lbf",
  pounds: "lbf",
  newton: "N",
  newtons: "N",
  "ft-lb": "lbf-ft",
  "ft-lbs": "lbf-ft",
  "ft-lbf": "lbf-ft",
  "lb-ft": "lbf-ft",
  "lbs-ft": "lbf-ft",
  ftlb: "lbf-ft",
  ftlbs: "lbf-ft",
  lbft: "lbf-ft",
  lbfft: "lbf-ft",
  "lbf\u{B7}ft": "lbf-ft",
  "in-lb": "lbf-in",
  "in-lbs": "lbf-in",
  "in-lbf": "lbf-in",
  "lb-in": "lbf-in",
  inlb: "lbf-in",
  inlbs: "lbf-in",
  nm: "N-m",
  "n\u{B7}m": "N-m",
  "n/mm2": "MPa",
  "lb/in2": "psi",
  "lbf/in2": "psi",
  kpsi: "ksi",
  rev: "rpm",
  "rev/min": "rpm",
  "r/min": "rpm",
  revs: "rpm",
  "/min": "per min",
  cpm: "per min",
  fpm: "ft/min",
  sfm: "ft/min",
  "ft/m": "ft/min",
  mpm: "m/min",
  "m/sec": "m/s",
  mps: "m/s",
  percent: "%",
  pct: "%",
  centistoke: "cSt",
  centistokes: "cSt",
  centipoise: "cP",
  "mpa\u{B7}s": "mPa-s",
  "um/m/k": "um/m-K",
  "um/mk": "um/m-K",
  "um/m-c": "um/m-K",
  "uin/in/f": "uin/in-F",
  "g/cc": "g/cm3",
  "g/ml": "g/cm3",
  "kg/l": "g/cm3",
  "kg/dm3": "g/cm3",
  "ppm/k": "um/m-K",
  "ppm/c": "um/m-K",
  "ppm/\u{B0}c": "um/m-K",
  "ppm/f": "uin/in-F",
  "ppm/\u{B0}f": "uin/in-F",
  "psi-fpm": "psi-ft/min",
  "psi\u{B7}fpm": "psi-ft/min",
  in2: "sq-in",
  "in^2": "sq-in",
  sqin: "sq-in",
  ft2: "sq-ft",
  "ft^2": "sq-ft",
  sqft: "sq-ft",
  m2: "sq-m",
  "m^2": "sq-m",
  sqm: "sq-m",
};

/** Words that are one unit in one country and another in the next. */
const EITHER: Readonly<Record<string, readonly string[]>> = {
  mil: ["thou", "mm"],
  mils: ["thou", "mm"],
};

const SAYBOLT = {
  of: ["viscosity", "dynamic-viscosity"],
  note: "what Saybolt seconds are in cSt hangs on how many they are (ASTM D2161)",
} as const;

/** Units that the language has not, by what they measure, with what they are in those that it has: exact by definition, but for the radian (SI Brochure, from memory) and Saybolt seconds. */
const ELSEWHERE: Readonly<
  Record<string, { readonly of: readonly Dimension[]; readonly note: string }>
> = {
  bar: { of: ["pressure"], note: "1 bar is 0.1 MPa" },
  pa: { of: ["pressure"], note: "1 MPa is 1000000 Pa" },
  mpsi: { of: ["pressure"], note: "1 Mpsi is 1000 ksi" },
  "kg/cm2": { of: ["pressure"], note: "1 kgf/cm2 is 0.0980665 MPa" },
  "kgf/cm2": { of: ["pressure"], note: "1 kgf/cm2 is 0.0980665 MPa" },
  "kg/mm2": { of: ["pressure"], note: "1 kgf/mm2 is 9.80665 MPa" },
  "kgf/mm2": { of: ["pressure"], note: "1 kgf/mm2 is 9.80665 MPa" },
  "kgf-m": { of: ["torque"], note: "1 kgf-m is 9.80665 N-m" },
  kgfm: { of: ["torque"], note: "1 kgf-m is 9.80665 N-m" },
  cm2: { of: ["area"], note: "1 sq-m is 10000 cm2" },
  mm2: { of: ["area"], note: "1 sq-m is 1000000 mm2" },
  sus: SAYBOLT,
  ssu: SAYBOLT,
  kgf: { of: ["force"], note: "1 kgf is 9.80665 N" },
  kp: { of: ["force"], note: "1 kp is 9.80665 N" },
  kg: { of: ["force"], note: "a mass of 1 kg weighs 9.80665 N" },
  ft: { of: ["length"], note: "1 ft is 12 in" },
  hz: {
    of: ["rotation", "frequency"],
    note: "one a second is 60 a minute",
  },
  rad: { of: ["angle"], note: "1 rad is 57.2958 deg" },
};

export interface Meant {
  /** Units that were perhaps meant. */
  readonly words: readonly string[];
  /** It is another way to write just that unit, the only one. */
  readonly same: boolean;
  /** What it is in units that can be written. */
  readonly note: string | undefined;
}

/** The unit that an unknown word was perhaps meant for, of those that measure one of these; of any where none are given. */
export function unitMeant(
  word: string,
  dimensions: readonly Dimension[],
): Meant {
  const fits = (unit: string): boolean => {
    const dimension = unitOf(unit)?.dimension;
    return (
      dimension !== undefined &&
      (dimensions.length === 0 || dimensions.includes(dimension))
    );
  };
  const key = word
    .toLowerCase()
    .replaceAll(/[\s.]/gu, "")
    // pasted for the sign of degrees
    .replaceAll(/[\u00BA\u02DA]/gu, "\u00B0")
    .replaceAll("\u{B2}", "2");
  const own = (table: object): boolean => Object.hasOwn(table, key);
  const same = own(SAME) ? SAME[key] : undefined;
  if (same !== undefined && fits(same))
    return { words: [same], same: true, note: undefined };
  const either = own(EITHER) ? (EITHER[key] ?? []).filter(fits) : [];
  if (0 < either.length) return { words: either, same: false, note: undefined };
  const elsewhere = own(ELSEWHERE) ? ELSEWHERE[key] : undefined;
  if (elsewhere?.of.some((each) => dimensions.includes(each)) === true)
    return { words: [], same: false, note: elsewhere.note };
  const fitting = unitWords().filter(
    (each) => fits(each) && /^[\p{L}%]/u.test(each),
  );
  // a name misspelt is told by the names, and only those of four letters or more: shorter ones are near to anything
  const names = Object.keys(SAME).filter(
    (each) => 3 < each.length && fits(SAME[each] ?? ""),
  );
  const words = [
    ...new Set(
      nearest(word, [...fitting, ...names]).map((each) =>
        fitting.includes(each) ? each : (SAME[each] ?? each),
      ),
    ),
  ];
  const [only] = words;
  return {
    words,
    same: words.length === 1 && only?.toLowerCase() === word.toLowerCase(),
    note: undefined,
  };
}
