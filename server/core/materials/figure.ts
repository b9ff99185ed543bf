// The form of a shipped figure, and the units that the tables are written in. It owns no figure.

/** A figure in SI with the range that it is met in, ends included, and where it was read. */
export interface Figure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

export const GPa = 1e9;
export const MPa = 1e6;
export const perMK = 1e-6;
export const psi = 4.4482216152605 / 0.0254 ** 2;
export const ftPerMin = 0.3048 / 60;
export const cSt = 1e-6;

/** Value, low and high of a figure as its source writes them, in `unit`. */
export function figure(
  unit: number,
  value: number,
  low: number,
  high: number,
  source: string,
): Figure {
  return { value: value * unit, low: low * unit, high: high * unit, source };
}
