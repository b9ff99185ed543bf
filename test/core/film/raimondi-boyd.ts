// The full journal bearing as Raimondi and Boyd tabled it. Source: A. A. Raimondi and J. Boyd, "A solution for the
// finite journal bearing and its application to analysis and design", parts I to III, Trans. ASLE 1 (1958) 159–209,
// as textbooks reprint it (Shigley, ch. 12). Read in three open transcriptions of that table, which agree where they
// overlap; the paper itself was not at hand.

export interface PublishedFilm {
  readonly lengthOverDiameter: number;
  readonly relativeEccentricity: number;
  readonly sommerfeld: number;
  /** Degrees. */
  readonly attitude: number;
  readonly frictionVariable: number;
  readonly flowVariable: number;
  readonly sideFlowRatio: number;
  readonly meanToPeakPressure: number;
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
])[] = [
  [Infinity, 0.1, 0.24, 69.1, 4.8, 3.03, 0, 0.826],
  [Infinity, 0.2, 0.123, 67.26, 2.57, 2.83, 0, 0.814],
  [Infinity, 0.4, 0.0626, 61.94, 1.52, 2.26, 0, 0.764],
  [Infinity, 0.6, 0.0389, 54.31, 1.2, 1.56, 0, 0.667],
  [Infinity, 0.8, 0.021, 42.22, 0.961, 0.76, 0, 0.495],
  [Infinity, 0.9, 0.0115, 31.62, 0.756, 0.411, 0, 0.358],
  [1, 0.1, 1.33, 79.5, 26.4, 3.37, 0.15, 0.54],
  [1, 0.2, 0.631, 74.02, 12.8, 3.59, 0.28, 0.529],
  [1, 0.4, 0.264, 63.1, 5.79, 3.99, 0.497, 0.484],
  [1, 0.6, 0.121, 50.58, 3.22, 4.33, 0.68, 0.415],
  [1, 0.8, 0.0446, 36.24, 1.7, 4.62, 0.842, 0.313],
  [1, 0.9, 0.0188, 26.45, 1.05, 4.74, 0.919, 0.247],
  [0.5, 0.1, 4.31, 81.62, 85.6, 3.43, 0.173, 0.523],
  [0.5, 0.2, 2.03, 74.94, 40.9, 3.72, 0.318, 0.506],
  [0.5, 0.4, 0.779, 61.45, 17, 4.29, 0.552, 0.441],
  [0.5, 0.6, 0.319, 48.14, 8.1, 4.85, 0.73, 0.365],
  [0.5, 0.8, 0.0923, 33.31, 3.26, 5.41, 0.874, 0.267],
  [0.5, 0.9, 0.0313, 23.66, 1.6, 5.69, 0.939, 0.206],
  [0.25, 0.1, 16.2, 82.31, 322, 3.45, 0.18, 0.515],
  [0.25, 0.2, 7.57, 75.18, 153, 3.76, 0.33, 0.489],
  [0.25, 0.4, 2.83, 60.86, 61.1, 4.37, 0.567, 0.415],
  [0.25, 0.6, 1.07, 46.72, 26.7, 4.99, 0.746, 0.334],
  [0.25, 0.8, 0.261, 31.04, 8.8, 5.6, 0.884, 0.24],
  [0.25, 0.9, 0.0736, 21.85, 3.5, 5.91, 0.945, 0.18],
];

export const raimondiBoyd: readonly PublishedFilm[] = rows.map(
  ([
    lengthOverDiameter,
    relativeEccentricity,
    sommerfeld,
    attitude,
    frictionVariable,
    flowVariable,
    sideFlowRatio,
    meanToPeakPressure,
  ]) => ({
    lengthOverDiameter,
    relativeEccentricity,
    sommerfeld,
    attitude,
    frictionVariable,
    flowVariable,
    sideFlowRatio,
    meanToPeakPressure,
  }),
);
