// What the words of a record mean, for hover and completion. Entries and facts have their own sentences in
// grammar/vocabulary.ts.
import type { Dimension } from "../core/quantity/units.ts";

/** Words that stand for a choice, and what each says. */
const CHOICES: Readonly<Record<string, string>> = {
  inch: "Bare lengths are inches.",
  mm: "Bare lengths are millimetres.",
  simple: "A size is judged against its limits as they are.",
  guarded:
    "Limits are held back by the uncertainty of the reading (ISO 14253-1): in, out, or unsure.",
  along: "The joint runs along the axis: the boss is no closed ring.",
  across: "The joint runs across the axis: each half is a closed ring.",
  gasket: "A gasket of this thickness lies in the joint.",
  bare: "Metal on metal.",
  blind: "It has a bottom.",
  through: "It is open at both ends.",
  solid: "Turned from the solid, or cast.",
  wrapped: "Rolled from strip, with a seam.",
  porous: "Sintered, and holds its own oil: sized on a mandrel, never reamed.",
  lined: "A thin lining on a steel back: never reamed.",
  round: "A groove round the bore: it makes two short bearings of one.",
  lengthwise: "A groove along the bore.",
  od: "Outside diameter.",
  id: "Inside diameter.",
  steady: "The load keeps its direction.",
  reversing: "The load turns about: back and forth.",
  shock: "The load comes in blows.",
  splash: "Oil is thrown in by what turns in the case.",
  drip: "Oil comes by drops.",
  grease: "Grease, in place of oil.",
  pressure: "Oil is pumped in at this pressure.",
  Ra: "Mean roughness.",
  Rz: "Mean height from peak to valley.",
  bought: "As it came.",
  pressed: "After pressing, before it is cut.",
  roughed: "After roughing.",
  finished: "Cut to size.",
  run: "After service.",
  passed: "What was looked for is in order.",
  failed: "It is not in order: the step stays open and blocks.",
  hand: "Turned by hand.",
  machine: "Turned by a machine.",
  hss: "High-speed steel.",
  carbide: "Cemented carbide.",
  straight: "Flutes along the axis: not across a lengthwise groove.",
  left: "Left-hand flutes: they push the chips ahead.",
  right: "Right-hand flutes: they draw the chips back.",
  micrometer: "Reads the diameter itself.",
  "bore-gauge": "Compares a bore with what it was set on.",
  plug: "A plug of known size: it goes, or it doesn't.",
  indicator: "Compares with what it was set on.",
  air: "Compares by the flow of air with what it was set on.",
  shaft: "Temperature of the shaft.",
  bush: "Temperature of the bush; unwritten, it is as its case.",
  case: "Temperature of the case.",
  part: "Temperature of the part at the cut.",
  tool: "Temperature of the tool at the cut.",
};

export function choiceMeaning(word: string): string | undefined {
  return Object.hasOwn(CHOICES, word) ? CHOICES[word] : undefined;
}

/** Words that open a clause inside a fact, and what follows them. */
const CLAUSES: Readonly<Record<string, string>> = {
  with: "The gauge, the reamer, or the gauge it was set with.",
  at: "A temperature, or where.",
  as: "The stage that the part was at.",
  by: "Who.",
  on: "The day, or what it belongs to.",
  station: "How far along the axis.",
  from: "Where it begins, or where the figure comes from.",
  to: "The other end of a range.",
  in: "What it sits or runs in.",
  of: "What it belongs to.",
  for: "The bore whose cut it guides.",
  centre: "Where the axis of the bore was found, from the line's datum.",
  ring: "A setting ring of this size.",
  no: "A number size.",
  letter: "A letter size.",
  ISO: "An ISO viscosity grade.",
  SAE: "An SAE viscosity grade.",
  VG: "An ISO viscosity grade.",
};

export function clauseMeaning(word: string): string | undefined {
  return Object.hasOwn(CLAUSES, word) ? CLAUSES[word] : undefined;
}

/** What each unit is called; by the symbol that the tool writes. */
const UNITS: Readonly<Record<string, string>> = {
  in: "inch",
  thou: "thousandth of an inch",
  tenths: "ten-thousandth of an inch",
  uin: "microinch, a millionth of an inch",
  um: "micrometre",
  mm: "millimetre",
  cm: "centimetre",
  m: "metre",
  F: "degree Fahrenheit",
  C: "degree Celsius",
  K: "kelvin",
  deg: "degree of angle",
  lbf: "pound-force",
  N: "newton",
  kN: "kilonewton",
  psi: "pound-force on a square inch",
  ksi: "thousand psi",
  kPa: "kilopascal",
  MPa: "megapascal, a newton on a square millimetre",
  GPa: "gigapascal",
  rpm: "turns a minute",
  "per min": "times a minute",
  "%": "hundredth part",
  "ft/min": "feet a minute",
  "m/min": "metres a minute",
  "m/s": "metres a second",
  "lbf-ft": "pound-force foot",
  "lbf-in": "pound-force inch",
  "N-m": "newton metre",
  cSt: "centistokes, a square millimetre a second",
  cP: "centipoise, a millipascal second",
  "um/m-K": "micrometre on a metre for each kelvin",
  "uin/in-F": "microinch on an inch for each degree Fahrenheit",
  "kg/m3": "kilogram in a cubic metre",
  "g/cm3": "gram in a cubic centimetre",
  "sq-in": "square inch",
  "sq-ft": "square foot",
  "sq-m": "square metre",
  "psi-ft/min": "psi times feet a minute",
  "MPa-m/s": "megapascal times metres a second",
  h: "hour",
};

export function unitName(symbol: string): string | undefined {
  return Object.hasOwn(UNITS, symbol) ? UNITS[symbol] : undefined;
}

export const DIMENSION_WORDS: Readonly<Record<Dimension, string>> = {
  length: "length",
  temperature: "temperature",
  angle: "angle",
  force: "force",
  torque: "torque",
  pressure: "pressure",
  rotation: "rotation",
  frequency: "frequency",
  speed: "speed",
  viscosity: "kinematic viscosity",
  "dynamic-viscosity": "dynamic viscosity",
  expansion: "thermal expansion",
  density: "density",
  area: "area",
  pv: "pressure times speed",
  time: "time",
  ratio: "share",
};
