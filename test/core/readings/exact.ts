// Mean and variance of doubles without any rounding: each double is a whole number of 2^-1074, so whole numbers do.
// Written apart from server/core, to check it.

/** A fraction of whole numbers, the lower one above zero. */
export interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

export function exactMean(values: readonly number[]): Fraction {
  const total = values.reduce(
    (sum, value) => sum + inSmallestDoubles(value),
    0n,
  );
  return { over: total, under: smallestDoubles * BigInt(values.length) };
}

/** Σ (x − mean)²/(n − 1) = (n·Σx² − (Σx)²)/(n·(n − 1)). */
export function exactVariance(values: readonly number[]): Fraction {
  const whole = values.map(inSmallestDoubles);
  const count = BigInt(whole.length);
  const sum = whole.reduce((a, b) => a + b, 0n);
  const squares = whole.reduce((a, b) => a + b * b, 0n);
  return {
    over: count * squares - sum * sum,
    under: count * (count - 1n) * smallestDoubles * smallestDoubles,
  };
}

/** The double nearest to a fraction, to within one unit in the last place. */
export function toNumber({ over, under }: Fraction): number {
  if (over === 0n) return 0;
  const sign = over < 0n ? -1 : 1;
  const size = over < 0n ? -over : over;
  // scaled so that the quotient has 60 to 61 bits, more than a double holds
  const shift = 60 + bits(under) - bits(size);
  const quotient =
    shift < 0
      ? size / (under << BigInt(-shift))
      : (size << BigInt(shift)) / under;
  // in two steps, since 2^shift alone may be beyond a double
  const half = Math.trunc(shift / 2);
  return sign * Number(quotient) * 2 ** -half * 2 ** -(shift - half);
}

const smallestDoubles = 1n << 1074n;

function inSmallestDoubles(value: number): bigint {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  const word = view.getBigUint64(0);
  const exponent = (word >> 52n) & 0x7ffn;
  const fraction = word & 0xfffffffffffffn;
  const size =
    exponent === 0n ? fraction : (fraction | (1n << 52n)) << (exponent - 1n);
  return word >> 63n === 1n ? -size : size;
}

function bits(value: bigint): number {
  return value.toString(2).length;
}
