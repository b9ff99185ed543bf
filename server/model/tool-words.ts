// A tool that could cut a line, in words and in the job's units: what it cuts, the clearances it leaves, margin and chance. Which one to
// take is evaluate/window.ts's.
import { metresToTenths } from "../core/quantity/exact.ts";
import { showChance } from "../core/quantity/show-running.ts";
import { fixed, showLength, showRange } from "../core/quantity/show.ts";
import { reamerValue } from "./evaluate/reamer.ts";
import { settings } from "./evaluate/settings.ts";
import type { Choice, Demand } from "./evaluate/window.ts";
import { finer } from "./ranges.ts";
import { choiceName } from "./results/line.ts";
import type { Shop } from "./shop.ts";

/** A tool that could cut a line, in words. */
export interface ToolWords {
  /** "reamer r-8755", "7/8 in" */
  readonly name: string;
  /** "0.87538 to 0.87560 in", and what an adjustable one is set to. */
  readonly cuts: string;
  /** One a fit, in the order of `fitsAsking`. */
  readonly clearances: readonly string[];
  /** "0.0003 in (2.1 standard deviations)" */
  readonly margin: string;
  /** "98 %"; "" where nothing says how far its cuts spread. */
  readonly chance: string;
  /** "yes", "at its likeliest cut" where not all that it may cut leaves what is wanted, "no". */
  readonly serves: "yes" | "at its likeliest cut" | "no";
  readonly oversizeAssumed: boolean;
}

/** The fits whose clearance a cut of the line decides. */
export function fitsAsking(demands: readonly Demand[]): readonly string[] {
  return demands.flatMap((demand) => demand.fit ?? []);
}

export function toolWords(
  shop: Shop,
  demands: readonly Demand[],
  choice: Choice,
): ToolWords {
  const { system } = settings(shop);
  const { ranked } = choice;
  const own =
    choice.reamer === undefined ? undefined : reamerValue(shop, choice.reamer);
  const toolStep = own?.known === true ? own.value.step : undefined;
  const cuts = [
    ...new Set(
      ranked.cuts.map((cut) => showRange(cut.low, cut.high, system, toolStep)),
    ),
  ];
  const setting =
    ranked.setting === undefined
      ? []
      : [`set to ${showLength(ranked.setting, system, toolStep)}`];
  const { metres, deviations } = ranked.margin;
  return {
    name: choiceName(choice),
    cuts: [...cuts, ...setting].join(", "),
    clearances: demands.flatMap(({ fit, step }, index) => {
      const range = ranked.clearances[index];
      if (fit === undefined || range === undefined) return [];
      return [showRange(range.low, range.high, system, finer(step, toolStep))];
    }),
    margin: marginWords(
      showLength(Math.abs(metres), system, toolStep),
      metres,
      deviations,
    ),
    chance: ranked.chance === undefined ? "" : showChance(ranked.chance),
    serves: servesWords(demands, choice),
    oversizeAssumed: ranked.cuts.some((cut) => cut.oversizeAssumed),
  };
}

function servesWords(
  demands: readonly Demand[],
  { ranked }: Choice,
): ToolWords["serves"] {
  if (!ranked.serves) return "no";
  const keepsAll = demands.every(({ wanted }, index) => {
    const left = ranked.clearances[index];
    return (
      left !== undefined &&
      metresToTenths(wanted.low) <= metresToTenths(left.low) &&
      metresToTenths(left.high) <= metresToTenths(wanted.high)
    );
  });
  return keepsAll ? "yes" : "at its likeliest cut";
}

/** Far outside, nobody counts in standard deviations. */
function marginWords(
  length: string,
  metres: number,
  deviations: number | undefined,
): string {
  if (metresToTenths(metres) === 0) return "on the very end";
  const side = metres < 0 ? " outside" : "";
  return deviations === undefined || 10 < Math.abs(deviations)
    ? `${length}${side}`
    : `${length}${side} (${fixed(Math.abs(deviations), 1)} standard deviations)`;
}
