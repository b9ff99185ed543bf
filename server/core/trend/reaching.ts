// When a straight line through points reaches a level: the likeliest x, and the interval that holds the true one. The line itself is
// learning/line-fit.ts's; what x and y are, the caller's.
import { notValid, valid, type Answer } from "../answer.ts";
import type { LineFit } from "../learning/line-fit.ts";
import { studentCoverage } from "../quantity/student.ts";

export interface Reaching {
  /** Where the line itself reaches the level; undefined where it runs the other way, or not at all. */
  readonly likeliest: number | undefined;
  /** Before this x it is not reached, at the stated coverage; undefined where no bound is known, as with a line that may well be past it. */
  readonly earliest: number | undefined;
  /** By this x it is; undefined where it may never be. */
  readonly latest: number | undefined;
}

/**
 * The x at which the true line is at `level`, two-sided at `coverage`, after Fieller: (ȳ + b·d − L)² = t²·s²·(1/n + d²/Σ(x − x̄)²), d = x − x̄.
 * With a slope that is not sure the interval is open at its far end, or at both. `towards` says which way the level is gone to: -1 where y
 * falls to it, 1 where it rises. Refuses a level that is not finite, and a coverage that Student's t refuses.
 * Source: E. C. Fieller, J. R. Stat. Soc. Suppl. 7 (1940), as the inverse prediction of linear calibration (from memory);
 * checked against the worked examples of Graybill & Iyer, Regression Analysis (1994), chapter 6.
 */
export function reachOf(
  line: LineFit,
  level: number,
  towards: -1 | 1,
  coverage: number,
): Answer<Reaching> {
  if (!Number.isFinite(level)) return notValid("the level is not a number");
  const factor = studentCoverage(coverage, line.degreesOfFreedom);
  if (!factor.valid) return factor;
  const { slope, spread, count, meanX, meanY, squaresX } = line;
  const away = meanY - level;
  const reach = factor.value * spread;
  // a·d² + 2·b·d + c = 0
  const a = slope ** 2 - reach ** 2 / squaresX;
  const b = slope * away;
  const c = away ** 2 - reach ** 2 / count;
  const inside = b ** 2 - a * c;
  const roots =
    inside < 0
      ? []
      : a === 0
        ? b === 0
          ? []
          : [-c / (2 * b)]
        : [(-b - Math.sqrt(inside)) / a, (-b + Math.sqrt(inside)) / a];
  // short of the level the pessimist's edge of the band gets there first; past it the optimist's gets there last
  const short = roots.filter((d) => (away + slope * d) * towards < 0);
  const past = roots.filter((d) => 0 < (away + slope * d) * towards);
  const gains = 0 < slope * towards;
  // where the slope is not sure the band bends to the level before the points as well: what comes is the later of the two
  return valid({
    likeliest: gains ? meanX - away / slope : undefined,
    earliest: short.length === 0 ? undefined : meanX + Math.max(...short),
    latest:
      gains && 0 < a && 0 < past.length ? meanX + Math.min(...past) : undefined,
  });
}

/** The same line with a spread no smaller than `floor`: points that were rounded to steps can lie on a line by chance. */
export function withSpreadOf(line: LineFit, floor: number): LineFit {
  if (floor <= line.spread) return line;
  return {
    ...line,
    spread: floor,
    slopeDeviation: floor / Math.sqrt(line.squaresX),
  };
}
