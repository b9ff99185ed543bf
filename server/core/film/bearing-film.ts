// Owns the film of a bearing in metres, newtons and watts, at one viscosity: whether a film may be claimed at all,
// and what it is. Does not own the oil's temperature (heat-balance.ts).
import { notValid, valid, type Answer } from "../answer.ts";
import {
  filmAtSommerfeld,
  sommerfeldNumber,
  type FilmPoint,
} from "./film-point.ts";

export interface Bearing {
  /** Of the journal, m. */
  readonly diameter: number;
  /** Of the bearing, over all, m. */
  readonly length: number;
  /** Bore less journal, m: diametral, twice the radial clearance of the formulas. */
  readonly diametralClearance: number;
  /** N, steady in size and direction. */
  readonly load: number;
  /** Of the journal; the bush stands. */
  readonly turnsPerSecond: number;
  /** Width of a groove all round at mid-length, m: it parts the bearing into two short ones. */
  readonly roundGrooveWidth?: number | undefined;
}

/** What decides whether a steady, full film may be reckoned with. */
export interface Service {
  readonly motion: "turning" | "oscillating";
  readonly loading: "steady" | "reversing" | "shock";
  readonly feed: "pressure" | "splash" | "drip" | "grease";
  readonly groove:
    "none" | "round" | "lengthwise-unloaded" | "lengthwise-loaded";
}

/**
 * Says whether a full film may be claimed. Refuses oscillation, reversing or shock load, drip and grease, and a
 * lengthwise groove in the loaded zone: there PV decides. Source: the solution's own conditions (steady, gap filled);
 * for drip and grease common practice, no source.
 */
export function fullFilmClaim({
  motion,
  loading,
  feed,
  groove,
}: Service): Answer<true> {
  if (motion === "oscillating")
    return notValid(
      "an oscillating journal stops twice a cycle: no steady film, PV decides",
    );
  if (loading !== "steady")
    return notValid(
      `the film is solved for a steady load, this one is ${loading}: PV decides`,
    );
  if (feed === "drip" || feed === "grease")
    return notValid(
      `${feed} does not keep the gap filled: no full film is claimed, PV decides`,
    );
  if (groove === "lengthwise-loaded")
    return notValid(
      "a lengthwise groove in the loaded zone lets the pressure out: no full film is claimed, PV decides",
    );
  return valid(true);
}

export interface BearingFilm {
  readonly relativeEccentricity: number;
  /** US form, (μN/P)(R/c)². */
  readonly sommerfeld: number;
  /** DIN/ISO form, Pψ²/(μω). */
  readonly sommerfeldDin: number;
  /** Of one land, where a round groove parts the bearing. */
  readonly lengthOverDiameter: number;
  readonly lands: 1 | 2;
  /** m */
  readonly leastFilm: number;
  /** On the projected area of the lands, Pa. */
  readonly specificLoad: number;
  /** Pa */
  readonly peakPressure: number;
  /** Friction force at the journal's surface over the load. */
  readonly frictionCoefficient: number;
  /** N·m */
  readonly frictionTorque: number;
  /** W */
  readonly frictionPower: number;
  /** Drawn in at the widest gap, m³/s. */
  readonly flow: number;
  /** Leaving at the ends (with a round groove also into it), m³/s; a feed pressure would add to it. */
  readonly sideFlow: number;
}

/** Viscosity in Pa·s and density in kg/m³ of the oil in the gap. */
export interface GapOil {
  readonly viscosity: number;
  readonly density: number;
}

/**
 * The film of a bearing whose oil has one viscosity all through. Refuses sizes, loads or speeds not above zero, a
 * clearance of 2 % of the diameter or more (the gap is no longer thin), a groove that leaves no land, L/D and
 * relative eccentricity outside the table (film-point.ts), and flow that isn't laminar: ρ·U·c/μ ≥ 41.3·√(R/c), c
 * radial (Taylor's vortices; ISO 7902-1, from memory).
 */
