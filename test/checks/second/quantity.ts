// Owns the second look at quantities: numbers as written, units, Student's t; in fractions of whole numbers, or by second/student.ts.
import {
  metresToTenths,
  readNumber,
  tenthsToMetres,
  toNumber,
  toTenths,
} from "../../../server/core/quantity/exact.ts";
import { studentQuantile } from "../../../server/core/quantity/student.ts";
import {
  fromSi,
  toSi,
  UNITS,
  unitOf,
} from "../../../server/core/quantity/units.ts";
import { chance } from "../../core/readings/chance.ts";
import type { Side } from "./sides.ts";
import { upperT } from "./student.ts";

interface Ratio {
  readonly over: bigint;
  readonly under: bigint;
}

/**
 * The double nearest to a fraction, ties to even, by looking: the quotient's own neighbours are weighed against it in whole numbers. Not for
 * numbers so small or large that a double has fewer digits there.
 */
export function nearestDouble({ over, under }: Ratio): number {
  if (over === 0n) return 0;
  const sign = over < 0n ? -1 : 1;
  const size = over < 0n ? -over : over;
  // 2^exponent ≤ size/under < 2^(exponent + 1)
  let exponent = size.toString(2).length - under.toString(2).length;
  const atLeast = (power: number): boolean =>
    0 <= power
      ? under << BigInt(power) <= size
      : under <= size << BigInt(-power);
  if (!atLeast(exponent)) exponent--;
  const shift = 52 - exponent;
  const [top, bottom] =
    0 <= shift
      ? [size << BigInt(shift), under]
      : [size, under << BigInt(-shift)];
  const floor = top / bottom;
  const twice = 2n * (top % bottom);
  const up = bottom < twice || (twice === bottom && floor % 2n === 1n);
  return sign * Number(floor + (up ? 1n : 0n)) * 2 ** (exponent - 52);
}

/** Number words as a shop writes them, with the fraction that each means: seeded, and the awkward ones. */
function written(): readonly (readonly [string, Ratio])[] {
  const { even } = chance(1789);
  const whole = (below: number): number =>
    Math.floor(((1 + even()) / 2) * below);
  const words: (readonly [string, Ratio])[] = [];
  for (let count = 0; count < 600; count++) {
    const decimals = whole(9);
    const digits = BigInt(whole(1e9));
    const text = digits.toString().padStart(decimals + 1, "0");
    const at = text.length - decimals;
    const minus = whole(2) === 1;
    words.push([
      `${minus ? "-" : ""}${text.slice(0, at)}${decimals === 0 ? "" : "."}${text.slice(at)}`,
      { over: minus ? -digits : digits, under: 10n ** BigInt(decimals) },
    ]);
    const [inches, top, bottom] = [
      whole(12),
      1 + whole(127),
      2 ** (1 + whole(7)),
    ];
    words.push([
      `${String(inches)} ${String(top)}/${String(bottom)}`,
      { over: BigInt(inches * bottom + top), under: BigInt(bottom) },
    ]);
    const exponent = whole(41) - 20;
    const mantissa = whole(1e6);
    words.push([
      `${String(mantissa)}e${String(exponent)}`,
      exponent < 0
        ? { over: BigInt(mantissa), under: 10n ** BigInt(-exponent) }
        : { over: BigInt(mantissa) * 10n ** BigInt(exponent), under: 1n },
    ]);
  }
  return [
    ...words,
    [".8748", { over: 8748n, under: 10000n }],
    ["1-3/16", { over: 19n, under: 16n }],
    ["9007199254740993", { over: 9007199254740993n, under: 1n }],
    [
      "0.1234567890123456789",
      { over: 1234567890123456789n, under: 10n ** 19n },
    ],
    ["1e-26", { over: 1n, under: 10n ** 26n }],
    [
      "3.3333333333333333333e-30",
      { over: 33333333333333333333n, under: 10n ** 49n },
    ],
    ["2e22", { over: 2n * 10n ** 22n, under: 1n }],
    ["123456789.123456789e9", { over: 123456789123456789n, under: 1n }],
  ];
}

/** Each word's double, against the nearest by weighing; relative. */
export function numbers(): readonly Side[] {
  return written().map(([word, ratio]) => {
    const read = readNumber(word);
    return {
      at: word,
      ours: read === undefined ? undefined : toNumber(read),
      theirs: nearestDouble(ratio),
    };
  });
}

