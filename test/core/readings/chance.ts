// Seeded random numbers for the Monte Carlo checks: the same run every time.
import { evenFrom } from "../../seeded.mjs";

export interface Chance {
  /** Uniform between −1 and 1. */
  readonly even: () => number;
  /** Normal, mean 0 and standard deviation 1. */
  readonly normal: () => number;
}

/** Even numbers as test/seeded.mjs has them, and Box and Muller for the normal. */
export function chance(seed: number): Chance {
  const unit = evenFrom(seed);
  return {
    even: () => 2 * unit() - 1,
    normal: () =>
      Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
  };
}

/** Standard deviation of `count` draws, by the plain sums: the spread is not small against the mean in these draws. */
export function spread(count: number, draw: () => number): number {
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < count; i++) {
    const value = draw();
    sum += value;
    squares += value * value;
  }
  return Math.sqrt((squares - (sum * sum) / count) / (count - 1));
}
