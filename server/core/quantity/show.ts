// Numbers for a person to read: in the job's units, with no more digits than are known. The only place that rounds for display.

export type System = "inch" | "mm";

/** Decimals of a length in the system's unit when nothing says more: a tenth of a thou, a micrometre. */
const USUAL_DECIMALS: Readonly<Record<System, number>> = { inch: 4, mm: 3 };
const MOST_DECIMALS: Readonly<Record<System, number>> = { inch: 6, mm: 5 };
const METRES: Readonly<Record<System, number>> = { inch: 0.0254, mm: 0.001 };
const SYMBOL: Readonly<Record<System, string>> = { inch: "in", mm: "mm" };

/** Decimals that show a step of this many metres: 5 for 0.00001 in; never fewer than usual. */
export function decimalsFor(step: number | undefined, system: System): number {
  const usual = USUAL_DECIMALS[system];
  if (step === undefined || step <= 0) return usual;
  const needed = Math.ceil(-Math.log10(step / METRES[system]) - 0.01);
  return Math.min(Math.max(needed, usual), MOST_DECIMALS[system]);
}

/** A number with so many decimals, never "-0.000". */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** A length without its unit. */
export function lengthDigits(
  metres: number,
  system: System,
  step?: number,
): string {
  return fixed(metres / METRES[system], decimalsFor(step, system));
}

/** A length with its unit: "0.87432 in". */
export function showLength(
  metres: number,
  system: System,
  step?: number,
): string {
  return `${lengthDigits(metres, system, step)} ${SYMBOL[system]}`;
}

/** A length that somebody wrote, m, with the digits that it takes and its unit: "0.00001 in"; never fewer decimals than usual. */
export function showWritten(metres: number, system: System): string {
  const inUnit = metres / METRES[system];
  let decimals = USUAL_DECIMALS[system];
  while (
    decimals < MOST_DECIMALS[system] &&
    1e-9 < Math.abs(Number(inUnit.toFixed(decimals)) - inUnit)
  )
    decimals++;
  return `${fixed(inUnit, decimals)} ${SYMBOL[system]}`;
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
    ? `${from} ${SYMBOL[system]}`
    : `${from} to ${to} ${SYMBOL[system]}`;
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
  const rounded = Number(value.toPrecision(digits));
  const decimals = Math.max(
    0,
    digits - 1 - Math.floor(Math.log10(Math.abs(rounded))),
  );
  return fixed(rounded, Math.min(decimals, 12));
}

/** So many of a thing, in words: "1 reading", "3 readings". @param many its plural, where that is not with an s */
export function showCount(count: number, one: string, many?: string): string {
  return `${String(count)} ${count === 1 ? one : (many ?? `${one}s`)}`;
}
