// What a written quantity is in the other system, and what a unit is. Digits are those that the written ones give, never more.
import { child, children, type Node } from "../../grammar/tree.ts";
import {
  readNumber,
  tenthsToMetres,
  toNumber,
  toTenths,
} from "../core/quantity/exact.ts";
import { UNIT_OF_SYSTEM, decimalsFor, fixed } from "../core/quantity/show.ts";
import {
  fromSi,
  toSi,
  unitOf,
  type Dimension,
  type Unit,
} from "../core/quantity/units.ts";
import type { OpenFile } from "../model/project.ts";
import { blocks } from "../markup/markdown.ts";
import { DIMENSION_WORDS, unitName } from "./hover-words.ts";
import { readingHover } from "./hover-reading.ts";
import type { Spot } from "./position.ts";

/** A number of a line with the unit that counts for it. */
interface Written {
  readonly text: string;
  readonly value: number;
  /** Of the last written digit, in the unit; undefined for a fraction. */
  readonly step: number | undefined;
  readonly unit: Unit;
  /** The unit is the file's. */
  readonly isBare: boolean;
  /** In m, exact. */
  readonly metres: number | undefined;
}

/** A number with its unit: the same in the other system, and a reading at 20 °C. `path` leads to the number or the unit. */
export function quantityHover(
  open: OpenFile,
  spot: Spot,
  path: readonly Node[],
): string | undefined {
  const number = path.find(
    (node) => node.type === "number" || node.type === "decimal",
  );
  if (number === undefined) return undefined;
  const written = writtenAt(open, spot, path, number);
  if (written === undefined) return undefined;
  return blocks(
    `${written.text} ${written.unit.symbol}${written.isBare ? " (the file's unit)" : ""} = ${inOther(written)}`,
    readingHover(open, spot, number) ?? "",
  );
}

/** What a unit is, in the other system and by name. */
export function unitHover(word: string): string | undefined {
  const unit = unitOf(word);
  if (unit === undefined) return undefined;
  return blocks(
    `**${unit.symbol}**: ${unitName(unit.symbol) ?? "unit"}; a unit of ${DIMENSION_WORDS[unit.dimension]}`,
    oneInOther(unit),
  );
}

function writtenAt(
  { file }: OpenFile,
  { line }: Spot,
  path: readonly Node[],
  number: Node,
): Written | undefined {
  const text = line.body.slice(number.start, number.end);
  const read = readNumber(text);
  const holder = path[path.indexOf(number) - 1];
  if (read === undefined || holder === undefined) return undefined;
  const word = unitWordFor(line.body, path, holder, number);
  const bare = file.context.system;
  const dimension = DIMENSION_OF[holder.type] ?? "length";
  const unit =
    word !== undefined
      ? unitOf(word)
      : (dimension !== "length" && holder.type !== "anything") ||
          bare === undefined
        ? undefined
        : unitOf(UNIT_OF_SYSTEM[bare]);
  if (unit === undefined) return undefined;
  const exponent = /[eE]([+-]?\d+)$/.exec(text)?.[1] ?? "0";
  const decimals = /\.(\d*)/.exec(text)?.[1]?.length ?? 0;
  return {
    text,
    value: toNumber(read),
    step: text.includes("/") ? undefined : 10 ** (Number(exponent) - decimals),
    unit,
    isBare: word === undefined,
    metres:
      unit.tenths === undefined
        ? undefined
        : tenthsToMetres(toTenths(read, unit.tenths)),
  };
}

/** Holders of a number that is no length where it stands bare. */
const DIMENSION_OF: Readonly<Record<string, Dimension>> = {
  temperature: "temperature",
  angle: "angle",
  force: "force",
  torque: "torque",
  pressure: "pressure",
  rotation: "rotation",
  frequency: "frequency",
  speed: "speed",
  surfaceOrRotation: "speed",
  viscosity: "viscosity",
  expansion: "expansion",
  density: "density",
  area: "area",
  pv: "pv",
  time: "time",
  ratio: "ratio",
  anything: "ratio",
};

/** The number's own unit, or the one at the end of its range or list. */
function unitWordFor(
  body: string,
  path: readonly Node[],
  holder: Node,
  number: Node,
): string | undefined {
  const word = (node: Node | undefined): string | undefined => {
    const unit = node === undefined ? undefined : child(node, "unit");
    return unit === undefined ? undefined : body.slice(unit.start, unit.end);
  };
  // the values of a reading share the one unit at their end
  if (holder.type === "values") return word(holder);
  const own = word(holder);
  if (own !== undefined) return own;
  const parent = path[path.indexOf(number) - 2];
  if (parent === undefined || parent.type === "LengthRange_plusMinus")
    return undefined;
  return word(children(parent, holder.type).at(-1));
}

