// Which readings a person would look at twice: those far from what is expected, and by which factor if one would bring them near. It never
// changes a reading.
import { metresToTenths } from "../quantity/exact.ts";

/** Both ends in m. */
export interface Expected {
  readonly low: number;
  readonly high: number;
}

/** Farther off than this share of the size, or than so many widths of its limits, a person would look twice. Common practice, no source. */
const SHARE = 0.01;
const WIDTHS = 3;

/** The lengths, m, near enough to what is expected, m, to be taken as they are. Common practice, no source. */
export function bandOf({ low, high }: Expected): Expected {
  const reach = Math.max(SHARE * high, WIDTHS * (high - low));
  return { low: low - reach, high: high + reach };
}

/** Whether a length, m, is near enough, to a tenth of a nanometre; both ends of the band are. */
export function isExpected(metres: number, expected: Expected): boolean {
  const band = bandOf(expected);
  return (
    metresToTenths(band.low) <= metresToTenths(metres) &&
    metresToTenths(metres) <= metresToTenths(band.high)
  );
}

/** Factors that a slip makes: the other unit, a decimal mark that moved, thousandths or ten-thousandths for the whole. */
const FACTORS: readonly number[] = [
  25.4,
  1 / 25.4,
  10,
  1 / 10,
  100,
  1 / 100,
  1000,
  1 / 1000,
  10_000,
  1 / 10_000,
];

/** The factor by which a reading is too large (or, below 1, too small); undefined where it is expected, or no factor explains it. */
export function factorOf(
  metres: number,
  expected: Expected,
): number | undefined {
  if (isExpected(metres, expected)) return undefined;
  return FACTORS.find((factor) => isExpected(metres / factor, expected));
}
