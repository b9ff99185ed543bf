// Owns the temperature that the oil in the gap takes, and the film at it: friction heats, oil or case carries the
// heat away. Does not own what the parts do when warm (the clearance that comes in is the one at work).
import { notValid, valid, type Answer } from "../answer.ts";
import {
  bearingFilm,
  filmOfAnyFlow,
  landsOf,
  type Bearing,
  type BearingFilm,
} from "./bearing-film.ts";
import { filmAtEccentricity, filmRange } from "./film-point.ts";
import { rootBetween } from "./root.ts";
import {
  densityAt,
  dynamicViscosity,
  viscosityRange,
  type FilmOil,
} from "./viscosity.ts";

/**
 * Where the heat goes; the choice stands in the result.
 * - `held`: nowhere; the effective temperature is given.
 * - `side-flow`: into the oil that leaves at the ends, and no other; it comes in at `inlet`. What the journal carries
 *   through goes round again. Source: ISO 7902-1 (from memory), without the flow by feed pressure, which would cool
 *   more.
 * - `whole-flow`: all the oil drawn in is fresh; the side flow leaves half warmed, the rest wholly. Source: Raimondi
 *   & Boyd by way of Shigley, ch. 12.
 * - `case`: through the outside of the case into the air. Source: ISO 7902-1 (from memory).
 */
export type Cooling =
  | { readonly by: "held"; readonly temperature: number }
  | {
      readonly by: "side-flow" | "whole-flow";
      /** Of the oil as it enters, °C. */
      readonly inlet: number;
      /** Density times specific heat, J/(m³·K). */
      readonly volumetricHeat: number;
    }
  | {
      readonly by: "case";
      /** °C */
      readonly ambient: number;
      /** The surface that gives heat off, m². */
      readonly area: number;
      /** W/(m²·K) */
      readonly transfer: number;
    };

/** Density times specific heat of a mineral oil, J/(m³·K). Source: ISO 7902-1 (from memory). */
export const typicalVolumetricHeat = 1.8e6;

/** Heat given off by a case in still air to air in motion, W/(m²·K). Source: ISO 7902-1, 15 to 20 (from memory). */
export const typicalTransfer = { low: 15, high: 20 } as const;

/**
 * Surface of a case that holds a bearing among others, m²: 15 to 20 times d·L. Source: DIN 31652-1 and ISO 7902-1
 * (from memory).
 */
export function typicalCaseArea(
  diameter: number,
  length: number,
): { readonly low: number; readonly high: number } {
  return { low: 15 * diameter * length, high: 20 * diameter * length };
}

export interface WarmFilm extends BearingFilm {
  readonly cooledBy: Cooling["by"];
  /** Of the oil in the gap, for its viscosity, °C. */
  readonly effectiveTemperature: number;
  /** Pa·s, at it. */
  readonly viscosity: number;
  /**
   * K: outlet over inlet where oil cools, effective over ambient where the case does, 0 where the temperature is
   * held.
   */
  readonly oilRise: number;
}

/**
 * The film at the temperature where friction and cooling balance. The balance has one root, for a warmer oil is
 * thinner, heats less and flows more; it is held in by halving, so it always converges, or there is none within the
 * oil's range and the table, and it is refused: a film that ends before the heat balances, or a journal so nearly
 * centred that the table doesn't reach it. Refuses as its parts do, and a cooling without area, transfer or heat. A
 * refusal because no film carries is of the sort "no-film". Source: the balance as Cooling says at each; the film as film-point.ts.
 */
export function warmFilm(
  bearing: Bearing,
  oil: FilmOil,
  cooling: Cooling,
): Answer<WarmFilm> {
  if (cooling.by === "held") {
    const film = filmAt(bearing, oil, cooling.temperature);
    return film.valid
      ? valid({ ...film.value, cooledBy: cooling.by, oilRise: 0 })
      : film;
  }
  const start = cooling.by === "case" ? cooling.ambient : cooling.inlet;
  const carries =
    cooling.by === "case"
      ? cooling.area * cooling.transfer
      : cooling.volumetricHeat;
  if (!(0 < carries && carries < Infinity))
    return notValid("nothing carries the heat away");
  const { least, greatest } = viscosityRange.temperature;
  if (!(least <= start && start < greatest))
    return notValid(
      `the oil enters, or the air stands, outside ${least} to ${greatest} °C`,
    );
  const span = temperatureSpan(bearing, oil, start);
  if (!span.valid) return span;

  // how far a temperature lies above the one that its own heat would give; it grows with the temperature
  const excess = (temperature: number) => {
    const film = filmOfAnyFlow(bearing, viscosityIn(oil, temperature));
    const rise = film.valid ? riseOf(film.value, cooling) : NaN;
    // the gap takes the mean of inlet and outlet; a case is as warm as its film
    return temperature - start - (cooling.by === "case" ? rise : rise / 2);
  };
  const [low, high] = [span.value.least, span.value.greatest];
  if (0 < excess(low))
    return notValid(
      "at the temperature that balances the journal runs nearly centred, beyond the table",
    );
  if (excess(high) < 0)
    return high === greatest
      ? notValid(
          `the oil would pass ${greatest} °C before its heat is carried away`,
        )
      : notValid(
          "the oil thins with its own heat until no film carries: the heat does not balance",
          "no-film",
        );
  const balance = rootBetween(excess, low, high, 1e-9);
  const film = filmAt(bearing, oil, balance);
  if (!film.valid) return film;
  return valid({
    ...film.value,
    cooledBy: cooling.by,
    oilRise: riseOf(film.value, cooling),
  });
}