/** The unit of the other system that a person would read a unit in. */
function other(unit: Unit): Unit | undefined {
  const symbol = OTHER[unit.symbol];
  return symbol === undefined ? undefined : unitOf(symbol);
}

const OTHER: Readonly<Record<string, string>> = {
  in: "mm",
  thou: "um",
  tenths: "um",
  uin: "um",
  um: "thou",
  mm: "in",
  cm: "in",
  m: "in",
  F: "C",
  C: "F",
  K: "C",
  lbf: "N",
  N: "lbf",
  kN: "lbf",
  psi: "MPa",
  ksi: "MPa",
  kPa: "psi",
  MPa: "psi",
  GPa: "psi",
  "ft/min": "m/s",
  "m/min": "ft/min",
  "m/s": "ft/min",
  "lbf-ft": "N-m",
  "lbf-in": "N-m",
  "N-m": "lbf-ft",
  "um/m-K": "uin/in-F",
  "uin/in-F": "um/m-K",
  "sq-in": "sq-m",
  "sq-ft": "sq-m",
  "sq-m": "sq-in",
  "psi-ft/min": "MPa-m/s",
  "MPa-m/s": "psi-ft/min",
  rpm: "per s",
};

/** "22.207 mm". Lengths keep the decimals that are usual for a size; nothing else gets a digit that its step doesn't give. */
function inOther({ unit, value, metres, step }: Written): string {
  const to = other(unit);
  const si = metres ?? toSi(value, unit);
  const stepSi = step === undefined ? undefined : step * unit.size;
  if (to === undefined) {
    const symbol = SI[unit.dimension];
    const digits = rounded(si, nearestDecimals(stepSi));
    return symbol === "" ? digits : `${digits} ${symbol}`;
  }
  const inUnit = stepSi === undefined ? undefined : stepSi / to.size;
  const shown =
    to.symbol === "in" || to.symbol === "mm"
      ? trimmed(
          si / to.size,
          wholeDecimals(inUnit),
          decimalsFor(stepSi, to.symbol === "in" ? "inch" : "mm"),
        )
      : rounded(fromSi(si, to), nearestDecimals(inUnit));
  return `${shown} ${to.symbol}`;
}

/** "4.44822 N": one of a unit, to six digits, for units are exact. */
function oneInOther(unit: Unit): string {
  const to = other(unit);
  return to === undefined || unit.zero !== undefined
    ? ""
    : `1 ${unit.symbol} = ${String(Number(fromSi(unit.size, to).toPrecision(6)))} ${to.symbol}`;
}

const SI: Readonly<Record<Dimension, string>> = {
  length: "m",
  temperature: "°C",
  angle: "rad",
  force: "N",
  torque: "N-m",
  pressure: "Pa",
  rotation: "turns a second",
  frequency: "a second",
  speed: "m/s",
  viscosity: "m²/s",
  "dynamic-viscosity": "Pa s",
  expansion: "1/K",
  density: "kg/m³",
  area: "m²",
  pv: "Pa m/s",
  time: "s",
  ratio: "",
};

/** Decimals that come nearest to a step; below zero for tens and hundreds. */
function nearestDecimals(step: number | undefined): number {
  return step === undefined ? 4 : Math.round(-Math.log10(step));
}

/** Decimals that show all of a step: a size loses nothing. */
function wholeDecimals(step: number | undefined): number {
  return step === undefined ? 4 : Math.ceil(-Math.log10(step) - 0.01);
}

/** To so many decimals, or to tens and hundreds. */
function rounded(value: number, decimals: number): string {
  if (decimals < 0) {
    const unit = 10 ** -decimals;
    return fixed(Math.round(value / unit) * unit, 0);
  }
  return fixed(value, Math.min(decimals, 12));
}

/** To `most` decimals, without zeros past `least`. */
function trimmed(value: number, least: number, most: number): string {
  let text = fixed(value, most);
  for (let at = most; Math.max(0, least) < at && text.endsWith("0"); at--)
    text = text.slice(0, -1);
  return text.endsWith(".") ? text.slice(0, -1) : text;
}
