// Owns what a least film is worth: what tilt and form leave of it, its ratio to the roughness, the regime, and
// common limits. Does not own how thick the film is (bearing-film.ts).
import { notValid, valid, type Answer } from "../answer.ts";
import { sizeOf } from "../quantity/units.ts";

/**
 * Rq over Ra of a machined surface: about 1.25 (1.11 for a sine, 1.25 for a Gaussian). Source: statistics of the
 * Gaussian, √(π/2).
 */
const rqOverRa = 1.25;

export type Regime = "boundary" | "mixed" | "full";

/**
 * Where the regimes meet, as film ratios, for conformal surfaces: boundary below 1, mixed from 1, full from 5.
 * Source: Hamrock, Fundamentals of Fluid Film Lubrication (from memory).
 */
export const regimeLimits = { mixed: 1, full: 5 } as const;

/**
 * Trumpler's criteria for a design with a full film, SI: least film 0.0002 in + 0.00004·d, oil at most 250 °F, start
 * load at most 300 psi on projected area; that it carries twice the load is not asked here. Source: Trumpler, Design of Film Bearings, 1966,
 * by way of Shigley, ch. 12 (from memory; the same figures seen in SI in open code after Shigley).
 */
export const trumpler = {
  leastFilmBase: 0.0002 * 0.0254,
  leastFilmPerDiameter: 0.00004,
  hottestOil: (250 - 32) / 1.8,
  startLoad: 300 * sizeOf("psi"),
} as const;

/** Trumpler's least film for a journal diameter, both m. */
export function trumplerLeastFilm(diameter: number): number {
  return trumpler.leastFilmBase + trumpler.leastFilmPerDiameter * diameter;
}

export interface FilmLoss {
  /** Angle between journal and bore, rad. */
  readonly tilt?: number | undefined;
  /**
   * How far the surfaces stand into the gap by form, m: radial, so half of a two-point out-of-round and, where the
   * sizes are means, a quarter of the difference between the diameters at the ends.
   */
  readonly form?: number | undefined;
}

/**
 * What is left of a least film at the bearing's end, m: less tilt·L/2 and less form; zero where they use it up (the
 * surfaces touch). Refuses a negative length, tilt or form. Source: geometry; the film is taken as of parallel axes,
 * so a tilt that eats half of it is already outside what was solved.
 */
export function filmLeft(
  leastFilm: number,
  length: number,
  { tilt = 0, form = 0 }: FilmLoss,
): Answer<number> {
  if (
    !(0 <= leastFilm && 0 < length && 0 <= tilt && 0 <= form) ||
    ![leastFilm, length, tilt, form].every(Number.isFinite)
  )
    return notValid("film, length, tilt and form are zero or above");
  return valid(Math.max(0, leastFilm - (tilt * length) / 2 - form));
}

/**
 * Film ratio λ = h/√(Rq1² + Rq2²) with Rq = 1.25·Ra, all m. Refuses a film or a roughness below zero, and two
 * surfaces without any. Source: Hamrock (from memory).
 */
export function filmRatio(
  film: number,
  journalRa: number,
  boreRa: number,
): Answer<number> {
  if (
    !(0 <= film && 0 <= journalRa && 0 <= boreRa) ||
    ![film, journalRa, boreRa].every(Number.isFinite)
  )
    return notValid("film and roughness are zero or above");
  const composite = rqOverRa * Math.hypot(journalRa, boreRa);
  if (!(0 < composite))
    return notValid("a film ratio needs the roughness of a surface");
  return valid(film / composite);
}

/** The regime of a film ratio. A value on a limit belongs to the better side. */
export function regimeOf(ratio: number): Regime {
  if (ratio < regimeLimits.mixed) return "boundary";
  return ratio < regimeLimits.full ? "mixed" : "full";
}
