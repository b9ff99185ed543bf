// Tables of a check, written as a flat list to keep them short: first and second of each pair in turn.

export function pairs(
  flat: readonly number[],
): readonly (readonly [number, number])[] {
  if (flat.length % 2 !== 0) throw new Error("a pair is incomplete");
  return Array.from({ length: flat.length / 2 }, (_, i) => [
    flat[2 * i] ?? NaN,
    flat[2 * i + 1] ?? NaN,
  ]);
}
