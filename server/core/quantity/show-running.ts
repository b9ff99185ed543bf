// What a running fit is judged by, for a person to read: speed, PV, power, a rise of temperature, plain numbers. It rounds for display
// only, as show.ts does for lengths.
import {
  showIn,
  showNumbers,
  showRange,
  significant,
  type System,
} from "./show.ts";

/** m/s, to ft/min in an inch job: "55 ft/min". */
export function showSpeeds(low: number, high: number, system: System): string {
  return showIn(low, high, system === "inch" ? "ft/min" : "m/s");
}

/** m/s of a cutting edge, as machinists say it: "40 to 100 ft/min", "12 to 30 m/min" in a metric job. */
export function showSpeedOfCut(
  low: number,
  high: number,
  system: System,
): string {
  return showIn(low, high, system === "inch" ? "ft/min" : "m/min", 2);
}

/** 1/s, to turns a minute: "180 to 440 rpm". */
export function showTurns(low: number, high: number): string {
  return showIn(low, high, "rpm", 2);
}

/** Pa·m/s, to psi-ft/min in an inch job, MPa-m/s in a metric one. */
export function showPvs(low: number, high: number, system: System): string {
  return showIn(low, high, system === "inch" ? "psi-ft/min" : "MPa-m/s");
}

/**
 * The last digit that is shown of an oil film, m: 0.1 µm, 0.00001 in. A radial clearance is known to half a step of its readings, 0.5 µm in most
 * cases, and the film is a fifth of it or less; the oil's band alone is a tenth of what it leaves.
 */
export const FILM_STEP: Readonly<Record<System, number>> = {
  inch: 2.54e-7,
  mm: 1e-7,
};

/** A thickness of oil, or what is taken from it: "0.0042 to 0.0079 mm". */
export function showFilms(low: number, high: number, system: System): string {
  return showRange(low, high, system, FILM_STEP[system]);
}

/** m², to sq-in in an inch job: "150 sq-in". */
export function showArea(area: number, system: System): string {
  return showIn(area, area, system === "inch" ? "sq-in" : "sq-m");
}

/** W, in either system. */
export function showPowers(low: number, high: number): string {
  return `${showNumbers(low, high)} W`;
}

/** A difference of temperatures in K, in degrees of the job's scale: "9.2 °F". */
export function showRises(low: number, high: number, system: System): string {
  return system === "inch"
    ? `${showNumbers(low * 1.8, high * 1.8)} °F`
    : `${showNumbers(low, high)} K`;
}

/** A chance of 0 to 1 that was worked out. Never "100 %" or "0 %": nobody knows that. */
export function showChance(chance: number): string {
  if (0.995 <= chance) return "over 99 %";
  return chance < 0.005 ? "under 1 %" : `${significant(100 * chance, 2)} %`;
}
