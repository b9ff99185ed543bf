// Owns one point of film in ratios: read from the table by cubics, and found again from a Sommerfeld number.
// Knows no metres and no oil; how the table was solved is reynolds.ts.
import { notValid, valid, type Answer } from "../answer.ts";
import { filmTable } from "./film-table.data.ts";
import type { FilmRatios } from "./reynolds.ts";
import { rootBetween } from "./root.ts";

export interface FilmPoint extends FilmRatios {
  readonly lengthOverDiameter: number;
  readonly relativeEccentricity: number;
  /** DIN/ISO form: So = P·ψ²/(μω) = 1/(2πS). */
  readonly sommerfeldDin: number;
}

/** What the table answers, both ends included. */
export const filmRange = {
  lengthOverDiameter: { least: 1 / 16, greatest: 2 },
  relativeEccentricity: { least: 0.02, greatest: 0.95 },
} as const;

/**
 * The film at a relative eccentricity. Both arguments are ratios, within `filmRange`; beyond it refused. Within 1 %
 * of the solver in every ratio (a test; 0.3 % where looked at closely). Source: the Reynolds equation as reynolds.ts
 * states it.
 */
export function filmAtEccentricity(
  lengthOverDiameter: number,
  relativeEccentricity: number,
): Answer<FilmPoint> {
  const refusal = lengthRefused(lengthOverDiameter);
  if (refusal !== undefined) return refusal;
  const { least, greatest } = filmRange.relativeEccentricity;
  if (!(least <= relativeEccentricity))
    return notValid(
      `the journal runs nearly centred: the film is tabled from a relative eccentricity of ${least}`,
    );
  if (!(relativeEccentricity <= greatest))
    return notValid(
      `the film is tabled up to a relative eccentricity of ${greatest}`,
    );
  return valid(pointOf(columnAt(lengthOverDiameter), relativeEccentricity));
}

/**
 * The film that a Sommerfeld number (US form, S = (μN/P)·(R/c)², c radial) asks for. Refuses outside `filmRange`: a
 * small S is a journal too eccentric for a film ("no-film"), a large one runs nearly centred. Source: as filmAtEccentricity.
 */
export function filmAtSommerfeld(
  lengthOverDiameter: number,
  sommerfeld: number,
): Answer<FilmPoint> {
  const refusal = lengthRefused(lengthOverDiameter);
  if (refusal !== undefined) return refusal;
  if (!(0 < sommerfeld))
    return notValid("a film needs an oil, a speed and a load");
  const column = columnAt(lengthOverDiameter);
  const { least, greatest } = filmRange.relativeEccentricity;
  const wanted = Math.log(sommerfeld);
  const excess = (eccentricity: number) =>
    logSommerfeld(column, eccentricity) - wanted;
  if (excess(least) < 0)
    return notValid(
      `the journal runs nearly centred (relative eccentricity below ${least}): load too light or clearance too small for the table`,
    );
  if (0 < excess(greatest))
    return notValid(
      `no film is left that carries (relative eccentricity above ${greatest}): load too high, or speed or viscosity too low`,
      "no-film",
    );
  // ln S falls all the way (a test), so the root is one: first the two nodes that it lies between
  let below = 0;
  while (
    below < eccentricities.length - 2 &&
    0 < excess(at(eccentricities, below + 1))
  )
    below++;
  const high = Math.min(greatest, at(eccentricities, below + 1));
  return valid(
    pointOf(
      column,
      rootBetween(excess, at(eccentricities, below), high, 1e-12),
    ),
  );
}

/**
 * US form S = (μN/P)·(R/c)²: Pa·s, turns per second, Pa; `clearanceOverDiameter` is diametral clearance over diameter
 * (= c/R).
 */
export function sommerfeldNumber(
  viscosity: number,
  turnsPerSecond: number,
  specificLoad: number,
  clearanceOverDiameter: number,
): number {
  return (
    (viscosity * turnsPerSecond) / (specificLoad * clearanceOverDiameter ** 2)
  );
}

function lengthRefused(lengthOverDiameter: number): Answer<never> | undefined {
  const { least, greatest } = filmRange.lengthOverDiameter;
  if (!(least <= lengthOverDiameter))
    return notValid(
      `the bearing is too short for its diameter: the film is tabled from a length of ${least} diameters`,
    );
  if (!(lengthOverDiameter <= greatest))
    return notValid(
      `the bearing is too long for its diameter: the film is tabled up to a length of ${greatest} diameters`,
    );
  return undefined;
}

