// Scales: values to places along a line, round steps for an axis, round factors for an exaggeration.

export interface Scale {
  (value: number): number;
  readonly low: number;
  readonly high: number;
}

/** A straight scale; one whose two values are equal puts all in the middle. */
export function scale(
  [low, high]: readonly [number, number],
  [from, to]: readonly [number, number],
): Scale {
  const place = (value: number): number =>
    high === low
      ? (from + to) / 2
      : from + ((value - low) / (high - low)) * (to - from);
  return Object.assign(place, { low, high });
}

/** The values from least to greatest, with room at both ends as a share of their span; one value alone gets `least` around it. */
export function spanOf(
  values: readonly number[],
  room: number,
  least: number,
): readonly [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const wide = Math.max(high - low, least);
  const middle = (low + high) / 2;
  const half = wide * (0.5 + room);
  return [middle - half, middle + half];
}

/** The largest of 1, 2 or 5 times a power of ten that is not above a value above zero. */
export function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const lead = value / power;
  return power * (lead < 2 ? 1 : lead < 5 ? 2 : 5);
}

/** Round values within a span, about so many, in any unit of `unit` metres. */
export function ticks(
  [low, high]: readonly [number, number],
  about: number,
  unit: number,
): { readonly values: readonly number[]; readonly step: number } {
  const wide = (high - low) / unit;
  if (!(0 < wide)) return { values: [], step: unit };
  const step = roundDown((wide / about) * 1.5);
  const first = Math.ceil(low / unit / step - 1e-9);
  const last = Math.floor(high / unit / step + 1e-9);
  return {
    values: Array.from(
      { length: Math.max(0, last - first + 1) },
      (_, index) => (first + index) * step * unit,
    ),
    step: step * unit,
  };
}
