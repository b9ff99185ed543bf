// Owns the Reynolds equation of a plain bearing that surrounds its journal whole: one isoviscous film, steady,
// laminar, of finite length, solved by finite volumes. All in ratios; knows no metres, no oil, no table
// (film-table.data.ts is made with it).
//
// The gap is h = c·H, H = 1 + ε·cos θ, θ from the widest gap with the turning, c the RADIAL clearance (half of the
// diametral one). With p = 6μω(R/c)²·P and z = ζ·L/2:
//
//     ∂/∂θ(H³ ∂P/∂θ) + (D/L)² ∂/∂ζ(H³ ∂P/∂ζ) = ∂H/∂θ
//
// P = 0 at both ends and at the widest gap, where the oil comes in (Raimondi & Boyd 1958 and ISO 7902-1:2020, 5.2 m,
// take the same). In the widening gap the film breaks where P and its slope both vanish (Reynolds' condition): that
// is the complementarity problem P ≥ 0, and a set of points with film is sought (primal-dual active set) until every
// point agrees with it. The even steps are steps of Sommerfeld's angle γ, H = (1 − ε²)/(1 − ε·cos γ): they crowd
// where the gap is narrow, so that a relative eccentricity of 0.95 is no harder than 0.1.
import { notValid, valid, type Answer } from "../answer.ts";
import { emptyBand, solveInPlace } from "./banded.ts";

export interface FilmRatios {
  /** US form: S = (μN/P)·(R/c)², N in turns per second, P on the projected area, c radial. */
  readonly sommerfeld: number;
  /** Angle between the load and the line of centres, rad. */
  readonly attitude: number;
  /** (R/c)·f on the journal. The broken film is counted as whole, as Raimondi & Boyd do: the drag is a little high. */
  readonly frictionVariable: number;
  /** Q/(R·c·N·L): the oil drawn in at the widest gap. */
  readonly flowVariable: number;
  /** The part of it that leaves at the two ends. */
  readonly sideFlowRatio: number;
  /** P/pmax. */
  readonly meanToPeakPressure: number;
  /** Where the pressure peaks at mid-length, rad from the widest gap. */
  readonly peakAngle: number;
  /** Where the film breaks at mid-length, rad from the widest gap. */
  readonly filmEndAngle: number;
}

/** How fine: intervals round the whole circle, and from mid-length to one end. */
export interface Grid {
  readonly around: number;
  readonly along: number;
}

/**
 * The film at a relative eccentricity (0.01 to 0.98) and a length over diameter (1/100 up; Infinity is the bearing
 * without ends). Second order in both steps; refuses what it doesn't converge for. Source: Reynolds 1886 as above,
 * derived here.
 */
export function solveReynolds(
  lengthOverDiameter: number,
  relativeEccentricity: number,
  grid: Grid = { around: 256, along: 32 },
): Answer<FilmRatios> {
  if (!(0.01 <= lengthOverDiameter))
    return notValid("a bearing needs a length");
  if (!(0.01 <= relativeEccentricity && relativeEccentricity <= 0.98))
    return notValid(
      "the film is solved for a relative eccentricity from 0.01 to 0.98",
    );
  const endless = lengthOverDiameter === Infinity;
  const axial = endless ? 0 : 1 / lengthOverDiameter ** 2;

  // from coarse to fine: each grid starts with the film's end of the one before, so few rounds are needed on the last
  let film: Film | undefined;
  for (let coarser = 8; 1 <= coarser; coarser /= 2) {
    const gap = gapOn(relativeEccentricity, Math.ceil(grid.around / coarser));
    const along = endless ? 1 : Math.max(2, Math.ceil(grid.along / coarser));
    film = settle(gap, along, axial, film);
    if (film === undefined)
      return notValid("the end of the film was not found");
  }
  return film === undefined
    ? notValid("the grid is empty")
    : valid(ratiosOf(film));
}

/** The gap at even steps of γ: at the points and, one half step on, between them. */
interface Gap {
  readonly eccentricity: number;
  readonly steps: number;
  readonly step: number;
  readonly height: Float64Array;
  readonly heightBetween: Float64Array;
  /** dθ/dγ at the points. */
  readonly stretch: Float64Array;
  /** H³/(dθ/dγ) between the points. */
  readonly conductance: Float64Array;
}

function gapOn(eccentricity: number, steps: number): Gap {
  const step = (2 * Math.PI) / steps;
  const root = Math.sqrt(1 - eccentricity ** 2);
  const slack = (gamma: number) => 1 - eccentricity * Math.cos(gamma);
  const values = (shift: number, f: (q: number) => number) =>
    Float64Array.from({ length: steps + 1 }, (_, i) =>
      f(slack((i + shift) * step)),
    );
  return {
    eccentricity,
    steps,
    step,
    height: values(0, (q) => root ** 2 / q),
    heightBetween: values(0.5, (q) => root ** 2 / q),
    stretch: values(0, (q) => root / q),
    conductance: values(0.5, (q) => root ** 5 / q ** 2),
  };
}

