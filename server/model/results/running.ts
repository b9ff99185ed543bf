// Results of how a fit runs: speed, load and PV, and its oil film.
import { showPressures } from "../../core/quantity/show-force.ts";
import {
  FILM_STEP,
  showFilms,
  showPowers,
  showPvs,
  showRises,
  showSpeeds,
} from "../../core/quantity/show-running.ts";
import { showNumbers, type System } from "../../core/quantity/show.ts";
import { filmOf, type FilmCase, type FitFilm } from "../evaluate/film.ts";
import { filmRatioOf } from "../evaluate/film-ratio.ts";
import {
  isOverLimit,
  isRun,
  pvOf,
  runningLimit,
  specificLoad,
  surfaceSpeed,
} from "../evaluate/running.ts";
import { settings } from "../evaluate/settings.ts";
import type { Estimate, Known } from "../known.ts";
import {
  numberResult,
  sketch,
  sketchOf,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import type { Result, Verdict } from "../result.ts";
import type { Shop } from "../shop.ts";

/** Nothing where nothing is written of how the fit runs. */
export function runningSketches(shop: Shop, ref: string): readonly Sketch[] {
  if (!isRun(shop, ref)) return [];
  return [...surfaceSketches(shop, ref), ...filmSketches(shop, ref)];
}

type Show = (low: number, high: number, system: System) => string;

function surfaceSketches(shop: Shop, ref: string): readonly Sketch[] {
  const of = (
    kind: string,
    unit: string,
    found: Known<Estimate>,
    limit: "speed" | "specificLoad" | "pv",
    show: Show,
  ): Sketch => {
    const where = { entry: ref, kind };
    return sketchOf(where, unit, found, (value) =>
      numberResult(where, unit, value, {
        status: value.status,
        verdict: verdictOf(shop, ref, value, limit),
        text: show(value.low, value.high, settings(shop).system),
        working: value.working,
      }),
    );
  };
  return [
    of("surface-speed", "m/s", surfaceSpeed(shop, ref), "speed", showSpeeds),
    of(
      "specific-load",
      "Pa",
      specificLoad(shop, ref),
      "specificLoad",
      showPressures,
    ),
    of("pv", "Pa.m/s", pvOf(shop, ref), "pv", showPvs),
  ];
}

/** Against what this job allows, else what the bearing material bears; none where neither is known. */
function verdictOf(
  shop: Shop,
  ref: string,
  { low, high }: Estimate,
  of: "speed" | "specificLoad" | "pv",
): Verdict {
  const limit = runningLimit(shop, ref, of);
  if (limit === undefined) return "none";
  if (!isOverLimit(high, limit)) return "in";
  return isOverLimit(low, limit) ? "out" : "unsure";
}

function filmSketches(shop: Shop, ref: string): readonly Sketch[] {
  const { system } = settings(shop);
  const film = filmOf(shop, ref);
  const of = (
    kind: string,
    unit: string,
    value: (each: FilmCase) => number,
    show: (low: number, high: number) => string,
    step?: number,
  ): Sketch =>
    sketch(kind, film, () =>
      film.known
        ? filmResult({ entry: ref, kind }, unit, film.value, value, show, step)
        : unknownResult({ entry: ref, kind }, unit, film),
    );
  return [
    of(
      "film",
      "m",
      ({ left }) => left,
      (low, high) =>
        showFilms(low, high, system) +
        (film.known && film.value.isWarm
          ? `, the least at ${film.value.worst.gap}`
          : ""),
      FILM_STEP[system],
    ),
    ratioSketch(shop, ref),
    of(
      "relative-eccentricity",
      "1",
      ({ film: { relativeEccentricity } }) => relativeEccentricity,
      showNumbers,
    ),
    of(
      "sommerfeld",
      "1",
      ({ film: { sommerfeld } }) => sommerfeld,
      showNumbers,
    ),
    of(
      "friction-power",
      "W",
      ({ film: { frictionPower } }) => frictionPower,
      showPowers,
    ),
    of(
      "oil-rise",
      "K",
      ({ film: { oilRise } }) => oilRise,
      (low, high) => showRises(low, high, system),
    ),
  ];
}

function filmResult(
  where: { readonly entry: string; readonly kind: string },
  unit: string,
  film: FitFilm,
  value: (each: FilmCase) => number,
  show: (low: number, high: number) => string,
  step: number | undefined,
): Result {
  const values = film.all.map(value);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return numberResult(
    where,
    unit,
    { low, nominal: value(film.nominal), high },
    { status: film.status, text: show(low, high), step, working: film.working },
  );
}

function ratioSketch(shop: Shop, ref: string): Sketch {
  const where = { entry: ref, kind: "film-ratio" };
  return sketchOf(where, "1", filmRatioOf(shop, ref), (ratio) =>
    numberResult(where, "1", ratio, {
      status: ratio.status,
      text: `${showNumbers(ratio.low, ratio.high)}, ${ratio.regime} at the least`,
      working: ratio.working,
    }),
  );
}