type FilmAtTemperature = Omit<WarmFilm, "cooledBy" | "oilRise">;

function filmAt(
  bearing: Bearing,
  oil: FilmOil,
  temperature: number,
): Answer<FilmAtTemperature> {
  const viscosity = dynamicViscosity(oil, temperature);
  if (!viscosity.valid) return viscosity;
  const density = densityAt(oil.density, temperature);
  if (!density.valid) return density;
  const film = bearingFilm(bearing, {
    viscosity: viscosity.value,
    density: density.value,
  });
  return film.valid
    ? valid({
        ...film.value,
        viscosity: viscosity.value,
        effectiveTemperature: temperature,
      })
    : film;
}

function riseOf(
  film: BearingFilm,
  cooling: Exclude<Cooling, { readonly by: "held" }>,
): number {
  if (cooling.by === "case")
    return film.frictionPower / (cooling.area * cooling.transfer);
  const warmed =
    cooling.by === "side-flow" ? film.sideFlow : film.flow - film.sideFlow / 2;
  return film.frictionPower / (cooling.volumetricHeat * warmed);
}

/** Pa·s, NaN where the oil has none: the searches stay where it has. */
function viscosityIn(oil: FilmOil, temperature: number): number {
  const viscosity = dynamicViscosity(oil, temperature);
  return viscosity.valid ? viscosity.value : NaN;
}

/** The temperatures from `start` up at which the table has a film and the oil a viscosity. */
function temperatureSpan(
  bearing: Bearing,
  oil: FilmOil,
  start: number,
): Answer<{ readonly least: number; readonly greatest: number }> {
  const lands = landsOf(bearing);
  if (!lands.valid) return lands;
  const { ratio, specificLoad, clearanceOverDiameter } = lands.value;
  const { least, greatest } = filmRange.relativeEccentricity;
  const centred = filmAtEccentricity(ratio, least);
  if (!centred.valid) return centred;
  const eccentric = filmAtEccentricity(ratio, greatest);
  if (!eccentric.valid) return eccentric;
  const perSommerfeld =
    (specificLoad * clearanceOverDiameter ** 2) /
    Math.abs(bearing.turnsPerSecond);
  // a hair inside, so that rounding never steps off the table
  const thickest = perSommerfeld * centred.value.sommerfeld * (1 - 1e-9);
  const thinnest = perSommerfeld * eccentric.value.sommerfeld * (1 + 1e-9);
  const limit: number = viscosityRange.temperature.greatest;
  const tooThin = (temperature: number) =>
    !(thinnest <= viscosityIn(oil, temperature));
  const tooThick = (temperature: number) =>
    thickest < viscosityIn(oil, temperature);
  if (tooThin(start))
    return notValid(
      "no film carries even with the oil at its coolest: load too high, or speed or viscosity too low",
      "no-film",
    );
  if (tooThick(limit))
    return notValid(
      "the journal runs nearly centred with the oil at its hottest",
    );
  return valid({
    least: tooThick(start) ? edgeOf(tooThick, start, limit) : start,
    greatest: tooThin(limit) ? edgeOf(tooThin, limit, start) : limit,
  });
}

/** Where a property ends on the way from a place that has it to one that hasn't: the first place after it. */
function edgeOf(has: (x: number) => boolean, from: number, to: number): number {
  let [inside, after] = [from, to];
  for (let round = 0; round < 60 && 1e-10 < Math.abs(after - inside); round++) {
    const middle = (inside + after) / 2;
    if (has(middle)) inside = middle;
    else after = middle;
  }
  return after;
}