/** Whole tenths of a nanometre of each word in every unit of length, halves away from zero, in whole numbers; and there and back in m. */
export function tenths(): readonly Side[] {
  const sides: Side[] = [];
  // Nothing below 0.1 nm is kept: the words beyond a kilometre or with an exponent are no lengths of a shop.
  const lengths = written().filter(([word]) => !word.includes("e"));
  const halves: readonly (readonly [string, Ratio])[] = [
    ["0.00005", { over: 5n, under: 100_000n }],
    ["-0.00005", { over: -5n, under: 100_000n }],
    ["0.00015", { over: 15n, under: 100_000n }],
  ];
  const perUnit = new Map([
    ["in", 254_000_000n],
    ["thou", 254_000n],
    ["tenths", 25_400n],
    ["uin", 254n],
    ["um", 10_000n],
    ["mm", 10_000_000n],
    ["cm", 100_000_000n],
  ]);
  for (const [word, { over, under }] of [...lengths, ...halves])
    for (const [symbol, each] of perUnit) {
      const read = readNumber(word);
      const unit = unitOf(symbol)?.tenths;
      const sign = over < 0n ? -1n : 1n;
      const top = sign * over * each;
      const rest = top % under;
      const exact = sign * (top / under + (under <= 2n * rest ? 1n : 0n));
      if (2n ** 53n < sign * exact) continue;
      const ours =
        read === undefined || unit === undefined
          ? undefined
          : toTenths(read, unit);
      const at = `${word} ${symbol}`;
      sides.push({ at, ours, theirs: Number(exact) });
      if (ours === undefined || 1e14 < Math.abs(ours)) continue;
      sides.push(
        {
          at: `${at} in m`,
          ours: tenthsToMetres(ours),
          theirs: nearestDouble({ over: exact, under: 10n ** 10n }),
        },
        {
          at: `${at} and back`,
          ours: metresToTenths(tenthsToMetres(ours)),
          theirs: Number(exact),
        },
      );
    }
  return sides;
}

// What a unit is, from its definition: the inch 25.4 mm and the pound 0.453 592 37 kg (exact since 1959), standard gravity
// 9.806 65 m/s² (exact); all else by arithmetic, in fractions.
const times = (...factors: readonly Ratio[]): Ratio =>
  factors.reduce((product, factor) => ({
    over: product.over * factor.over,
    under: product.under * factor.under,
  }));
const per = ({ over, under }: Ratio): Ratio => ({ over: under, under: over });
const whole = (over: bigint, under = 1n): Ratio => ({ over, under });
const inch = whole(254n, 10_000n);
const foot = times(inch, whole(12n));
const pound = times(whole(45359237n, 10n ** 8n), whole(980665n, 10n ** 5n));
const psi = times(pound, per(inch), per(inch));
const minute = whole(60n);

const definitions: ReadonlyMap<string, Ratio> = new Map([
  ["lbf", pound],
  ["N", whole(1n)],
  ["kN", whole(1000n)],
  ["psi", psi],
  ["ksi", times(psi, whole(1000n))],
  ["kPa", whole(1000n)],
  ["MPa", whole(10n ** 6n)],
  ["GPa", whole(10n ** 9n)],
  ["h", times(minute, whole(60n))],
  ["rpm", per(minute)],
  ["per min", per(minute)],
  ["%", whole(1n, 100n)],
  ["ft/min", times(foot, per(minute))],
  ["m/min", per(minute)],
  ["m/s", whole(1n)],
  ["lbf-ft", times(pound, foot)],
  ["lbf-in", times(pound, inch)],
  ["N-m", whole(1n)],
  ["cSt", whole(1n, 10n ** 6n)],
  ["cP", whole(1n, 1000n)],
  ["um/m-K", whole(1n, 10n ** 6n)],
  ["uin/in-F", whole(9n, 5n * 10n ** 6n)],
  ["kg/m3", whole(1n)],
  ["g/cm3", whole(1000n)],
  ["sq-in", times(inch, inch)],
  ["sq-ft", times(foot, foot)],
  ["sq-m", whole(1n)],
  ["psi-ft/min", times(psi, foot, per(minute))],
  ["MPa-m/s", whole(10n ** 6n)],
]);

/** Every unit but those of length, angle and temperature from its definition, and temperatures at points where the scales are defined. */
export function units(): readonly Side[] {
  const apart = ["length", "angle", "temperature"];
  const sides: Side[] = UNITS.filter(
    ({ dimension }) => !apart.includes(dimension),
  ).map((unit) => {
    const definition = definitions.get(unit.symbol);
    return {
      at: unit.symbol,
      ours: toSi(1, unit),
      theirs: definition && nearestDouble(definition),
    };
  });
  for (const [symbol, value, celsius] of [
    ["F", 32, 0],
    ["F", 212, 100],
    ["F", 68, 20],
    ["F", -40, -40],
    ["K", 273.15, 0],
    ["K", 293.15, 20],
    ["C", 20, 20],
  ] as const) {
    const unit = unitOf(symbol);
    sides.push({
      at: `${String(value)} ${symbol}`,
      ours: unit && toSi(value, unit) + 273.15,
      theirs: celsius + 273.15,
    });
    if (unit !== undefined)
      sides.push({
        at: `${String(celsius)} C in ${symbol}`,
        ours: fromSi(celsius, unit) + 500,
        theirs: value + 500,
      });
  }
  return sides;
}

