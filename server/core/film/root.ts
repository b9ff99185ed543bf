// Owns the search for the one root of a continuous function between two ends where its sign differs. Knows nothing of
// films.

/**
 * The root, to within `tolerance`, by Chandrupatla's method: inverse quadratic steps where three points lie well for
 * them, halving otherwise, so that it never leaves the interval and always ends. The ends are points where f has
 * opposite signs or is zero. Source: Chandrupatla, Advances in Engineering Software 28 (1997) 145 (from memory).
 */
export function rootBetween(
  f: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
): number {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  let [c, fc] = [a, fa];
  let part = 0.5;
  for (let round = 0; round < 200 && fb !== 0; round++) {
    const x = a + part * (b - a);
    const fx = f(x);
    // a is the newest point, b the other side of the root, c the one before
    if (fx < 0 === fa < 0) [c, fc] = [a, fa];
    else [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    if (fa === 0) return a;
    const least = tolerance / 2 / Math.abs(b - a);
    if (0.5 < least) return best;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    const quadratic = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
    const step = quadratic
      ? (fa / (fb - fa)) * (fc / (fb - fc)) +
        ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
      : 0.5;
    part = Math.min(1 - least, Math.max(least, step));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
