// The units of the language as data: what each measures and its size in SI. Adding one is a line here and touches no grammar.
// Sizes: the inch and the units made of it are exact by definition (international yard and pound, 1959); the pound-force is
// exact with standard gravity 9.80665 m/s² (3rd CGPM, 1901); the rest is SI (BIPM, SI Brochure, 9th edition).

export type Dimension =
  | "length"
  | "temperature"
  | "angle"
  | "force"
  | "torque"
  | "pressure"
  | "rotation"
  | "frequency"
  | "speed"
  | "viscosity"
  | "dynamic-viscosity"
  | "expansion"
  | "density"
  | "area"
  | "pv"
  | "time"
  | "ratio";

export interface Unit<Symbol extends string = string> {
  /** As the tool writes it. */
  readonly symbol: Symbol;
  readonly dimension: Dimension;
  /** SI value of one unit: m, °C, rad, N, N·m, Pa, 1/s (turns), 1/s, m/s, m²/s, Pa·s, 1/K, kg/m³, m², Pa·m/s, s, 1. */
  readonly size: number;
  /** Added before `size` is applied: temperatures only. */
  readonly zero?: number;
  /** Lengths only: tenths of a nanometre in one unit, a whole number. */
  readonly tenths?: bigint;
  /** Other ways to write it. */
  readonly also?: readonly string[];
}

const POUND_FORCE = 0.45359237 * 9.80665;
const PSI = POUND_FORCE / 0.0254 ** 2;

function length<Symbol extends string>(
  symbol: Symbol,
  tenths: bigint,
  ...also: readonly string[]
): Unit<Symbol> {
  return {
    symbol,
    dimension: "length",
    size: Number(tenths) / 1e10,
    tenths,
    also,
  };
}
function unit<Symbol extends string>(
  symbol: Symbol,
  dimension: Dimension,
  size: number,
  ...also: readonly string[]
): Unit<Symbol> {
  return { symbol, dimension, size, also };
}
function temperature<Symbol extends string>(
  symbol: Symbol,
  size: number,
  zero: number,
  ...also: readonly string[]
): Unit<Symbol> {
  return { symbol, dimension: "temperature", size, zero, also };
}

const TABLE = [
  length("in", 254_000_000n, '"', "inch"),
  length("thou", 254_000n),
  length("tenths", 25_400n, "tenth"),
  length("uin", 254n, "\u{B5}in", "\u{3BC}in"),
  length("um", 10_000n, "\u{B5}m", "\u{3BC}m"),
  length("mm", 10_000_000n),
  length("cm", 100_000_000n),
  length("m", 10_000_000_000n),
  temperature("F", 5 / 9, -32, "°F"),
  temperature("C", 1, 0, "°C"),
  temperature("K", 1, -273.15),
  unit("deg", "angle", Math.PI / 180, "°"),
  unit("lbf", "force", POUND_FORCE),
  unit("N", "force", 1),
  unit("kN", "force", 1e3),
  unit("psi", "pressure", PSI),
  unit("ksi", "pressure", 1e3 * PSI),
  unit("kPa", "pressure", 1e3),
  unit("MPa", "pressure", 1e6),
  unit("GPa", "pressure", 1e9),
  unit("rpm", "rotation", 1 / 60),
  unit("per min", "frequency", 1 / 60),
  unit("%", "ratio", 0.01),
  unit("ft/min", "speed", 0.3048 / 60),
  unit("m/min", "speed", 1 / 60),
  unit("m/s", "speed", 1),
  unit("lbf-ft", "torque", POUND_FORCE * 0.3048),
  unit("lbf-in", "torque", POUND_FORCE * 0.0254),
  unit("N-m", "torque", 1),
  unit("cSt", "viscosity", 1e-6, "mm2/s", "mm²/s"),
  unit("cP", "dynamic-viscosity", 1e-3, "mPa-s"),
  unit("um/m-K", "expansion", 1e-6, "\u{B5}m/m-K", "\u{3BC}m/m-K"),
  unit("uin/in-F", "expansion", 1e-6 * 1.8, "\u{B5}in/in-F", "\u{3BC}in/in-F"),
  unit("kg/m3", "density", 1, "kg/m³"),
  unit("g/cm3", "density", 1e3, "g/cm³"),
  unit("sq-in", "area", 0.0254 ** 2, "in²"),
  unit("sq-ft", "area", 0.3048 ** 2, "ft²"),
  unit("sq-m", "area", 1, "m²"),
  unit("psi-ft/min", "pv", (PSI * 0.3048) / 60),
  unit("MPa-m/s", "pv", 1e6),
  unit("h", "time", 3600),
];

/** How the tool writes a unit. */
export type UnitSymbol = (typeof TABLE)[number]["symbol"];

export const UNITS: readonly Unit<UnitSymbol>[] = TABLE;

const SIZES = Object.fromEntries(
  UNITS.map(({ symbol, size }) => [symbol, size]),
) as Readonly<Record<UnitSymbol, number>>;

const BY_WORD: ReadonlyMap<string, Unit> = new Map(
  UNITS.flatMap((each) =>
    [each.symbol, ...(each.also ?? [])].map((word) => [word, each] as const),
  ),
);

/** The unit that a word means; `per  min` counts however it is spaced. */
export function unitOf(word: string): Unit | undefined {
  return BY_WORD.get(word.replace(/\s+/gu, " "));
}

/** SI value of one of the unit that the tool writes so. */
export function sizeOf(symbol: UnitSymbol): number {
  return SIZES[symbol];
}

/** Every word that means a unit. */
export function unitWords(): readonly string[] {
  return [...BY_WORD.keys()];
}

/** A value of a unit in SI (temperatures in °C). */
export function toSi(value: number, of: Unit): number {
  return (value + (of.zero ?? 0)) * of.size;
}

/** An SI value (temperatures in °C) in a unit. */
export function fromSi(value: number, to: Unit): number {
  return value / to.size - (to.zero ?? 0);
}
