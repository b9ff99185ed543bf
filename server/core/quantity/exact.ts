// Numbers as they are written, without loss: a length is a whole number of tenths of a nanometre, so that an inch size and its metric
// equal are one number. What a number means is the caller's.

/** A written number as a fraction of two whole numbers, and how fine it was written. */
export interface Written {
  readonly numerator: bigint;
  readonly denominator: bigint;
  /** How many decimals were written: 4 for `0.8740`; undefined for a fraction such as 7/8. */
  readonly decimals: number | undefined;
}

const DECIMAL = /^([+\u{2212}-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d+))?$/u;
const FRACTION = /^([+\u{2212}-]?)(?:(\d+)[ -]+)?(\d+)\/(\d+)$/u;
const MOST_EXPONENT = 40;

/** Reads `0.8748`, `.8748`, `7/8`, `1 3/16`, `1-3/16`, `-0.0002`, `14.5e6`; undefined for anything else, or a fraction over 0. */
export function readNumber(text: string): Written | undefined {
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [, sign = "", whole = "0", over = "0", under = "1"] = fraction;
    const denominator = BigInt(under);
    if (denominator === 0n) return undefined;
    return {
      numerator: signed(sign, BigInt(whole) * denominator + BigInt(over)),
      denominator,
      decimals: undefined,
    };
  }
  const decimal = DECIMAL.exec(text);
  if (decimal === null) return undefined;
  const [, sign = "", whole = "", part = "", exponentText = "0"] = decimal;
  if (whole === "" && part === "") return undefined;
  const exponent = Number(exponentText);
  if (MOST_EXPONENT < Math.abs(exponent) || 400 < whole.length + part.length)
    return undefined;
  const shift = exponent - part.length;
  const digits = signed(sign, BigInt(whole + part));
  return {
    numerator: 0 < shift ? digits * 10n ** BigInt(shift) : digits,
    denominator: shift < 0 ? 10n ** BigInt(-shift) : 1n,
    decimals: Math.max(0, part.length - exponent),
  };
}

function signed(sign: string, value: bigint): bigint {
  return sign === "-" || sign === "\u{2212}" ? -value : value;
}

/** The nearest double. */
export function toNumber(written: Written): number {
  // within 2^53 both are exact, and one division rounds once
  const { numerator, denominator } = written;
  const most = BigInt(Number.MAX_SAFE_INTEGER);
  if (-most < numerator && numerator < most && denominator < most)
    return Number(numerator) / Number(denominator) + 0;
  // A quotient of 64 bits or more, its last bit set where something is left over, rounds to a double as the fraction itself does.
  const spare = 64 + bits(denominator) - bits(numerator);
  const [over, under] =
    0 <= spare
      ? [numerator << BigInt(spare), denominator]
      : [numerator, denominator << BigInt(-spare)];
  const left = over % under === 0n ? 0n : over < 0n ? -1n : 1n;
  return Number(2n * (over / under) + left) * 2 ** (-spare - 1);
}

function bits(value: bigint): number {
  return (value < 0n ? -value : value).toString(2).length;
}

/** A written number of units, each of so many tenths of a nanometre, as whole tenths; halves go away from zero. */
export function toTenths(written: Written, perUnit: bigint): number {
  const twice = 2n * written.numerator * perUnit;
  const under = 2n * written.denominator;
  const half =
    written.numerator < 0n ? -written.denominator : written.denominator;
  return Number((twice + half) / under) + 0;
}

/** Whole tenths of a nanometre in metres: the nearest double. */
export function tenthsToMetres(tenths: number): number {
  return tenths / 1e10 + 0;
}

/** Metres rounded to whole tenths of a nanometre: what verdicts compare. */
export function metresToTenths(metres: number): number {
  return Math.round(metres * 1e10) + 0;
}
