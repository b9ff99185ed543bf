// Rows of the table that defines an oil's viscosity index: those that the middles of the shipped grades lie on or between.
// Source: ASTM D2270-10 (2016), table 1, as an open library of fluid properties has it (seen); its example in 5.1.4 gives 92.

/** At 100 °C, then at 40 °C the oil of index 0 and of index 100, cSt. */
const rows: readonly (readonly [number, number, number])[] = [
  [2.6, 12.21, 9.647],
  [2.7, 13, 10.25],
  [3.4, 19.12, 14.93],
  [4.3, 29.07, 22.05],
  [5.4, 47.31, 32.37],
  [5.5, 49.09, 33.34],
  [6.8, 73.48, 46.44],
  [8.1, 102.3, 60.74],
  [8.7, 116.2, 67.64],
  [8.8, 118.5, 68.79],
  [8.9, 120.9, 69.94],
  [9, 123.3, 71.1],
  [10.9, 171.2, 93.92],
  [11.2, 179.4, 97.71],
  [12.2, 207.8, 110.7],
  [12.3, 210.7, 112],
  [14.4, 276.3, 141],
  [14.7, 286.4, 145.3],
  [16, 331.9, 164.6],
  [19, 449.9, 212.7],
  [19.1, 454.2, 214.4],
  [21.2, 547.5, 250.7],
  [21.4, 556.7, 254.2],
  [24, 683.9, 301.8],
  [28.2, 915.8, 384.6],
  [28.4, 927.6, 388.8],
  [30.5, 1055, 432.4],
  [36.5, 1464, 567.1],
  [37, 1501, 579.3],
];

/** The viscosity index of an oil of these viscosities (cSt), by procedure A below 100 and B above. */
export function viscosityIndex(at40: number, at100: number): number {
  const above = rows.findIndex(([warm]) => at100 <= warm + 1e-9);
  const upper = rows[above];
  const lower = rows[above - 1] ?? upper;
  if (upper === undefined || lower === undefined)
    throw new Error(`no row for ${at100} cSt`);
  const span = upper[0] - lower[0];
  const share = span === 0 ? 1 : (at100 - lower[0]) / span;
  const between = (at: 1 | 2) => lower[at] + share * (upper[at] - lower[at]);
  const [zero, hundred] = [between(1), between(2)];
  if (at40 > hundred) return (100 * (zero - at40)) / (zero - hundred);
  const power = Math.log(hundred / at40) / Math.log(at100);
  return 100 + (10 ** power - 1) / 0.00715;
}
