// How far a prediction may miss: a standard deviation with its degrees of freedom, and what the normal distribution and
// Student's t make of it. It doesn't own where the deviation comes from.
import { notValid, valid, type Answer } from "../answer.ts";

export interface Spread {
  /** in the unit of what it is the spread of; above zero */
  readonly standardDeviation: number;
  /** Infinity: the deviation is known well, and the distribution is normal; few: Student's t */
  readonly degreesOfFreedom: number;
}

/**
 * The chance that a standardised deviation falls below z, by Student's t; the normal distribution where the degrees of
 * freedom are infinite. Refuses degrees of freedom not above zero and z that isn't a number (infinite z is one).
 * Range: any z; to about 1e-13 (normal), 1e-10 for some millions of degrees of freedom, above ten million taken as
 * normal. Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 7.1.2, 26.7.1, from memory.
 */
export function chanceBelow(
  z: number,
  degreesOfFreedom: number,
): Answer<number> {
  if (Number.isNaN(z)) return notValid("the deviation is not a number");
  if (!(0 < degreesOfFreedom))
    return notValid("a spread needs degrees of freedom above zero");
  return valid(below(z, degreesOfFreedom));
}

/**
 * The deviation, in standard deviations, that stays within ± it with the given chance (0.95: 1.96 for the normal,
 * 12.71 for one degree of freedom). Refuses a chance outside 0 to 0.9999 and degrees of freedom not above zero.
 * Source: as chanceBelow, solved by Newton's method.
 */
export function coverageFactor(
  chance: number,
  degreesOfFreedom: number,
): Answer<number> {
  if (!(0 < chance && chance <= 0.9999))
    return notValid("a coverage lies between 0 and 99.99 %");
  if (!(0 < degreesOfFreedom))
    return notValid("a spread needs degrees of freedom above zero");
  return valid(coverage(chance, degreesOfFreedom));
}

/** The chance between two standardised deviations, 0 to 1; taken from the nearer tail so that small chances stay exact. */
export function chanceBetween(
  low: number,
  high: number,
  degreesOfFreedom: number,
): number {
  if (!(low < high)) return 0;
  const chance =
    0 < low
      ? below(-low, degreesOfFreedom) - below(-high, degreesOfFreedom)
      : below(high, degreesOfFreedom) - below(low, degreesOfFreedom);
  return Math.min(1, Math.max(0, chance));
}

function below(z: number, degreesOfFreedom: number): number {
  const tail =
    1e7 < degreesOfFreedom
      ? normalTail(Math.abs(z))
      : studentTail(Math.abs(z), degreesOfFreedom);
  return z < 0 ? tail : 1 - tail;
}

function coverage(chance: number, degreesOfFreedom: number): number {
  const beyond = (1 - chance) / 2;
  let factor = startingFactor(chance, degreesOfFreedom);
  for (
    let round = 0, step = Infinity;
    1e-7 * factor < Math.abs(step) && round < 100;
    round++
  ) {
    step =
      (below(-factor, degreesOfFreedom) - beyond) /
      density(factor, degreesOfFreedom);
    factor += step;
  }
  return factor;
}

/**
 * Zero for the normal; for Student's t its expansion about the normal (Abramowitz & Stegun 26.7.5). Above zero the chance
 * is concave in the deviation, so from any start that is not far above the root Newton's method climbs to it and stays.
 */
function startingFactor(chance: number, nu: number): number {
  if (1e7 < nu) return 0;
  const z = chance === 0.95 ? 1.9599639845 : coverage(chance, Infinity);
  return nu < 1
    ? z
    : z +
        (z ** 3 + z) / (4 * nu) +
        (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * nu * nu);
}

function density(z: number, nu: number): number {
  if (1e7 < nu) return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return (
    studentFront(nu) * Math.exp((-(nu + 1) / 2) * Math.log1p((z * z) / nu))
  );
}

/** The density of Student's t at zero. */
function studentFront(nu: number): number {
  return (
    Math.exp(logGamma((nu + 1) / 2) - logGamma(nu / 2)) /
    Math.sqrt(nu * Math.PI)
  );
}

/** The chance beyond z ≥ 0 of the normal distribution. */
function normalTail(z: number): number {
  if (z === Infinity) return 0;
  const height = density(z, Infinity);
  if (z < 3) {
    // Φ(z) = ½ + φ(z)·(z + z³/3 + z⁵/(3·5) + …)
    let term = z;
    let sum = z;
    for (let n = 3; 1e-17 * sum < term; n += 2) {
      term *= (z * z) / n;
      sum += term;
    }
    return 0.5 - height * sum;
  }
  // the continued fraction φ(z)/(z + 1/(z + 2/(z + 3/(z + …)))), from its far end
  let fraction = z;
  for (let n = 120; 0 < n; n--) fraction = z + n / fraction;
  return height / fraction;
}

/** The chance beyond t ≥ 0 of Student's t: half the regularised incomplete beta function at ν/(ν + t²). */
function studentTail(t: number, nu: number): number {
  if (t === Infinity) return 0;
  if (t === 0) return 0.5;
  const x = nu / (nu + t * t);
  const rest = (t * t) / (nu + t * t);
  const front =
    studentFront(nu) *
    Math.sqrt(nu * rest) *
    Math.exp((nu / 2) * Math.log1p(-rest));
  // the continued fraction converges fast only below the mean, so the other side is used above it
  if (x < (nu / 2 + 1) / (nu / 2 + 2.5))
    return (front * betaFraction(x, nu / 2, 0.5)) / nu;
  return 0.5 * (1 - 2 * front * betaFraction(rest, 0.5, nu / 2));
}

/** The continued fraction of the incomplete beta function (Abramowitz & Stegun 26.5.8), by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const keep = (value: number): number =>
    Math.abs(value) < tiny ? tiny : value;
  let c = 1;
  let d = 1 / keep(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= 1000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / keep(1 + even * d);
    c = keep(1 + even / c);
    result *= d * c;
    d = 1 / keep(1 + odd * d);
    c = keep(1 + odd / c);
    result *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return result;
}

/** ln Γ(x) for x > 0: Stirling's series (Abramowitz & Stegun 6.1.41) after raising x above 10. */
function logGamma(x: number): number {
  let product = 1;
  let at = x;
  for (; at < 10; at++) product *= at;
  const square = 1 / (at * at);
  const series =
    (1 / 12 -
      square *
        (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188)))) /
    at;
  return (
    (at - 0.5) * Math.log(at) -
    at +
    0.5 * Math.log(2 * Math.PI) +
    series -
    Math.log(product)
  );
}
