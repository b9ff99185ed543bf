// Owns the search over clearance: where the film carries.
// Does not own the film at one clearance (heat-balance.ts). All clearances are diametral.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Bearing } from "./bearing-film.ts";
import { filmLeft, filmRatio, type FilmLoss } from "./film-ratio.ts";
import { warmFilm, type Cooling, type WarmFilm } from "./heat-balance.ts";
import type { FilmOil } from "./viscosity.ts";

/** A bearing whose clearance is sought, and what its film has to be. */
export interface ClearanceQuestion {
  readonly bearing: Omit<Bearing, "diametralClearance">;
  readonly oil: FilmOil;
  readonly cooling: Cooling;
  readonly loss: FilmLoss;
  /** Ra of the two surfaces, m. */
  readonly journalRa: number;
  readonly boreRa: number;
  readonly needs: {
    /** Least film after tilt and form, m. */
    readonly film: number;
    readonly filmRatio: number;
    /** Of the oil where it is hottest, °C: the outlet where oil cools, else the gap. */
    readonly hottest: number;
  };
}

export interface FilmAtClearance {
  readonly diametralClearance: number;
  readonly film: WarmFilm;
  /** Least film after tilt and form, m. */
  readonly filmLeft: number;
  readonly filmRatio: number;
  /** °C */
  readonly hottest: number;
  readonly carries: boolean;
}

/** Diametral clearances from end to end of which the film carries, m. */
export interface CarryingRange {
  readonly least: number;
  readonly most: number;
}

/** How many clearances are looked at before the ends are closed in on. */
const sweepPoints = 60;

/** The film at one diametral clearance (m), and whether it is what the question needs. Refuses as warmFilm, filmLeft and filmRatio do. */
export function filmAtClearance(
  question: ClearanceQuestion,
  diametralClearance: number,
): Answer<FilmAtClearance> {
  const { bearing, oil, cooling, loss, journalRa, boreRa, needs } = question;
  const film = warmFilm({ ...bearing, diametralClearance }, oil, cooling);
  if (!film.valid) return film;
  const left = filmLeft(film.value.leastFilm, bearing.length, loss);
  if (!left.valid) return left;
  const ratio = filmRatio(left.value, journalRa, boreRa);
  if (!ratio.valid) return ratio;
  const hottest =
    cooling.by === "side-flow" || cooling.by === "whole-flow"
      ? cooling.inlet + film.value.oilRise
      : film.value.effectiveTemperature;
  return valid({
    diametralClearance,
    film: film.value,
    filmLeft: left.value,
    filmRatio: ratio.value,
    hottest,
    carries:
      needs.film <= left.value &&
      needs.filmRatio <= ratio.value &&
      hottest <= needs.hottest,
  });
}

/**
 * The ranges between `least` and `most` (m) in which the film carries, from small to large, by a sweep in even ratios; their ends are found to a
 * thousandth of themselves. Empty: nowhere. Refuses a range that isn't one. Own method, no source.
 */
export function sweepClearance(
  question: ClearanceQuestion,
  least: number,
  most: number,
): Answer<readonly CarryingRange[]> {
  if (!(0 < least && least < most && most < Infinity))
    return notValid(
      "a sweep needs two clearances above zero, the smaller first",
    );
  const ranges: CarryingRange[] = [];
  let open: number | undefined;
  let before: number | undefined;
  for (let k = 0; k < sweepPoints; k++) {
    const here = least * (most / least) ** (k / (sweepPoints - 1));
    if (doesCarry(question, here))
      open ??=
        before === undefined ? here : edgeBetween(question, here, before);
    else if (open !== undefined && before !== undefined) {
      ranges.push({ least: open, most: edgeBetween(question, before, here) });
      open = undefined;
    }
    before = here;
  }
  if (open !== undefined) ranges.push({ least: open, most });
  return valid(ranges);
}

function doesCarry(
  question: ClearanceQuestion,
  diametralClearance: number,
): boolean {
  const at = filmAtClearance(question, diametralClearance);
  return at.valid && at.value.carries;
}

/** The last clearance that carries on the way from one that does to one that doesn't. */
function edgeBetween(
  question: ClearanceQuestion,
  carrying: number,
  failing: number,
): number {
  while (5e-4 < Math.abs(failing / carrying - 1)) {
    const middle = Math.sqrt(carrying * failing);
    if (doesCarry(question, middle)) carrying = middle;
    else failing = middle;
  }
  return carrying;
}
