// Owns the search over clearance: where the film carries, where it is best.
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

export interface SweepPoint {
  readonly diametralClearance: number;
  readonly at: Answer<FilmAtClearance>;
}

export interface ClearanceSweep {
  readonly points: readonly SweepPoint[];
  /**
   * Where the film carries, from small to large; edges found to a thousandth of themselves. Empty: nowhere in the
   * range.
   */
  readonly carries: readonly {
    readonly least: number;
    readonly most: number;
  }[];
  /** The clearance that leaves most film among those that carry, or, where none does, among all that have a film. */
  readonly best: FilmAtClearance;
}

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
 * Sweeps the clearance from `least` to `most` (m) in even ratios. Refuses a range that isn't one, fewer than 3
 * points, and a bearing that has no film at any of them. Own method, no source.
 */
export function sweepClearance(
  question: ClearanceQuestion,
  least: number,
  most: number,
  count = 60,
): Answer<ClearanceSweep> {
  if (!(0 < least && least < most && most < Infinity))
    return notValid(
      "a sweep needs two clearances above zero, the smaller first",
    );
  if (!(3 <= count && Number.isInteger(count)))
    return notValid("a sweep needs three points at least");
  const points = Array.from({ length: count }, (_, k) => {
    const diametralClearance = least * (most / least) ** (k / (count - 1));
    return {
      diametralClearance,
      at: filmAtClearance(question, diametralClearance),
    };
  });
  const best = bestOf(question, points);
  if (best === undefined)
    return notValid("the bearing has a film at none of these clearances");

  const carries: { least: number; most: number }[] = [];
  let open: number | undefined;
  let before: SweepPoint | undefined;
  for (const point of points) {
    const here = point.diametralClearance;
    if (doesCarry(point.at))
      open ??=
        before === undefined
          ? here
          : edgeBetween(question, here, before.diametralClearance);
    else if (open !== undefined && before !== undefined) {
      carries.push({
        least: open,
        most: edgeBetween(question, before.diametralClearance, here),
      });
      open = undefined;
    }
    before = point;
  }
  if (open !== undefined) carries.push({ least: open, most });
  return valid({ points, carries, best });
}

function doesCarry(at: Answer<FilmAtClearance>): boolean {
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
    if (doesCarry(filmAtClearance(question, middle))) carrying = middle;
    else failing = middle;
  }
  return carrying;
}

function bestOf(
  question: ClearanceQuestion,
  points: readonly SweepPoint[],
): FilmAtClearance | undefined {
  const withFilm = points.flatMap(({ at }, index) =>
    at.valid ? [{ index, value: at.value }] : [],
  );
  const carrying = withFilm.filter(({ value }) => value.carries);
  let best: { index: number; value: FilmAtClearance } | undefined;
  for (const each of 0 < carrying.length ? carrying : withFilm)
    if (best === undefined || best.value.filmLeft < each.value.filmLeft)
      best = each;
  if (best === undefined) return undefined;

  // a golden section between the neighbours; it keeps to what carries where anything does
  let low =
    points[Math.max(0, best.index - 1)]?.diametralClearance ??
    best.value.diametralClearance;
  let high =
    points[Math.min(points.length - 1, best.index + 1)]?.diametralClearance ??
    best.value.diametralClearance;
  const must = best.value.carries;
  let found = best.value;
  const worth = (clearance: number) => {
    const here = filmAtClearance(question, clearance);
    if (!here.valid || (must && !here.value.carries)) return -1;
    if (found.filmLeft < here.value.filmLeft) found = here.value;
    return here.value.filmLeft;
  };
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let round = 0; round < 16; round++) {
    const [one, other] = [
      high - golden * (high - low),
      low + golden * (high - low),
    ];
    if (worth(one) < worth(other)) low = one;
    else high = other;
  }
  return found;
}
