// Two elastic rings, one pressed into the other, by finite elements along the radius: plane stress, linear elements, two
// Gauss points, thermal strain. It shares no formula with server/core/press and is there to check it. Second order in 1/count.

export interface Ring {
  readonly innerRadius: number;
  readonly outerRadius: number;
  readonly modulus: number;
  readonly poisson: number;
  /** Free thermal strain, α·ΔT. */
  readonly freeStrain: number;
}

export interface RingsAtRest {
  readonly pressure: number;
  /** Radial displacement of the inner ring's bore. */
  readonly boreMoves: number;
  readonly hoopAtBore: number;
  readonly hoopAtHole: number;
}

/** `interference` is radial: how far the inner ring stands over the outer one before they are put together, unheated. */
export function pressTogether(
  inner: Ring,
  outer: Ring,
  interference: number,
  count = 400,
): RingsAtRest {
  const nodes = 2 * count + 1;
  const diagonal = new Float64Array(nodes);
  const above = new Float64Array(nodes);
  const load = new Float64Array(nodes);
  let innerReaction = 0;
  let reactionStiffness: [number, number] = [0, 0];
  for (let e = 0; e < 2 * count; e++) {
    const ring = e < count ? inner : outer;
    const step = (ring.outerRadius - ring.innerRadius) / count;
    const start = ring.innerRadius + step * (e < count ? e : e - count);
    const { k, f } = element(ring, start, start + step);
    add(diagonal, e, k[0]);
    add(above, e, k[1]);
    add(diagonal, e + 1, k[2]);
    add(load, e, f[0]);
    add(load, e + 1, f[1]);
    if (e === count - 1) {
      reactionStiffness = [k[1], k[2]];
      innerReaction = -f[1];
    }
    if (e === count) {
      // the outer ring's inner node stands `interference` further out than the inner ring's outer node
      add(load, e, -(k[0] * interference));
      add(load, e + 1, -(k[1] * interference));
    }
  }
  const u = solve(diagonal, above, load);
  innerReaction +=
    reactionStiffness[0] * at(u, count - 1) +
    reactionStiffness[1] * at(u, count);
  const pressure = -innerReaction / inner.outerRadius;
  const hole = at(u, count) + interference;
  return {
    pressure,
    boreMoves: at(u, 0),
    hoopAtBore:
      inner.modulus * (at(u, 0) / inner.innerRadius - inner.freeStrain),
    hoopAtHole:
      outer.modulus * (hole / outer.innerRadius - outer.freeStrain) -
      outer.poisson * pressure,
  };
}

/** Stiffness (first, off-diagonal, last) and thermal load of one element, per radian and unit thickness. */
function element(ring: Ring, from: number, to: number) {
  const { modulus, poisson, freeStrain } = ring;
  const plane = modulus / (1 - poisson * poisson);
  const thermal = (modulus * freeStrain) / (1 - poisson);
  const length = to - from;
  const k: [number, number, number] = [0, 0, 0];
  const f: [number, number] = [0, 0];
  for (const side of [-1, 1]) {
    const s = (1 + side / Math.sqrt(3)) / 2;
    const r = from + s * length;
    const weight = (r * length) / 2;
    // radial strain is the slope of u, hoop strain is u/r
    const radial = [-1 / length, 1 / length] as const;
    const hoop = [(1 - s) / r, s / r] as const;
    const energy = (i: 0 | 1, j: 0 | 1) =>
      plane *
      (radial[i] * radial[j] +
        hoop[i] * hoop[j] +
        poisson * (radial[i] * hoop[j] + hoop[i] * radial[j]));
    k[0] += weight * energy(0, 0);
    k[1] += weight * energy(0, 1);
    k[2] += weight * energy(1, 1);
    f[0] += weight * thermal * (radial[0] + hoop[0]);
    f[1] += weight * thermal * (radial[1] + hoop[1]);
  }
  return { k, f };
}

function at(values: Float64Array, i: number): number {
  return values[i] ?? NaN;
}

function add(values: Float64Array, i: number, more: number): void {
  values[i] = at(values, i) + more;
}

/** A symmetric tridiagonal system by elimination. */
function solve(
  diagonal: Float64Array,
  above: Float64Array,
  load: Float64Array,
): Float64Array {
  const d = diagonal.slice();
  const x = load.slice();
  for (let i = 1; i < d.length; i++) {
    const factor = at(above, i - 1) / at(d, i - 1);
    add(d, i, -(factor * at(above, i - 1)));
    add(x, i, -(factor * at(x, i - 1)));
  }
  for (let i = d.length - 1; 0 <= i; i--) {
    const next = i + 1 < d.length ? at(above, i) * at(x, i + 1) : 0;
    x[i] = (at(x, i) - next) / at(d, i);
  }
  return x;
}