export function bearingFilm(
  bearing: Bearing,
  oil: GapOil,
): Answer<BearingFilm> {
  const film = filmOfAnyFlow(bearing, oil.viscosity);
  if (!film.valid) return film;
  if (!(0 < oil.density && oil.density < Infinity))
    return notValid("an oil has a density above zero");
  const { diameter, diametralClearance, turnsPerSecond } = bearing;
  const speed = Math.PI * diameter * Math.abs(turnsPerSecond);
  const reynolds =
    (oil.density * speed * diametralClearance) / 2 / oil.viscosity;
  return reynolds < 41.3 * Math.sqrt(diameter / diametralClearance)
    ? film
    : notValid("the flow in the gap is not laminar");
}

/**
 * The same without a look at whether the flow is laminar: for searches that pass through temperatures where it isn't.
 */
export function filmOfAnyFlow(
  bearing: Bearing,
  viscosity: number,
): Answer<BearingFilm> {
  const shape = landsOf(bearing);
  if (!shape.valid) return shape;
  if (!(0 < viscosity && viscosity < Infinity))
    return notValid("an oil has a viscosity above zero");
  const { ratio, specificLoad, clearanceOverDiameter } = shape.value;
  const turns = Math.abs(bearing.turnsPerSecond);
  const point = filmAtSommerfeld(
    ratio,
    sommerfeldNumber(viscosity, turns, specificLoad, clearanceOverDiameter),
  );
  return point.valid
    ? valid(inMetres(point.value, bearing, shape.value))
    : point;
}

export interface Lands {
  readonly lands: 1 | 2;
  /** Length over diameter of one land. */
  readonly ratio: number;
  /** On the projected area of the lands, Pa. */
  readonly specificLoad: number;
  /** Diametral. */
  readonly clearanceOverDiameter: number;
}

/**
 * The one land of a bearing, or the two of one with a round groove, with the load shared. Refuses sizes, a load or a speed not above zero, a
 * clearance of 2 % of the diameter or more, and a groove that leaves no land.
 */
export function landsOf(bearing: Bearing): Answer<Lands> {
  const {
    diameter,
    length,
    diametralClearance,
    load,
    turnsPerSecond,
    roundGrooveWidth = 0,
  } = bearing;
  if (
    ![diameter, length, diametralClearance].every(
      (size) => 0 < size && size < Infinity,
    )
  )
    return notValid(
      "a bearing needs a diameter, a length and a clearance above zero",
    );
  if (!(0 < load && load < Infinity))
    return notValid("a film is reckoned under a load above zero");
  if (!(0 < Math.abs(turnsPerSecond) && Math.abs(turnsPerSecond) < Infinity))
    return notValid("a film needs a journal that turns");
  const clearanceOverDiameter = diametralClearance / diameter;
  if (!(clearanceOverDiameter < 0.02))
    return notValid(
      "a clearance of 2 % of the diameter or more is no thin gap",
    );
  if (!(0 <= roundGrooveWidth && roundGrooveWidth < length))
    return notValid("the groove leaves no land");
  const lands = 0 < roundGrooveWidth ? 2 : 1;
  const land = (length - roundGrooveWidth) / lands;
  return valid({
    lands,
    ratio: land / diameter,
    specificLoad: load / (diameter * land * lands),
    clearanceOverDiameter,
  });
}

function inMetres(
  point: FilmPoint,
  bearing: Bearing,
  { lands, specificLoad }: Lands,
): BearingFilm {
  const { diameter, load } = bearing;
  const turns = Math.abs(bearing.turnsPerSecond);
  const radius = diameter / 2;
  const radialClearance = bearing.diametralClearance / 2;
  const frictionCoefficient =
    (point.frictionVariable * radialClearance) / radius;
  const frictionTorque = frictionCoefficient * load * radius;
  const land = point.lengthOverDiameter * diameter;
  const flow =
    lands * point.flowVariable * radius * radialClearance * turns * land;
  return {
    relativeEccentricity: point.relativeEccentricity,
    sommerfeld: point.sommerfeld,
    sommerfeldDin: point.sommerfeldDin,
    lengthOverDiameter: point.lengthOverDiameter,
    lands,
    leastFilm: radialClearance * (1 - point.relativeEccentricity),
    specificLoad,
    peakPressure: specificLoad / point.meanToPeakPressure,
    frictionCoefficient,
    frictionTorque,
    frictionPower: 2 * Math.PI * turns * frictionTorque,
    flow,
    sideFlow: flow * point.sideFlowRatio,
  };
}
