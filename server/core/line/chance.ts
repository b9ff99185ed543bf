// Where a predicted cut lands: the margin to the nearer limit and the chance of landing in, over every bore of a line.
import { notValid, valid, type Answer } from "../answer.ts";
import type { CutSize } from "./cut-size.ts";
import { chanceBetween } from "./spread.ts";
import type { BoreLimits } from "./wanting-journal.ts";

/** Below this chance of landing in, no size is advised to buy, and no tool is named without its chance: common practice, no source. */
export const GOOD_CHANCE = 0.9;

/** One bore's predicted cut and the sizes that it may have. */
export interface Landing {
  readonly cut: CutSize;
  /** m; where low passes high no size is in, and the margin is below zero */
  readonly window: BoreLimits;
}

export interface Margin {
  /** From the likeliest size to the nearer limit, m; below zero outside */
  readonly metres: number;
  /** The same in standard deviations; undefined where the cut has no spread */
  readonly deviations: number | undefined;
  /** Which bore (index) and which end of its window is the nearer */
  readonly bore: number;
  readonly end: "low" | "high";
}

/**
 * The margin of the bore that has the least. In metres the nearest is found in metres; `deviations` is the least over
 * the bores counted in each one's own standard deviation, and undefined where any has none.
 * Refuses no bores and a window that is no number. Derived from the definition.
 */
export function margin(landings: readonly Landing[]): Answer<Margin> {
  const fault = faultOfLandings(landings);
  if (fault !== undefined) return notValid(fault);
  let nearest: Omit<Margin, "deviations"> = {
    metres: Infinity,
    bore: 0,
    end: "low",
  };
  let deviations: number | undefined = Infinity;
  landings.forEach(({ cut, window }, bore) => {
    const overLow = cut.nominal - window.low;
    const underHigh = window.high - cut.nominal;
    const end = overLow < underHigh ? "low" : "high";
    const metres = Math.min(overLow, underHigh);
    if (metres < nearest.metres) nearest = { metres, bore, end };
    deviations =
      deviations === undefined || cut.spread === undefined
        ? undefined
        : Math.min(deviations, metres / cut.spread.standardDeviation);
  });
  return valid({ ...nearest, deviations });
}

/**
 * The chance, 0 to 1, that every bore lands in its window. One tool cuts them all, so one deviation is taken for all
 * of them: each bore leaves an interval of it, in its own standard deviations, and the chance is that of what they
 * share. Where all bores have one cut this is the chance of landing in the line's window. Normal; Student's t with the
 * least degrees of freedom where the spread was measured or learned from few.
 * Refuses a cut without a spread, no bores, a window that is no number. Derived from the definition.
 */
export function chanceOfLanding(landings: readonly Landing[]): Answer<number> {
  const fault = faultOfLandings(landings);
  if (fault !== undefined) return notValid(fault);
  let [low, high, degreesOfFreedom] = [-Infinity, Infinity, Infinity];
  for (const { cut, window } of landings) {
    if (!cut.spread)
      return notValid("nothing says how far the cuts of this reamer spread");
    low = Math.max(
      low,
      (window.low - cut.nominal) / cut.spread.standardDeviation,
    );
    high = Math.min(
      high,
      (window.high - cut.nominal) / cut.spread.standardDeviation,
    );
    degreesOfFreedom = Math.min(degreesOfFreedom, cut.spread.degreesOfFreedom);
  }
  return valid(chanceBetween(low, high, degreesOfFreedom));
}

function faultOfLandings(landings: readonly Landing[]): string | undefined {
  if (landings.length === 0) return "the line has no bore";
  const isNumber = ({ window }: Landing): boolean =>
    Number.isFinite(window.low) && Number.isFinite(window.high);
  return landings.every(isNumber) ? undefined : "the window is not a number";
}
