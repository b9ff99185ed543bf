// The two limits of the bearing's length, by quadrature of the pressures that Reynolds' equation then gives in closed
// form. Shares no code and no constants with server/core/film.

export interface LimitFilm {
  readonly sommerfeld: number;
  /** rad */
  readonly attitude: number;
  readonly flowVariable: number;
  readonly sideFlowRatio: number;
  readonly meanToPeakPressure: number;
  /** rad from the widest gap */
  readonly filmEnd: number;
}

/**
 * The bearing without ends, under Reynolds' condition. dP/dθ = (H − Hb)/H³ (Sommerfeld 1904; P in units of
 * 6μω(R/c)²); the film begins at the widest gap and breaks at θb, H(θb) = Hb, where P is zero again: θb by halving,
 * the integrals by Simpson's rule.
 */
export function longBearing(eccentricity: number): LimitFilm {
  const gap = (theta: number) => 1 + eccentricity * Math.cos(theta);
  const slope = (theta: number, end: number) =>
    (gap(theta) - gap(end)) / gap(theta) ** 3;
  let [low, high] = [Math.PI, 2 * Math.PI];
  for (let round = 0; round < 50; round++) {
    const end = (low + high) / 2;
    // a film that breaks too soon has lost less than it had gained
    if (0 < simpson((theta) => slope(theta, end), 0, end)) low = end;
    else high = end;
  }
  const filmEnd = (low + high) / 2;
  // by parts, with P = 0 at both ends
  const towardsCentre = simpson(
    (theta) => Math.sin(theta) * slope(theta, filmEnd),
    0,
    filmEnd,
  );
  const across = simpson(
    (theta) => Math.cos(theta) * slope(theta, filmEnd),
    0,
    filmEnd,
  );
  // the gap is as wide at the peak as at the break, on the other side of the narrowest
  const peak = simpson(
    (theta) => slope(theta, filmEnd),
    0,
    2 * Math.PI - filmEnd,
  );
  const load = Math.hypot(towardsCentre, across);
  return {
    sommerfeld: 1 / (6 * Math.PI * load),
    attitude: Math.atan2(across, towardsCentre),
    flowVariable: Math.PI * gap(filmEnd),
    sideFlowRatio: 0,
    meanToPeakPressure: load / 2 / peak,
    filmEnd,
  };
}

/**
 * The short bearing (Ocvirk 1952): H³ P″ = (L/D)² dH/dθ along the bearing, so P = (L/D)²·(−dH/dθ)·(1 − ζ²)/(2H³) over
 * the narrowing half and no film over the widening one.
 */
export function shortBearing(
  lengthOverDiameter: number,
  eccentricity: number,
): LimitFilm {
  const gap = (theta: number) => 1 + eccentricity * Math.cos(theta);
  // mean along the bearing is 2/3 of the middle
  const middle = (theta: number) =>
    (lengthOverDiameter ** 2 * eccentricity * Math.sin(theta)) /
    (2 * gap(theta) ** 3);
  const towardsCentre =
    (-2 / 3) * simpson((theta) => middle(theta) * Math.cos(theta), 0, Math.PI);
  const across =
    (2 / 3) * simpson((theta) => middle(theta) * Math.sin(theta), 0, Math.PI);
  const load = Math.hypot(towardsCentre, across);
  let highest = 0;
  for (let k = 0; k <= 4000; k++)
    highest = Math.max(highest, middle((k * Math.PI) / 4000));
  return {
    sommerfeld: 1 / (6 * Math.PI * load),
    attitude: Math.atan2(across, towardsCentre),
    flowVariable: Math.PI * gap(0),
    sideFlowRatio: (gap(0) - gap(Math.PI)) / gap(0),
    meanToPeakPressure: load / 2 / highest,
    filmEnd: Math.PI,
  };
}

function simpson(f: (x: number) => number, from: number, to: number): number {
  const pairs = 1000;
  const step = (to - from) / (2 * pairs);
  let sum = f(from) + f(to);
  for (let k = 1; k < 2 * pairs; k++)
    sum += (k % 2 === 1 ? 4 : 2) * f(from + k * step);
  return (sum * step) / 3;
}
