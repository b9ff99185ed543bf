// Owns the second hand for ISO 286: standard tolerances and fundamental deviations computed from the system's formulas, with no number
// taken from the shipped tables but where a formula names one (IT7 in u = IT7 + D). It rounds nothing: the standard's own rounding
// is a table of steps and then a choice, so the tests ask that a tabulated value lies within one step, or is named here.
//
// Sources: formulas of the deviations to 500 mm as printed in Machine Drawing, Table 15.4, p. 222 (see printed-iso.ts); tolerance units
// i and I, the factors of the grades, the formulas over 500 mm and the rounding steps from memory of ISO 286-1:1988, annex A.

/** Nominal size in the formulas: the geometric mean of a step's ends; the first step begins at 1 mm. */
export function meanSize(steps: readonly number[], step: number): number {
  return Math.sqrt((steps[step - 1] ?? 1) * (steps[step] ?? NaN));
}

const factors = new Map([
  [5, 7],
  [6, 10],
  [7, 16],
  [8, 25],
  [9, 40],
  [10, 64],
  [11, 100],
  [12, 160],
  [13, 250],
  [14, 400],
  [15, 640],
  [16, 1000],
  [17, 1600],
  [18, 2500],
]);
const fineFactorsOver500 = new Map([
  [1, 2],
  [2, 2.7],
  [3, 3.7],
  [4, 5],
]);

/** A standard tolerance in µm from the mean size D in mm; IT2 to IT4 to 500 mm lie in geometric steps between IT1 and IT5. */
export function toleranceByRule(grade: number | "01", d: number): number {
  const over500 = 500 < d;
  const unit = over500 ? 0.004 * d + 2.1 : 0.45 * Math.cbrt(d) + 0.001 * d;
  if (grade === "01") return 0.3 + 0.008 * d;
  if (grade === 0) return 0.5 + 0.012 * d;
  const factor =
    factors.get(grade) ?? (over500 ? fineFactorsOver500.get(grade) : undefined);
  if (factor !== undefined) return factor * unit;
  const first = 0.8 + 0.02 * d;
  return first * ((7 * unit) / first) ** ((grade - 1) / 4);
}

/** What a formula may ask of the tables: IT of a grade, and the value of another letter, at the same step, in µm. */
export interface Tabulated {
  readonly it: (grade: number) => number;
  readonly letter: (letters: string) => number;
}

type Rule = (d: number, upTo: number, table: Tabulated) => number;

const mean = (a: number, b: number): number => Math.sqrt(a * b);

/** Distance of a shaft's fundamental deviation from the nominal size in µm. j has no formula; h and js need none. */
export const deviationRules: ReadonlyMap<string, Rule> = new Map<string, Rule>([
  ["a", (d) => (d <= 120 ? 265 + 1.3 * d : 3.5 * d)],
  ["b", (d) => (d <= 160 ? 140 + 0.85 * d : 1.8 * d)],
  ["c", (d) => (d <= 40 ? 52 * d ** 0.2 : 95 + 0.8 * d)],
  ["cd", (_, __, { letter }) => mean(letter("c"), letter("d"))],
  ["d", (d) => 16 * d ** 0.44],
  ["e", (d) => 11 * d ** 0.41],
  ["ef", (_, __, { letter }) => mean(letter("e"), letter("f"))],
  ["f", (d) => 5.5 * d ** 0.41],
  ["fg", (_, __, { letter }) => mean(letter("f"), letter("g"))],
  ["g", (d) => 2.5 * d ** 0.34],
  ["k", (d, upTo) => (upTo <= 500 ? 0.6 * Math.cbrt(d) : 0)],
  ["m", (d, upTo, { it }) => (upTo <= 500 ? it(7) - it(6) : 0.024 * d + 12.6)],
  ["n", (d, upTo) => (upTo <= 500 ? 5 * d ** 0.34 : 0.04 * d + 21)],
  // p is IT7 and 0 to 5 µm, s to 50 mm IT8 and 1 to 4: the middle of that, with the half as a step
  ["p", (d, upTo, { it }) => (upTo <= 500 ? it(7) + 2.5 : 0.072 * d + 37.8)],
  ["r", (_, __, { letter }) => mean(letter("p"), letter("s"))],
  ["s", (d, upTo, { it }) => (upTo <= 50 ? it(8) + 2.5 : it(7) + 0.4 * d)],
  ["t", (d, _, { it }) => it(7) + 0.63 * d],
  ["u", (d, _, { it }) => it(7) + d],
  ["v", (d, _, { it }) => it(7) + 1.25 * d],
  ["x", (d, _, { it }) => it(7) + 1.6 * d],
  ["y", (d, _, { it }) => it(7) + 2 * d],
  ["z", (d, _, { it }) => it(7) + 2.5 * d],
  ["za", (d, _, { it }) => it(8) + 3.15 * d],
  ["zb", (d, _, { it }) => it(9) + 4 * d],
  ["zc", (d, _, { it }) => it(10) + 5 * d],
]);

/** The rounding step in µm for a computed value of a letter (from memory). */
export function roundingStep(
  letters: string,
  upTo: number,
  value: number,
): number {
  if (upTo <= 500 && letters === "p") return 2.5;
  if (upTo <= 50 && letters === "s") return 2.5;
  const steps = letters < "h" ? stepsLoose : stepsTight;
  return steps.find(([to]) => value <= to)?.[1] ?? NaN;
}

const stepsLoose = [
  [45, 1],
  [60, 2],
  [100, 5],
  [500, 10],
  [1000, 20],
  [Infinity, 50],
] as const;
const stepsTight = [
  [100, 1],
  [300, 2],
  [600, 5],
  [800, 10],
  [1000, 20],
  [2000, 50],
  [Infinity, 100],
] as const;

/** The rounding step of a standard tolerance of IT5 to IT11 (from memory). */
export function toleranceStep(upTo: number, value: number): number {
  const steps = upTo <= 500 ? tolerancesTo500 : tolerancesOver500;
  return steps.find(([to]) => value <= to)?.[1] ?? NaN;
}

const tolerancesTo500 = [
  [100, 1],
  [200, 5],
  [500, 10],
] as const;
const tolerancesOver500 = [
  [60, 1],
  [100, 2],
  [200, 5],
  [500, 10],
  [1000, 20],
  [2000, 50],
] as const;
