// What a reamer cuts: its own size, what it cuts over that (or under), and the heat at the cut, brought to 20 °C.
// It doesn't own whether that size is wanted, nor which reamer to take.
import { notValid, valid, type Answer } from "../answer.ts";
import { growthAt } from "../quantity/growth.ts";
import { studentCoverage } from "../quantity/student.ts";
import { middle } from "../quantity/band.ts";
import { faultOfDiameters, faultOfRange } from "./range.ts";
import type { Spread } from "./spread.ts";

/** The diameter of the reamer itself at 20 °C, m: as written (one size or its limits), or as measured. */
export type ToolSize =
  | { readonly kind: "written"; readonly low: number; readonly high: number }
  | {
      readonly kind: "measured";
      readonly mean: number;
      /** Sample standard deviation of the readings */
      readonly spread: number;
      readonly count: number;
      /** Standard uncertainty of the gauge besides, k = 1 */
      readonly uncertainty?: number;
    };

/** What it cuts over its own size, m; below zero in thin bronze and in plastics. */
export type Oversize =
  | { readonly kind: "written"; readonly low: number; readonly high: number }
  | {
      readonly kind: "learned";
      readonly mean: number;
      /** Sample standard deviation over the cuts; undefined of a single cut */
      readonly spread: number | undefined;
      readonly count: number;
    }
  /** Nothing is written or learned: zero, and whoever shows the result says so */
  | { readonly kind: "assumed-zero" };

/** Temperatures at the cut, °C, and expansions, 1/K. */
export interface CutHeat {
  readonly partTemperature: number;
  readonly partExpansion: number;
  readonly toolTemperature: number;
  readonly toolExpansion: number;
}

export interface CutSize {
  /** Smallest, likeliest and largest bore at 20 °C, m */
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  /** For the chance, m; undefined where nothing written, read or learned gives one */
  readonly spread: Spread | undefined;
  readonly oversizeAssumed: boolean;
}

/**
 * The bore that a reamer cuts, at 20 °C. Oversize is added to the tool's size; a warm tool (tool temperature and
 * expansion) cuts larger, a warm part (its own) shrinks after: D20 = (S·(1 + αt(Tt−20)) + oversize)/(1 + αp(Tp−20)).
 * low and high: a written range counts whole; what is measured or learned at 95 % by Student's t, which is wide when
 * the count is few (measured: of the mean; learned: of the next single cut, s·√(1+1/n)).
 * Standard deviation: a written range as a rectangle, width/√12; all combined by the root of squares with the effective
 * degrees of freedom of Welch and Satterthwaite.
 * Refuses sizes not above zero or reversed, an oversize over a tenth of the size, spreads below zero, counts under one,
 * temperatures outside −80 to 300 °C, expansions outside 0 to 300e-6 1/K.
 * Source: JCGM 100:2008 (GUM) 4.3.7 (rectangle), G.4.1 (eq. G.2b), from memory; heat: definition of expansion.
 */
export function cutSize(
  size: ToolSize,
  oversize: Oversize,
  heat?: CutHeat,
): Answer<CutSize> {
  const fault =
    faultOfTool(size) ??
    faultOfOversize(oversize) ??
    (heat ? faultOfHeat(heat) : undefined);
  if (fault !== undefined) return notValid(fault);
  const ofTool = partOfTool(size);
  const ofCut = partOfOversize(oversize);
  if (0.1 * ofTool.mean < Math.abs(ofCut.mean) + ofCut.reach)
    return notValid("the oversize is over a tenth of the size");

  const parts = [
    scaled(ofTool, cutPerToolSize(heat)),
    scaled(ofCut, 1 / partGrowth(heat)),
  ];
  const nominal = sum(parts.map((part) => part.mean));
  const reach = sum(parts.map((part) => part.reach));
  const learned = combined(parts.filter((part) => part.reach === 0));
  let either = reach;
  if (learned) {
    const factor = studentCoverage(0.95, learned.degreesOfFreedom);
    if (!factor.valid) return factor;
    either += factor.value * learned.standardDeviation;
  }
  return valid({
    low: nominal - either,
    nominal,
    high: nominal + either,
    spread: combined(parts),
    oversizeAssumed: oversize.kind === "assumed-zero",
  });
}

/** How much the cut at 20 °C grows for each metre that the tool at 20 °C is larger: 1 without heat. */
export function cutPerToolSize(heat?: CutHeat): number {
  const toolGrowth = heat
    ? growthAt(heat.toolTemperature, heat.toolExpansion)
    : 1;
  return toolGrowth / partGrowth(heat);
}

/**
 * What a reamer cut over its own size, m: the reverse of cutSize. Bore and tool at 20 °C, m; the heat at the cut where it was written.
 * Refuses sizes not above zero, heat as cutSize does, and a difference over a tenth of the size. Source: as cutSize.
 */
