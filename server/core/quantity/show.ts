// Numbers for a person to read: in the job's units, with no more digits than are known. The only place that rounds for display.
import { metresToTenths } from "./exact.ts";
import { sizeOf, type UnitSymbol } from "./units.ts";

export type System = "inch" | "mm";

/** Decimals of a length in the system's unit when nothing says more: a tenth of a thou, a micrometre. */
const USUAL_DECIMALS: Readonly<Record<System, number>> = { inch: 4, mm: 3 };
const MOST_DECIMALS: Readonly<Record<System, number>> = { inch: 6, mm: 5 };
/** Tenths of a nanometre in the system's unit. */
const TENTHS: Readonly<Record<System, number>> = { inch: 254e6, mm: 1e7 };
/** The unit of lengths as they are shown, and of bare ones as they are written. */
export const UNIT_OF_SYSTEM = {
  inch: "in",
  mm: "mm",
} as const satisfies Record<System, string>;

/** Decimals that show a step of this many metres: 5 for 0.00001 in; never fewer than usual. */
export function decimalsFor(step: number | undefined, system: System): number {
  const usual = USUAL_DECIMALS[system];
  if (step === undefined || step <= 0) return usual;
  const inUnit = (step * 1e10) / TENTHS[system];
  const needed = Math.ceil(-Math.log10(inUnit) - 0.01);
  // 0.0025 takes a digit more than 0.002 does
  const quarter = Math.abs(inUnit * 10 ** needed - 2.5) < 1e-6 ? 1 : 0;
  return Math.min(Math.max(needed + quarter, usual), MOST_DECIMALS[system]);
}

/**
 * The step in m of the last digit that lengths take, written in full in whichever unit takes fewer; undefined where they end in
 * neither.
 */
export function stepTaken(lengths: readonly number[]): number | undefined {
  const tenths = lengths.map(metresToTenths);
  const steps = (["inch", "mm"] as const).flatMap((system) => {
    for (let decimals = 0; decimals <= MOST_DECIMALS[system]; decimals++) {
      const step = TENTHS[system] / 10 ** decimals;
      if (tenths.every((each) => each % step === 0)) return [step / 1e10];
    }
    return [];
  });
  return steps.length === 0 ? undefined : Math.max(...steps);
}

/** A number with so many decimals, halves away from zero, never "-0.000". */
export function fixed(value: number, decimals: number): string {
  const text = atHalves(value).toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** A little farther from zero than what it takes to be short of a half by the noise of binary fractions alone: 0.58175 is a half, its double is not. */
function atHalves(value: number): number {
  return value * (1 + 4 * Number.EPSILON);
}

/** A length without its unit. */
export function lengthDigits(
  metres: number,
  system: System,
  step?: number,
): string {
  // a length is whole tenths of a nanometre: what a sum leaves beyond is noise
  const inUnit = metresToTenths(metres) / TENTHS[system];
  return fixed(inUnit, decimalsFor(step, system));
}

/** A length with its unit: "0.87432 in". */
export function showLength(
  metres: number,
  system: System,
  step?: number,
): string {
  return `${lengthDigits(metres, system, step)} ${UNIT_OF_SYSTEM[system]}`;
}

/** An uncertainty, or the room that is kept for one, m, to a tenth of itself with its unit: "0.0012 mm". */
export function showUncertainty(metres: number, system: System): string {
  return showLength(metres, system, metres / 10);
}

/** A length that somebody wrote, m, with the digits that it takes and its unit: "0.00001 in"; never fewer decimals than usual. */
export function showWritten(metres: number, system: System): string {
  const inUnit = (metres * 1e10) / TENTHS[system];
  let decimals = USUAL_DECIMALS[system];
  while (
    decimals < MOST_DECIMALS[system] &&
    1e-9 < Math.abs(Number(inUnit.toFixed(decimals)) - inUnit)
  )
    decimals++;
  return `${fixed(inUnit, decimals)} ${UNIT_OF_SYSTEM[system]}`;
}

/** A range of lengths with its unit, or one length where both ends read alike: "0.0010 to 0.0013 in". */
export function showRange(
  low: number,
  high: number,
  system: System,
  step?: number,
): string {
  const from = lengthDigits(low, system, step);
  const to = lengthDigits(high, system, step);
  return from === to
    ? `${from} ${UNIT_OF_SYSTEM[system]}`
    : `${from} to ${to} ${UNIT_OF_SYSTEM[system]}`;
}

/** The same length in the other system, for hovers. */
export function showInOther(
  metres: number,
  system: System,
  step?: number,
): string {
  return showLength(metres, system === "inch" ? "mm" : "inch", step);
}

/** A temperature in the system's scale: "68 °F". */
export function showTemperature(celsius: number, system: System): string {
  return system === "inch"
    ? `${fixed(celsius * 1.8 + 32, 0)} °F`
    : `${fixed(celsius, 0)} °C`;
}

/** A temperature in both scales: "140 °F (60 °C)". */
export function bothScales(celsius: number, system: System): string {
  const otherSystem = system === "inch" ? "mm" : "inch";
  return `${showTemperature(celsius, system)} (${showTemperature(celsius, otherSystem)})`;
}

/** So many significant digits, without an exponent where it can be read without one. */
export function significant(value: number, digits: number): string {
  if (value === 0) return "0";
  const rounded = Number(atHalves(value).toPrecision(digits));
  const decimals = Math.max(
    0,
    digits - 1 - Math.floor(Math.log10(Math.abs(rounded))),
  );
  return fixed(rounded, Math.min(decimals, 12));
}

/** Numbers to so many significant digits: "0.42 to 0.55"; one where both ends read alike. */
export function showNumbers(low: number, high: number, digits = 3): string {
  const [from, to] = [significant(low, digits), significant(high, digits)];
  return from === to ? from : `${from} to ${to}`;
}

/** SI values in a unit: "1250 psi", "8.1 to 8.6 MPa". */
export function showIn(
  low: number,
  high: number,
  symbol: UnitSymbol,
  digits?: number,
): string {
  const size = sizeOf(symbol);
  return `${showNumbers(low / size, high / size, digits)} ${symbol}`;
}

/** So many of a thing, in words: "1 reading", "3 readings". @param many its plural, where that is not with an s */
export function showCount(count: number, one: string, many?: string): string {
  return `${String(count)} ${count === 1 ? one : (many ?? `${one}s`)}`;
}
