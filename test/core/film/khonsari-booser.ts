// Some rows of the full journal bearing (Reynolds' condition, film from the widest gap) of M. M. Khonsari and E. R.
// Booser, "Applied Tribology: Bearing Design and Lubrication", table 8.6, read as transcribed in an open data set
// (the book was not at hand).

export interface KhonsariBooser {
  readonly lengthOverDiameter: number;
  readonly relativeEccentricity: number;
  readonly sommerfeld: number;
  /** Flow that leaves at the ends, over πRcNL. */
  readonly leakage: number;
  /** Flow drawn in, over πRcNL. */
  readonly inflow: number;
  readonly frictionVariable: number;
  /** pmax over μN(R/c)². */
  readonly peak: number;
  /** Degrees from the widest gap, both on the table's steps of 3°. */
  readonly peakAngle: number;
  readonly filmEnd: number;
  /** Degrees. */
  readonly attitude: number;
}

const rows: readonly (readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
])[] = [
  [2, 0.1, 0.5588, 0.1088, 1.0388, 11.1382, 3.1471, 108, 75.17, 231],
  [2, 0.3, 0.1733, 0.3108, 1.0772, 3.7285, 10.5356, 126, 66.85, 225],
  [2, 0.5, 0.0894, 0.4951, 1.0692, 2.2523, 22.2276, 141, 57.86, 216],
  [2, 0.7, 0.0464, 0.6657, 1.0241, 1.5403, 50.0931, 153, 46.78, 204],
  [2, 0.9, 0.0145, 0.8249, 0.9549, 0.8769, 238.3869, 168, 29.09, 192],
  [1.5, 0.2, 0.3667, 0.2607, 1.1001, 7.4864, 4.9953, 117, 72.3, 222],
  [1.5, 0.6, 0.0807, 0.736, 1.1936, 2.2301, 27.7369, 147, 51.98, 207],
  [0.75, 0.1, 2.112, 0.1753, 1.0836, 41.9534, 0.8905, 105, 80.66, 207],
  [0.75, 0.3, 0.6066, 0.523, 1.2447, 12.6954, 3.339, 126, 68.47, 204],
  [0.75, 0.5, 0.2663, 0.8681, 1.3979, 6.2802, 8.7127, 141, 55.94, 201],
  [0.75, 0.7, 0.1068, 1.2126, 1.5428, 3.1906, 26.7257, 156, 42.42, 198],
  [0.75, 0.9, 0.0223, 1.5592, 1.6785, 1.2019, 194.9739, 168, 25.13, 192],
  [0.25, 0.1, 16.2271, 0.1968, 1.0979, 321.9788, 0.1196, 105, 82.46, 189],
  [0.25, 0.5, 1.7913, 0.984, 1.4894, 41.0352, 1.4829, 144, 54.05, 189],
  [0.25, 0.95, 0.0228, 1.8708, 1.9293, 1.571, 324.2043, 171, 15.55, 186],
  [0.125, 0.3, 17.5694, 0.5975, 1.2984, 363.6929, 0.1269, 129, 68.22, 186],
  [0.125, 0.7, 2.175, 1.3943, 1.6963, 60.3371, 1.6862, 156, 38.89, 186],
];

export const khonsariBooser: readonly KhonsariBooser[] = rows.map(
  ([
    lengthOverDiameter,
    relativeEccentricity,
    sommerfeld,
    leakage,
    inflow,
    frictionVariable,
    peak,
    peakAngle,
    attitude,
    filmEnd,
  ]) => ({
    lengthOverDiameter,
    relativeEccentricity,
    sommerfeld,
    leakage,
    inflow,
    frictionVariable,
    peak,
    peakAngle,
    filmEnd,
    attitude,
  }),
);