export function oversizeOfCut(
  bore: number,
  tool: number,
  heat?: CutHeat,
): Answer<number> {
  if (!(0 < bore && 0 < tool && Number.isFinite(bore + tool)))
    return notValid("a size is not above zero");
  const fault = heat ? faultOfHeat(heat) : undefined;
  if (fault !== undefined) return notValid(fault);
  const over = partGrowth(heat) * (bore - cutPerToolSize(heat) * tool);
  return Math.abs(over) <= 0.1 * tool
    ? valid(over)
    : notValid("the oversize is over a tenth of the size");
}

function partGrowth(heat?: CutHeat): number {
  return heat ? growthAt(heat.partTemperature, heat.partExpansion) : 1;
}

interface Part {
  readonly mean: number;
  /** Half of a written range, which counts whole */
  readonly reach: number;
  readonly spreads: readonly Spread[];
}

function partOfTool(size: ToolSize): Part {
  if (size.kind === "written") return written(size.low, size.high);
  const spreads: Spread[] = [];
  if (1 < size.count && 0 < size.spread) {
    spreads.push({
      standardDeviation: size.spread / Math.sqrt(size.count),
      degreesOfFreedom: size.count - 1,
    });
  }
  if (size.uncertainty !== undefined && 0 < size.uncertainty) {
    spreads.push({
      standardDeviation: size.uncertainty,
      degreesOfFreedom: Infinity,
    });
  }
  return { mean: size.mean, reach: 0, spreads };
}

function partOfOversize(oversize: Oversize): Part {
  if (oversize.kind === "written") return written(oversize.low, oversize.high);
  if (oversize.kind === "assumed-zero")
    return { mean: 0, reach: 0, spreads: [] };
  const { mean, spread, count } = oversize;
  if (spread === undefined || spread === 0 || count < 2)
    return { mean, reach: 0, spreads: [] };
  const next = spread * Math.sqrt(1 + 1 / count);
  return {
    mean,
    reach: 0,
    spreads: [{ standardDeviation: next, degreesOfFreedom: count - 1 }],
  };
}

function written(low: number, high: number): Part {
  const reach = Math.max(0, (high - low) / 2);
  const spreads =
    0 < reach
      ? [
          {
            standardDeviation: reach / Math.sqrt(3),
            degreesOfFreedom: Infinity,
          },
        ]
      : [];
  return { mean: middle({ low, high }), reach, spreads };
}

function scaled(part: Part, by: number): Part {
  const spreads = part.spreads.map((spread) => ({
    ...spread,
    standardDeviation: by * spread.standardDeviation,
  }));
  return { mean: by * part.mean, reach: by * part.reach, spreads };
}

/** One spread of several parts: root of squares, Welch–Satterthwaite; undefined where there is none. */
function combined(parts: readonly Part[]): Spread | undefined {
  const spreads = parts.flatMap((part) => part.spreads);
  const standardDeviation = Math.hypot(
    ...spreads.map((spread) => spread.standardDeviation),
  );
  if (!(0 < standardDeviation)) return undefined;
  // relative to the whole, or the fourth powers of micrometres would come near the smallest double
  const rest = sum(
    spreads.map(
      (spread) =>
        (spread.standardDeviation / standardDeviation) ** 4 /
        spread.degreesOfFreedom,
    ),
  );
  // endless where no share of it was estimated: one over zero
  return { standardDeviation, degreesOfFreedom: 1 / rest };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}

function faultOfTool(size: ToolSize): string | undefined {
  if (size.kind === "written")
    return faultOfDiameters("the size of the reamer", size);
  if (!(0 < size.mean && Number.isFinite(size.mean)))
    return "the size of the reamer is not above zero";
  if (!(Number.isInteger(size.count) && 1 <= size.count))
    return "the reamer has no reading";
  const spreads = [size.spread, size.uncertainty ?? 0];
  return spreads.every((one) => 0 <= one && Number.isFinite(one))
    ? undefined
    : "a spread is below zero";
}

function faultOfOversize(oversize: Oversize): string | undefined {
  if (oversize.kind === "assumed-zero") return undefined;
  if (oversize.kind === "written")
    return faultOfRange("the oversize", oversize);
  if (!Number.isFinite(oversize.mean)) return "the oversize is not a number";
  if (!(Number.isInteger(oversize.count) && 1 <= oversize.count))
    return "the oversize was learned from no cut";
  const spread = oversize.spread ?? 0;
  return 0 <= spread && Number.isFinite(spread)
    ? undefined
    : "a spread is below zero";
}

function faultOfHeat(heat: CutHeat): string | undefined {
  const temperatures = [heat.partTemperature, heat.toolTemperature];
  if (!temperatures.every((one) => -80 <= one && one <= 300))
    return "nothing is reamed outside -80 to 300 °C";
  const expansions = [heat.partExpansion, heat.toolExpansion];
  return expansions.every((one) => 0 <= one && one <= 300e-6)
    ? undefined
    : "an expansion lies between 0 and 300 millionths per kelvin";
}
