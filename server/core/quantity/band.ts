// The low and the high end of a value that is known between limits. It owns no rule of how bands combine.

/** Both ends belong to it; `low` is never over `high`. A value known exactly has both ends equal. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** Both ends are numbers, and in order. */
export function isBand(band: Band): boolean {
  return (
    Number.isFinite(band.low) &&
    Number.isFinite(band.high) &&
    band.low <= band.high
  );
}

/** Halfway between the ends, in their unit. */
export function middle(band: Band): number {
  return (band.low + band.high) / 2;
}

/** From the middle to either end, in their unit. */
export function halfWidth(band: Band): number {
  return (band.high - band.low) / 2;
}
