// A second look at the film: Reynolds' equation by finite volumes in Vogelpohl's variable v = p·h^(3/2), which is smooth where the
// pressure is sharp, on steps that are finer where the gap is narrow, by projected over-relaxation, at two grids, and Richardson's
// step from one to the other. The tool's own solver works on p; the checks of film.checks.ts use finite elements on p.
//
// All without units: angles round, lengths over R, gap h = 1 + ε·cos θ over c, pressure over μ·ω·(R/c)²:
//   ∂(h³ ∂p/∂θ)/∂θ + h³ ∂²p/∂z² = 6 ∂h/∂θ.

export interface Film {
  /** (μN/P)(R/c)² */
  readonly sommerfeld: number;
  /** rad */
  readonly attitude: number;
  /** (R/c)·f */
  readonly friction: number;
  /** Q/(RcNL) */
  readonly flow: number;
  readonly sideFlow: number;
  /** P/pmax */
  readonly meanToPeak: number;
}

/** Round the circle from the widest gap, with steps in proportion to h there: θ of a parameter t from 0 to 2π. */
function angles(eccentricity: number, count: number): number[] {
  // dθ/dt ∝ (1 + ε·cos θ) is solved by tan(θ/2) = √((1+ε)/(1−ε))·tan(t/2); half of ε is fine enough and keeps the wide gap fine too.
  const half = 0.55 * eccentricity;
  const stretch = Math.sqrt((1 + half) / (1 - half));
  return Array.from({ length: count + 1 }, (_, i) => {
    const t = (2 * Math.PI * i) / count;
    if (i === 0) return 0;
    if (i === count) return 2 * Math.PI;
    const angle = 2 * Math.atan2(stretch * Math.sin(t / 2), Math.cos(t / 2));
    return angle < 0 ? angle + 2 * Math.PI : angle;
  });
}

function solveOn(
  lengthOverDiameter: number,
  eccentricity: number,
  around: number,
  along: number,
): Film {
  const theta = angles(eccentricity, around);
  const at = (list: ArrayLike<number>, i: number) => list[i] ?? 0;
  const gap = (angle: number) => 1 + eccentricity * Math.cos(angle);
  const dz = lengthOverDiameter / along;
  const width = along + 1;
  const h = theta.map(gap);
  const root = h.map((one) => one ** 1.5);
  const v = new Float64Array((around + 1) * width);
  // Conductances of p between angles, at the gap half way; row 0 is mid-length (a mirror), row `along` the end, p = 0.
  const east = theta.map((angle, i) => {
    const next = at(theta, i + 1);
    return i === around ? 0 : gap((angle + next) / 2) ** 3 / (next - angle);
  });
  const cell = theta.map((_, i) =>
    i === 0 || i === around ? 0 : (at(theta, i + 1) - at(theta, i - 1)) / 2,
  );
  const drive = theta.map((_, i) =>
    i === 0 || i === around
      ? 0
      : 6 *
        (gap((at(theta, i) + at(theta, i + 1)) / 2) -
          gap((at(theta, i) + at(theta, i - 1)) / 2)),
  );
  const over = 2 / (1 + Math.sin(Math.PI / Math.max(around / 2, 2 * along)));
  for (let turn = 0; turn < 6000; turn++) {
    let moved = 0;
    let most = 1e-300;
    for (let i = 1; i < around; i++) {
      const e = at(east, i);
      const w = at(east, i - 1);
      const side = (at(h, i) ** 3 * at(cell, i)) / dz ** 2;
      const own = (e + w + 2 * side) / at(root, i);
      for (let j = 0; j < along; j++) {
        const k = i * width + j;
        const inner = at(v, j === 0 ? k + 1 : k - 1);
        const sum =
          (e * at(v, k + width)) / at(root, i + 1) +
          (w * at(v, k - width)) / at(root, i - 1) +
          (side * (inner + at(v, k + 1))) / at(root, i) -
          at(drive, i);
        const old = at(v, k);
        const next = Math.max(0, old + over * (sum / own - old));
        v[k] = next;
        moved = Math.max(moved, Math.abs(next - old));
        most = Math.max(most, next);
      }
    }
    if (moved < 1e-8 * most) break;
  }
  const p = (i: number, j: number) => at(v, i * width + j) / at(root, i);
  // Trapezoids along, over the half length.
  const alongSum = (i: number) => {
    let sum = p(i, 0) / 2;
    for (let j = 1; j < along; j++) sum += p(i, j);
    return sum * dz;
  };
  let radial = 0;
  let across = 0;
  let pressureDrag = 0;
  let leak = 0;
  let peak = 0;
  for (let i = 0; i < around; i++) {
    const here = alongSum(i);
    radial += -here * Math.cos(at(theta, i)) * at(cell, i);
    across += here * Math.sin(at(theta, i)) * at(cell, i);
    const next = alongSum(i + 1);
    pressureDrag +=
      (gap((at(theta, i) + at(theta, i + 1)) / 2) / 2) * (next - here);
    // One-sided slope of second order at the end.
    const slope = (4 * p(i, along - 1) - p(i, along - 2)) / (2 * dz);
    leak += (at(h, i) ** 3 / 12) * slope * at(cell, i);
    peak = Math.max(peak, p(i, 0));
  }
  // Both halves: twice. Load over μωR²(R/c)².
  const load = 2 * Math.hypot(radial, across);
  const length = 2 * lengthOverDiameter;
  const mean = load / (2 * length);
  // ∫ dθ/h in closed form, the film counted as whole.
  const shear = (2 * Math.PI * length) / Math.sqrt(1 - eccentricity ** 2);
  const d1 = at(theta, 1);
  const d2 = at(theta, 2);
  const startSlope =
    (alongSum(1) * d2 ** 2 - alongSum(2) * d1 ** 2) / (d1 * d2 * (d2 - d1));
  // Over ω·R²·c: half the gap's speed along the length, less what pressure holds back.
  const drawn = (at(h, 0) * length) / 2 - 2 * (at(h, 0) ** 3 / 12) * startSlope;
  return {
    // P = μω(R/c)²·mean, so μN/P·(R/c)² = 1/(2π·mean).
    sommerfeld: 1 / (2 * Math.PI * mean),
    attitude: Math.atan2(across, radial),
    friction: (shear + 2 * pressureDrag) / load,
    // N = ω/2π.
    flow: (2 * Math.PI * drawn) / length,
    sideFlow: (2 * leak) / drawn,
    meanToPeak: mean / peak,
  };
}

const kept = new Map<string, Film>();

/** The film by two grids and Richardson's step, for errors that fall with the square of the step. */
export function film(lengthOverDiameter: number, eccentricity: number): Film {
  const key = `${String(lengthOverDiameter)} ${String(eccentricity)}`;
  const found = kept.get(key);
  if (found !== undefined) return found;
  const coarse = solveOn(lengthOverDiameter, eccentricity, 60, 12);
  const fine = solveOn(lengthOverDiameter, eccentricity, 120, 24);
  const step = (of: keyof Film) => fine[of] + (fine[of] - coarse[of]) / 3;
  const answer: Film = {
    sommerfeld: step("sommerfeld"),
    attitude: step("attitude"),
    friction: step("friction"),
    flow: step("flow"),
    sideFlow: step("sideFlow"),
    meanToPeak: step("meanToPeak"),
  };
  kept.set(key, answer);
  return answer;
}