/** θ of γ, both from 0 to 2π. */
function angle(eccentricity: number, gamma: number): number {
  const half = Math.sqrt((1 - eccentricity) / (1 + eccentricity));
  // the widest gap is θ = 0: tan(θ/2) = √((1+ε)/(1−ε))·tan(γ/2), turned so that it never meets the pole at π
  return Math.PI - 2 * Math.atan(half / Math.tan(gamma / 2));
}

interface Film {
  readonly gap: Gap;
  readonly along: number;
  /** P at point i round and j along stands at i·along + j; row j = 0 is mid-length, the end itself is left out. */
  readonly pressure: Float64Array;
  /** The last point round with film, for each j. */
  readonly last: Int32Array;
}

/** The film on one grid: a set of points with film is sought until every point agrees with it. Undefined where none is found. */
function settle(
  gap: Gap,
  along: number,
  axial: number,
  before: Film | undefined,
): Film | undefined {
  const { steps } = gap;
  const faces = facesOf(gap, along, axial);
  const film = firstGuess(steps, along, before);
  const pressure = new Float64Array((steps + 1) * along);
  for (let round = 0; round < 80; round++) {
    if (!solveOn(film, faces, along, pressure)) return undefined;
    if (!revise(film, faces, steps, along, pressure))
      return { gap, along, pressure, last: lastOf(film, steps, along) };
  }
  return undefined;
}

/** 1 for each point that may have film, 0 elsewhere: up to where the film on the coarser grid ends; where there is none, six tenths round. */
function firstGuess(
  steps: number,
  along: number,
  before: Film | undefined,
): Uint8Array {
  const film = new Uint8Array((steps + 1) * along);
  for (let j = 0; j < along; j++) {
    const coarse =
      before &&
      Math.min(before.along - 1, Math.floor((j * before.along) / along));
    const end =
      before === undefined || coarse === undefined
        ? Math.ceil(0.6 * steps)
        : Math.ceil((at(before.last, coarse) * steps) / before.gap.steps);
    for (let i = 1; i <= Math.min(end, steps - 1); i++) film[i * along + j] = 1;
  }
  return film;
}

/** What passes between neighbouring points of a grid. */
interface Faces {
  /** Conductance from a point to the next one round. */
  readonly east: (i: number, j: number) => number;
  /** Conductance from a point to the next one along, towards the end. */
  readonly out: (i: number) => number;
  /** What the turning brings to a point beyond what it takes on. */
  readonly drawn: (i: number, j: number) => number;
}

function facesOf(gap: Gap, along: number, axial: number): Faces {
  const { step } = gap;
  const alongStep = 1 / along;
  const weight = weightOf(along);
  return {
    east: (i, j) => (at(gap.conductance, i) / step) * weight(j),
    out: (i) =>
      (at(gap.stretch, i) * at(gap.height, i) ** 3 * step * axial) / alongStep,
    drawn: (i, j) =>
      (at(gap.heightBetween, i - 1) - at(gap.heightBetween, i)) * weight(j),
  };
}

/** The width of the strip that a row stands for: of the row at mid-length half, as the other half is its mirror. */
function weightOf(along: number): (j: number) => number {
  const alongStep = 1 / along;
  return (j) => (j === 0 && along !== 1 ? alongStep / 2 : alongStep);
}

/** Writes the pressure that balances what flows at every point with film; nothing elsewhere. False where it can't be solved. */
function solveOn(
  film: Uint8Array,
  { east, out, drawn }: Faces,
  along: number,
  pressure: Float64Array,
): boolean {
  let end = 0;
  for (let k = film.length - 1; 0 < k && end === 0; k--)
    if (at(film, k) === 1) end = Math.floor(k / along);
  const matrix = emptyBand(end * along, along);
  const b = new Float64Array(end * along);
  const width = along + 1;
  for (let i = 1; i <= end; i++)
    for (let j = 0; j < along; j++) {
      const row = (i - 1) * along + j;
      if (at(film, i * along + j) === 0) {
        matrix.entries[row * width] = 1;
        continue;
      }
      const inner = j === 0 ? 0 : out(i);
      matrix.entries[row * width] =
        east(i - 1, j) + east(i, j) + inner + out(i);
      if (0 < j && at(film, i * along + j - 1) === 1)
        matrix.entries[row * width + 1] =
          (matrix.entries[row * width + 1] ?? 0) - inner;
      if (1 < i && at(film, (i - 1) * along + j) === 1)
        matrix.entries[row * width + along] =
          (matrix.entries[row * width + along] ?? 0) - east(i - 1, j);
      b[row] = drawn(i, j);
    }
  if (!solveInPlace(matrix, b)) return false;
  pressure.fill(0);
  pressure.set(b, along);
  return true;
}

