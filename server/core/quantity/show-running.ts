// What a running fit is judged by, for a person to read: speed, PV, power, a rise of temperature, plain numbers. It rounds for display
// only, as show.ts does for lengths.
import { significant, type System } from "./show.ts";
import { UNITS } from "./units.ts";

/** m/s, to ft/min in an inch job: "55 ft/min". */
export function showSpeeds(low: number, high: number, system: System): string {
  return inUnit(low, high, system === "inch" ? "ft/min" : "m/s");
}

/** Pa·m/s, to psi-ft/min in an inch job, MPa-m/s in a metric one. */
export function showPvs(low: number, high: number, system: System): string {
  return inUnit(low, high, system === "inch" ? "psi-ft/min" : "MPa-m/s");
}

/** W, in either system. */
export function showPowers(low: number, high: number): string {
  return spread(low, high, "W");
}

/** A difference of temperatures in K, in degrees of the job's scale: "9.2 °F". */
export function showRises(low: number, high: number, system: System): string {
  return system === "inch"
    ? spread(low * 1.8, high * 1.8, "°F")
    : spread(low, high, "K");
}

/** Numbers that have no unit: "0.42 to 0.55". */
export function showNumbers(low: number, high: number): string {
  return spread(low, high, "");
}

function inUnit(low: number, high: number, symbol: string): string {
  const size = UNITS.find((unit) => unit.symbol === symbol)?.size ?? 1;
  return spread(low / size, high / size, symbol);
}

function spread(low: number, high: number, symbol: string): string {
  const [from, to] = [significant(low, 3), significant(high, 3)];
  const shown = from === to ? from : `${from} to ${to}`;
  return symbol === "" ? shown : `${shown} ${symbol}`;
}
