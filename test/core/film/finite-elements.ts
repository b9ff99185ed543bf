// A small solver of the same film by another way: bilinear finite elements on even steps of the real angle, Gauss
// points, and Gauss–Seidel with over-relaxation that clips at zero; two meshes and Richardson's extrapolation. Shares
// no code with server/core/film.

export interface ElementFilm {
  readonly sommerfeld: number;
  /** rad */
  readonly attitude: number;
  readonly flowVariable: number;
  readonly meanToPeakPressure: number;
}

/** The film of a bearing, from meshes of `around` by `along` elements (mid-length to the end) and of twice as many. */
export function elementFilm(
  lengthOverDiameter: number,
  eccentricity: number,
  around = 48,
  along = 6,
): ElementFilm {
  const coarse = onMesh(lengthOverDiameter, eccentricity, around, along);
  const fine = onMesh(lengthOverDiameter, eccentricity, 2 * around, 2 * along);
  const better = (key: keyof ElementFilm) =>
    fine[key] + (fine[key] - coarse[key]) / 3;
  return {
    sommerfeld: better("sommerfeld"),
    attitude: better("attitude"),
    flowVariable: better("flowVariable"),
    meanToPeakPressure: better("meanToPeakPressure"),
  };
}

function onMesh(
  lengthOverDiameter: number,
  eccentricity: number,
  around: number,
  along: number,
): ElementFilm {
  const columns = along + 1;
  const node = (i: number, j: number) => i * columns + j;
  const count = (around + 1) * columns;
  const [width, height] = [(2 * Math.PI) / around, 1 / along];
  const gap = (theta: number) => 1 + eccentricity * Math.cos(theta);

  // stiffness by node and neighbour (three by three), and the oil that the wedge drags in
  const stiffness = new Float64Array(count * 9);
  const drag = new Float64Array(count);
  const towardsCentre = new Float64Array(count);
  const across = new Float64Array(count);
  const point = 1 / Math.sqrt(3);
  for (let i = 0; i < around; i++)
    for (let j = 0; j < along; j++)
      for (const s of [-point, point])
        for (const t of [-point, point]) {
          const theta = (i + (1 + s) / 2) * width;
          const area = (width * height) / 4;
          for (let a = 0; a < 4; a++) {
            const [ai, aj] = [a % 2, a >> 1];
            const A = shape(ai, aj, s, t, width, height);
            const from = node(i + ai, j + aj);
            add(drag, from, A.value * eccentricity * Math.sin(theta) * area);
            add(towardsCentre, from, -A.value * Math.cos(theta) * area);
            add(across, from, A.value * Math.sin(theta) * area);
            for (let b = 0; b < 4; b++) {
              const [bi, bj] = [b % 2, b >> 1];
              const B = shape(bi, bj, s, t, width, height);
              const energy =
                A.round * B.round +
                (A.along * B.along) / lengthOverDiameter ** 2;
              const neighbour = (bi - ai + 1) * 3 + (bj - aj + 1);
              add(
                stiffness,
                from * 9 + neighbour,
                gap(theta) ** 3 * energy * area,
              );
            }
          }
        }

  const pressure = new Float64Array(count);
  const others = (i: number, j: number) => {
    let sum = 0;
    for (let di = -1; di <= 1; di++)
      for (let dj = -1; dj <= 1; dj++) {
        const [ni, nj] = [i + di, j + dj];
        if ((di === 0 && dj === 0) || ni < 0 || around < ni) continue;
        if (nj < 0 || along < nj) continue;
        const weight = at(stiffness, node(i, j) * 9 + (di + 1) * 3 + (dj + 1));
        sum += weight * at(pressure, node(ni, nj));
      }
    return sum;
  };
  const relax = 1.8;
  for (let sweep = 0; sweep < 3000; sweep++) {
    let moved = 0;
    let highest = 0;
    // P is zero at the widest gap and at the end; at mid-length nothing holds it
    for (let i = 1; i < around; i++)
      for (let j = 0; j < along; j++) {
        const k = node(i, j);
        const before = at(pressure, k);
        const wanted = (at(drag, k) - others(i, j)) / at(stiffness, k * 9 + 4);
        const now = Math.max(0, before + relax * (wanted - before));
        pressure[k] = now;
        moved = Math.max(moved, Math.abs(now - before));
        highest = Math.max(highest, now);
      }
    if (moved < 1e-9 * highest) break;
  }

  let [x, y] = [0, 0];
  for (let k = 0; k < count; k++) {
    x += at(pressure, k) * at(towardsCentre, k);
    y += at(pressure, k) * at(across, k);
  }
  const load = Math.hypot(x, y);
  // the reaction at the widest gap is the pressure's part of the flow there
  let held = 0;
  for (let j = 0; j <= along; j++) held += others(0, j) - at(drag, node(0, j));
  // a parabola through the three highest nodes at mid-length
  let peak = 1;
  for (let i = 1; i < around; i++)
    if (at(pressure, node(peak, 0)) < at(pressure, node(i, 0))) peak = i;
  const left = at(pressure, node(peak - 1, 0));
  const middle = at(pressure, node(peak, 0));
  const right = at(pressure, node(peak + 1, 0));
  const highest =
    middle - (left - right) ** 2 / (8 * (left - 2 * middle + right));
  return {
    sommerfeld: 1 / (6 * Math.PI * load),
    attitude: Math.atan2(y, x),
    flowVariable: Math.PI * (1 + eccentricity + held),
    meanToPeakPressure: load / 2 / highest,
  };
}

/** A bilinear shape function of the corner (0 or 1, 0 or 1) and its slopes, at s and t from −1 to 1. */
function shape(
  ai: number,
  aj: number,
  s: number,
  t: number,
  width: number,
  height: number,
): { readonly value: number; readonly round: number; readonly along: number } {
  const [ss, tt] = [2 * ai - 1, 2 * aj - 1];
  const [u, v] = [(1 + ss * s) / 2, (1 + tt * t) / 2];
  return { value: u * v, round: (ss * v) / width, along: (u * tt) / height };
}

function add(array: Float64Array, index: number, value: number): void {
  array[index] = at(array, index) + value;
}

function at(array: Float64Array, index: number): number {
  return array[index] ?? NaN;
}
