// The sizes that reamers are sold in: fractions of an inch, numbers, letters, metric steps; each with its limits as made.
// It doesn't own which of them to take, nor what it cuts.
import type { Answer } from "../answer.ts";
import { letterSizes, numberSizes } from "./gauge-sizes.ts";
import type { Band } from "../quantity/band.ts";
import { isLess } from "./range.ts";
import { reamerLimitsH7, reamerLimitsInch } from "./reamer-limits.ts";

export type SizeSeries =
  "fraction" | "number" | "letter" | "metric" | "metric-hundredth";

export interface SizeToBuy {
  readonly series: SizeSeries;
  /** As it is asked for: "1 3/16", "30", "T", "19.5" */
  readonly designation: string;
  /** m */
  readonly nominal: number;
  /** Its limits as made, m */
  readonly limits: Band;
}

/** Steps of a series, whole numbers of its unit. */
interface Steps {
  readonly from: number;
  readonly to: number;
  readonly by: number;
}

/**
 * Fractions, in 1/64 in: 1/64 steps to 1 1/2 in, 1/32 to 2 in, 1/16 to 3 in. That solid straight reamers are issued from 1/16 to
 * 3 in and sets from 1/8 to 1/2 in by 1/64: US Army, Ordnance course OD0017, "Reamers", p. 71. The coarser steps above
 * 1 1/2 in: common practice, no source.
 */
const fractionSteps: readonly Steps[] = [
  { from: 4, to: 96, by: 1 },
  { from: 98, to: 128, by: 2 },
  { from: 132, to: 192, by: 4 },
];

/** Metric H7 reamers: by half a millimetre to 20 mm, by one to 50 mm; in half millimetres. Common practice, no source. */
const metricSteps: readonly Steps[] = [
  { from: 2, to: 40, by: 1 },
  { from: 42, to: 100, by: 2 },
];

/** By a hundredth of a millimetre from 1 to 12.7 mm: that they are stocked so, a trade paper on boring and reaming, seen. */
const hundredthSteps: Steps = { from: 100, to: 1270, by: 1 };

/** Hundredths are ground to +0.004 mm and are no H7 reamers. Common practice, no source. */
const hundredthLimits: Band = { low: 0, high: 4e-6 };

let every: readonly SizeToBuy[] | undefined;

/**
 * Every size to buy whose nominal lies in the range (m, ends included), in order of size; where two series have one
 * size (1/4 and E, 6 and 6.00) both stand. None outside about 0.3 mm to 3 in. It refuses nothing: a range that is
 * reversed or holds no size gives none. Sources: at each series.
 */
export function sizesToBuy({ low, high }: Band): SizeToBuy[] {
  every ??= everySize();
  return every.filter(
    ({ nominal }) => !isLess(nominal, low) && !isLess(high, nominal),
  );
}

function everySize(): readonly SizeToBuy[] {
  return [
    ...fractionSteps.flatMap(countsOf).flatMap(fraction),
    ...numberSizes.flatMap((size, index) =>
      gauge("number", String(80 - index), size),
    ),
    ...letterSizes.flatMap((size, index) =>
      gauge("letter", String.fromCharCode(65 + index), size),
    ),
    ...metricSteps.flatMap(countsOf).flatMap(metric),
    ...countsOf(hundredthSteps).map(hundredth),
  ].sort((one, other) => one.nominal - other.nominal);
}

function countsOf({ from, to, by }: Steps): number[] {
  const counts: number[] = [];
  for (let count = from; count <= to; count += by) counts.push(count);
  return counts;
}

function fraction(sixtyFourths: number): readonly SizeToBuy[] {
  let [over, under] = [sixtyFourths % 64, 64];
  while (over !== 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const whole = Math.floor(sixtyFourths / 64);
  const parts = [
    ...(whole ? [String(whole)] : []),
    ...(over ? [`${over}/${under}`] : []),
  ];
  const nominal = (sixtyFourths * 0.0254) / 64;
  return made("fraction", parts.join(" "), nominal, reamerLimitsInch(nominal));
}

function metric(halves: number): readonly SizeToBuy[] {
  const nominal = halves * 0.5e-3;
  const designation = String(Number((nominal * 1e3).toFixed(1)));
  return made("metric", designation, nominal, reamerLimitsH7(nominal));
}

function hundredth(count: number): SizeToBuy {
  const nominal = count / 1e5;
  const { low, high } = hundredthLimits;
  return {
    series: "metric-hundredth",
    designation: (count / 100).toFixed(2),
    nominal,
    limits: { low: nominal + low, high: nominal + high },
  };
}

function gauge(
  series: SizeSeries,
  designation: string,
  tenThousandths: number,
): readonly SizeToBuy[] {
  const nominal = tenThousandths * 2.54e-6;
  return made(series, designation, nominal, reamerLimitsInch(nominal));
}

function made(
  series: SizeSeries,
  designation: string,
  nominal: number,
  limits: Answer<Band>,
): readonly SizeToBuy[] {
  return limits.valid
    ? [{ series, designation, nominal, limits: limits.value }]
    : [];
}