// The table as it is interpolated: S as the logarithm of its ratio to the short bearing's (Ocvirk's closed form),
// which is nearly flat, the rest as it stands. Lengths stand at even steps of their logarithm, eccentricities where
// the curves bend.
const fields = 7;
const { eccentricities, lengthsOverDiameter: lengths } = filmTable;
const logLengths = lengths.map((length) => Math.log2(length));
const columnSize = eccentricities.length * fields;
const smooth = new Float64Array(lengths.length * columnSize);
filmTable.rows.forEach((row, index) => {
  const eccentricity = at(eccentricities, index % eccentricities.length);
  const length = at(lengths, Math.floor(index / eccentricities.length));
  row.forEach((value, field) => {
    smooth[index * fields + field] =
      field === 0 ? Math.log(value) - logShort(length, eccentricity) : value;
  });
});

/**
 * ln S of the short bearing. Source: Ocvirk's closed form (from memory; checked against Booker's integrals in the
 * tests).
 */
function logShort(lengthOverDiameter: number, eccentricity: number): number {
  const gone = 1 - eccentricity * eccentricity;
  const pull = Math.sqrt(
    Math.PI ** 2 * gone + 16 * eccentricity * eccentricity,
  );
  return Math.log(
    (gone * gone) /
      (lengthOverDiameter * lengthOverDiameter * Math.PI * eccentricity * pull),
  );
}

/** The table at one length, for each eccentricity. */
interface Column {
  readonly lengthOverDiameter: number;
  readonly values: Float64Array;
}

let kept: Column | undefined;

/** Kept from call to call, for a search asks for the same length over and over. */
function columnAt(lengthOverDiameter: number): Column {
  if (kept?.lengthOverDiameter === lengthOverDiameter) return kept;
  const place = Math.log2(lengthOverDiameter);
  const first = firstOfFour(logLengths, place);
  const values = new Float64Array(columnSize);
  for (let k = first; k < first + 4; k++) {
    const weight = lagrange(logLengths, first, k, place);
    for (let index = 0; index < columnSize; index++)
      values[index] =
        at(values, index) + weight * at(smooth, k * columnSize + index);
  }
  kept = { lengthOverDiameter, values };
  return kept;
}

function logSommerfeld(column: Column, eccentricity: number): number {
  return (
    valueAt(column, 0, eccentricity) +
    logShort(column.lengthOverDiameter, eccentricity)
  );
}

function valueAt(
  { values }: Column,
  field: number,
  eccentricity: number,
): number {
  const first = firstOfFour(eccentricities, eccentricity);
  let sum = 0;
  for (let k = first; k < first + 4; k++)
    sum +=
      lagrange(eccentricities, first, k, eccentricity) *
      at(values, k * fields + field);
  return sum;
}

/** The first of the four nodes round a place. */
function firstOfFour(nodes: readonly number[], place: number): number {
  let below = 0;
  while (below < nodes.length - 2 && at(nodes, below + 1) <= place) below++;
  return Math.max(0, Math.min(nodes.length - 4, below - 1));
}

/** The weight of node k among the four from `first`. */
function lagrange(
  nodes: readonly number[],
  first: number,
  k: number,
  place: number,
): number {
  let weight = 1;
  for (let other = first; other < first + 4; other++)
    if (other !== k)
      weight *= (place - at(nodes, other)) / (at(nodes, k) - at(nodes, other));
  return weight;
}

function pointOf(column: Column, relativeEccentricity: number): FilmPoint {
  const value = (field: number) => valueAt(column, field, relativeEccentricity);
  const sommerfeld = Math.exp(logSommerfeld(column, relativeEccentricity));
  const attitude = value(1);
  return {
    lengthOverDiameter: column.lengthOverDiameter,
    relativeEccentricity,
    sommerfeld,
    sommerfeldDin: 1 / (2 * Math.PI * sommerfeld),
    attitude,
    // the drag follows from the load and its direction, as in reynolds.ts
    frictionVariable:
      (2 * Math.PI ** 2 * sommerfeld) /
        Math.sqrt(1 - relativeEccentricity ** 2) +
      (relativeEccentricity / 2) * Math.sin(attitude),
    flowVariable: value(2),
    sideFlowRatio: value(3),
    meanToPeakPressure: value(4),
    peakAngle: value(5),
    filmEndAngle: value(6),
  };
}

/** An element that exists. */
function at(array: ArrayLike<number>, index: number): number {
  return array[index] ?? NaN;
}
