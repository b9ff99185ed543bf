// The form of a shipped figure, and the units that the tables are written in. It owns no figure.
import { sizeOf } from "../quantity/units.ts";

/** A figure in SI with the range that it is met in, ends included, and where it was read. */
export interface Figure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

export const GPa = sizeOf("GPa");
export const MPa = sizeOf("MPa");
export const perMK = sizeOf("um/m-K");
export const psi = sizeOf("psi");
export const ftPerMin = sizeOf("ft/min");
export const cSt = sizeOf("cSt");

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