/** Takes the film from points whose pressure is not above zero, and gives it to points that are lifted. Whether any point changed. */
function revise(
  film: Uint8Array,
  { east, out, drawn }: Faces,
  steps: number,
  along: number,
  pressure: Float64Array,
): boolean {
  let changed = false;
  for (let i = 1; i < steps; i++)
    for (let j = 0; j < along; j++) {
      const k = i * along + j;
      let stays: boolean;
      if (at(film, k) === 1) stays = 0 < at(pressure, k);
      else {
        // what flows in without a pressure here: more than is drawn away lifts a film
        const flows =
          drawn(i, j) +
          east(i - 1, j) * at(pressure, k - along) +
          east(i, j) * at(pressure, k + along) +
          (0 < j ? out(i) * at(pressure, k - 1) : 0) +
          (j < along - 1 ? out(i) * at(pressure, k + 1) : 0);
        stays = 0 < flows;
      }
      if (stays !== (at(film, k) === 1)) {
        film[k] = stays ? 1 : 0;
        changed = true;
      }
    }
  return changed;
}

function lastOf(film: Uint8Array, steps: number, along: number): Int32Array {
  const last = new Int32Array(along);
  for (let j = 0; j < along; j++)
    for (let i = 1; i < steps; i++)
      if (at(film, i * along + j) === 1) last[j] = i;
  return last;
}

function ratiosOf({ gap, along, pressure, last }: Film): FilmRatios {
  const { eccentricity, steps, step } = gap;
  const root = Math.sqrt(1 - eccentricity ** 2);
  const alongStep = 1 / along;
  const weight = weightOf(along);
  const p = (i: number, j: number) => at(pressure, i * along + j);

  let towardsCentre = 0;
  let across = 0;
  for (let i = 1; i < steps; i++) {
    const gamma = i * step;
    const area = at(gap.stretch, i) * step;
    const cosine =
      (Math.cos(gamma) - eccentricity) / (1 - eccentricity * Math.cos(gamma));
    const sine =
      (root * Math.sin(gamma)) / (1 - eccentricity * Math.cos(gamma));
    for (let j = 0; j < along; j++) {
      towardsCentre -= p(i, j) * cosine * area * weight(j);
      across += p(i, j) * sine * area * weight(j);
    }
  }
  const load = Math.hypot(towardsCentre, across);
  const sommerfeld = 1 / (6 * Math.PI * load);
  const attitude = Math.atan2(across, towardsCentre);

  // Flow round, in units of ωRcL/2: H − H³·∂P/∂θ, over the faces after the first point and after the film's last.
  const flow = (i: number, j: number) =>
    at(gap.heightBetween, i) -
    (at(gap.conductance, i) / step) * (p(i + 1, j) - p(i, j));
  let inwards = 0;
  let onwards = 0;
  for (let j = 0; j < along; j++) {
    inwards += flow(0, j) * weight(j);
    onwards += flow(at(last, j), j) * weight(j);
  }
  if (along !== 1) {
    // the half strip at the end, where P = 0 throughout
    inwards += (at(gap.heightBetween, 0) * alongStep) / 2;
    onwards += (at(gap.heightBetween, at(last, along - 1)) * alongStep) / 2;
  }

  let peak = 1;
  for (let i = 2; i < steps; i++) if (p(peak, 0) < p(i, 0)) peak = i;
  const [left, middle, right] = [p(peak - 1, 0), p(peak, 0), p(peak + 1, 0)];
  const bend = left - 2 * middle + right;
  const shift = bend < 0 ? (left - right) / (2 * bend) : 0;
  const highest = middle - ((left - right) * shift) / 4;

  // close to its end the pressure falls as the square of the distance
  const end = at(last, 0);
  const fall = Math.sqrt(p(end, 0) / p(end - 1, 0));
  const theta = (points: number) => angle(eccentricity, points * step);
  return {
    sommerfeld,
    attitude,
    frictionVariable:
      (2 * Math.PI ** 2 * sommerfeld) / root +
      (eccentricity / 2) * Math.sin(attitude),
    flowVariable: Math.PI * inwards,
    sideFlowRatio: along === 1 ? 0 : (inwards - onwards) / inwards,
    meanToPeakPressure: 1 / (12 * Math.PI * sommerfeld * highest),
    peakAngle: theta(peak + shift),
    filmEndAngle: (theta(end) - fall * theta(end - 1)) / (1 - fall),
  };
}

/** An element that exists: the loops above never leave the array. */
function at(
  array: Float64Array | Uint8Array | Int32Array,
  index: number,
): number {
  return array[index] ?? NaN;
}