const degrees = [
  1, 1.0001, 1.5, 2, 2.5, 3, 4, 7.7, 10, 16, 29.5, 50, 100, 365, 1000, 9999.5,
  1e5, 999999,
];

/** Quantiles on the lower side, tails from 1e-9 to 0.4. */
export function tails(): readonly Side[] {
  return degrees.flatMap((dof) =>
    [
      1e-9, 1e-8, 1e-6, 1e-4, 1e-3, 0.005, 0.025, 0.05, 0.1, 0.25, 0.3, 0.35,
      0.4,
    ].map((tail) => quantile(tail, dof)),
  );
}

/** Quantiles near a half, where t is small and its own share of digits is asked all the same. */
export function middles(): readonly Side[] {
  return degrees.flatMap((dof) =>
    [0.42, 0.45, 0.46, 0.49, 0.499, 0.4999].map((tail) => quantile(tail, dof)),
  );
}

function quantile(tail: number, dof: number): Side {
  const answer = studentQuantile(tail, dof);
  return {
    at: `tail ${String(tail)}, ${String(dof)} degrees of freedom`,
    ours: answer.valid ? -answer.value : undefined,
    theirs: upperT(tail, dof),
  };
}

/** t for right tails, of 1 to 30 degrees of freedom as a table prints them (three decimals): bookdown.org/pingapang9, table B.1, whole rows. */
const printed: readonly (readonly [number, string])[] = [
  [1, "3.078 6.314 12.706 15.895 31.821 63.657 127.321 318.309 636.619"],
  [2, "1.886 2.920 4.303 4.849 6.965 9.925 14.089 22.327 31.599"],
  [3, "1.638 2.353 3.182 3.482 4.541 5.841 7.453 10.215 12.924"],
  [4, "1.533 2.132 2.776 2.999 3.747 4.604 5.598 7.173 8.610"],
  [5, "1.476 2.015 2.571 2.757 3.365 4.032 4.773 5.893 6.869"],
  [6, "1.440 1.943 2.447 2.612 3.143 3.707 4.317 5.208 5.959"],
  [7, "1.415 1.895 2.365 2.517 2.998 3.499 4.029 4.785 5.408"],
  [8, "1.397 1.860 2.306 2.449 2.896 3.355 3.833 4.501 5.041"],
  [9, "1.383 1.833 2.262 2.398 2.821 3.250 3.690 4.297 4.781"],
  [10, "1.372 1.812 2.228 2.359 2.764 3.169 3.581 4.144 4.587"],
  [15, "1.341 1.753 2.131 2.249 2.602 2.947 3.286 3.733 4.073"],
  [20, "1.325 1.725 2.086 2.197 2.528 2.845 3.153 3.552 3.850"],
  [25, "1.316 1.708 2.060 2.167 2.485 2.787 3.078 3.450 3.725"],
];
const printedTails = [
  0.1, 0.05, 0.025, 0.02, 0.01, 0.005, 0.0025, 0.001, 0.0005,
];

export function printedT(): readonly Side[] {
  return printed.flatMap(([dof, row]) =>
    row.split(" ").map((theirs, index) => ({
      ...quantile(printedTails[index] ?? 0.5, dof),
      theirs: Number(theirs),
    })),
  );
}

/** Two-sided factors: NIST Technical Note 1297, appendix B, table B.1: 68.27, 90, 95, 95.45, 99 and 99.73 %, two decimals. */
const nist: readonly (readonly [number, string])[] = [
  [1, "1.84 6.31 12.71 13.97 63.66 235.80"],
  [2, "1.32 2.92 4.30 4.53 9.92 19.21"],
  [3, "1.20 2.35 3.18 3.31 5.84 9.22"],
  [4, "1.14 2.13 2.78 2.87 4.60 6.62"],
  [5, "1.11 2.02 2.57 2.65 4.03 5.51"],
  [8, "1.07 1.86 2.31 2.37 3.36 4.28"],
  [16, "1.03 1.75 2.12 2.17 2.92 3.54"],
  [30, "1.02 1.70 2.04 2.09 2.75 3.27"],
  [50, "1.01 1.68 2.01 2.05 2.68 3.16"],
];
// 68.27, 95.45 and 99.73 stand for one, two and three sigma of the normal distribution: 0.682689…, 0.954499…, 0.997300…
const nistShares = [0.6826894921, 0.9, 0.95, 0.9544997361, 0.99, 0.9973002039];

export function nistT(): readonly Side[] {
  return nist.flatMap(([dof, row]) =>
    row.split(" ").map((theirs, index) => ({
      ...quantile((1 - (nistShares[index] ?? 0)) / 2, dof),
      theirs: Number(theirs),
    })),
  );
}
