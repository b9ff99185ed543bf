// What a `warn` line may set of each finding: the dimensions of its threshold. Findings that are not here have none. What is done with it is
// the finding's own.
import type { Dimension } from "../core/quantity/units.ts";

/** `bare` says what a number without a unit is: a length in the file's unit, a factor, or nothing. */
export interface ThresholdKind {
  readonly takes: readonly Dimension[];
  readonly bare: "length" | "factor" | "nothing";
}

const LENGTH: ThresholdKind = { takes: ["length"], bare: "length" };
const LENGTH_OR_SHARE: ThresholdKind = {
  takes: ["length", "ratio"],
  bare: "length",
};
const FACTOR: ThresholdKind = { takes: ["ratio"], bare: "factor" };
const only = (dimension: Dimension): ThresholdKind => ({
  takes: [dimension],
  bare: "nothing",
});

export const THRESHOLDS: Readonly<Record<string, ThresholdKind>> = {
  "out-of-round": LENGTH_OR_SHARE,
  taper: LENGTH_OR_SHARE,
  "gauge-coarse": only("ratio"),
  "press-light": LENGTH_OR_SHARE,
  "press-heavy": LENGTH_OR_SHARE,
  "press-yields": FACTOR,
  "bush-slips-hot": FACTOR,
  "heat-over": only("temperature"),
  "stock-thin": LENGTH,
  "stock-heavy": LENGTH,
  "wont-clean-up": LENGTH,
  "pilot-slack": LENGTH_OR_SHARE,
  "ledge-fouls": LENGTH,
  "fillet-fouls": LENGTH,
  "film-thin": LENGTH_OR_SHARE,
  "pv-over": only("pv"),
  "load-over": only("pressure"),
  "speed-over": only("speed"),
};
