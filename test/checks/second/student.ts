// Owns the second look at Student's t and at Grubbs' test, without either's usual road (the incomplete beta function; t turned into G).
//
// Student's t, by its angle. With ν degrees of freedom t = z/√(χ²/ν) is √ν times the cotangent of the angle φ between a direction drawn
// evenly in ν + 1 dimensions and one axis. So the share beyond t is the cap of half angle φ on that sphere over the whole sphere:
// ∫₀^φ sin^(ν−1) over ∫₀^π sin^(ν−1), which holds for fractional ν as an integral. It is integrated by tanh-sinh, solved by bisection.
//
// Grubbs' G, by the sphere. The residuals of n readings are a direction drawn evenly in n − 1 dimensions; reading i is the farthest by more
// than g where that direction lies within φ of axis ±i, with g = (n−1)/√n · cos φ (since s = r/√(n−1), and a residual's axis has
// length √((n−1)/n)). The 2n caps don't overlap while φ is under half the angle of two axes; then α is 2n caps over the sphere, exactly.

const steps = (() => {
  const h = 1 / 32;
  return Array.from({ length: 2 * 4 * 32 + 1 }, (_, index) => {
    const u = (index - 4 * 32) * h;
    const s = (Math.PI / 2) * Math.sinh(u);
    // Share of the way from the near end, held from the end that it is nearer to, so that no digit is lost there.
    const share = 1 / (1 + Math.exp(-2 * s));
    const weight = (h * (Math.PI / 2) * Math.cosh(u)) / (2 * Math.cosh(s) ** 2);
    return { share, weight };
  });
})();

/** ∫₀^φ sin^power, relative to about 1e-14, by tanh-sinh over pieces that a wide sphere's bulge needs. */
function capIntegral(phi: number, power: number): number {
  // The integrand bulges at π/2 with width 1/√power: pieces of ten widths back from the end, the rest in one.
  const width = 10 / Math.sqrt(power + 1);
  const pieces: (readonly [number, number])[] = [];
  let end = phi;
  for (let count = 0; count < 6 && width < end; count++) {
    pieces.push([end - width, end]);
    end -= width;
  }
  pieces.push([0, end]);
  const logTop = Math.log(Math.sin(phi));
  let sum = 0;
  for (const [from, to] of pieces)
    for (const { share, weight } of steps) {
      const angle = from + (to - from) * share;
      const log = Math.log(Math.sin(angle)) - logTop;
      if (Number.isFinite(log))
        sum += weight * (to - from) * Math.exp(power * log);
    }
  return sum * Math.exp(power * logTop);
}

/** Half angle of the cap that is `share` (up to a half) of a sphere whose caps grow as sin^power. */
function capAngle(share: number, power: number): number {
  const whole = 2 * capIntegral(Math.PI / 2, power);
  let [low, high] = [0, Math.PI / 2];
  for (let turn = 0; turn < 200; turn++) {
    const middle = (low + high) / 2;
    if (middle <= low || high <= middle) break;
    if (capIntegral(middle, power) / whole < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The t that a share `tail` (0 to ½) lies beyond. */
export function upperT(tail: number, dof: number): number {
  if (tail === 0.5) return 0;
  return Math.sqrt(dof) / Math.tan(capAngle(tail, dof - 1));
}

/** Critical G (two-sided) of n readings, and whether the caps are apart, so that it is exact and no bound. */
export function criticalG(
  count: number,
  alpha: number,
): { readonly value: number; readonly isExact: boolean } {
  // In the plane (n = 3) the sphere is a circle: power n − 3 = 0.
  const phi = capAngle(alpha / (2 * count), count - 3);
  // Two axes of different readings have the cosine ∓1/(n−1): the nearer pair is that of unlike signs, cosine 1/(n−1).
  const between = Math.acos(1 / (count - 1));
  return {
    value: ((count - 1) / Math.sqrt(count)) * Math.cos(phi),
    isExact: phi <= between / 2,
  };
}
