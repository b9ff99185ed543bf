// What each finding is measured in: what the bound of a concession can be held against, and what a threshold of it, `warn CODE at VALUE`,
// can be. A finding that is not here has neither. Tests hold the table to the findings themselves.
import type { Dimension } from "../core/quantity/units.ts";
import { NEVER } from "../model/evaluate/concessions.ts";

/** A bare number is a length where the finding takes one, else a plain factor where it takes a ratio. */
export interface Figures {
  /** What its value is; empty for one without. */
  readonly value: readonly Dimension[];
  /** What its threshold may be; empty for one without. */
  readonly warn: readonly Dimension[];
}

const LENGTH: readonly Dimension[] = ["length"];
const RATIO: readonly Dimension[] = ["ratio"];
const LENGTH_OR_SHARE: readonly Dimension[] = ["length", "ratio"];
const NONE: readonly Dimension[] = [];

function figures(
  value: readonly Dimension[],
  warn: readonly Dimension[] = NONE,
): Figures {
  return { value, warn };
}

const TABLE: Readonly<Record<string, Figures>> = {
  "reading-off-limits": figures(LENGTH),
  "reading-off-nominal": figures(NONE, LENGTH_OR_SHARE),
  worn: figures(LENGTH),
  "out-of-round": figures(LENGTH, LENGTH_OR_SHARE),
  taper: figures(LENGTH, LENGTH_OR_SHARE),
  lobed: figures(LENGTH, LENGTH_OR_SHARE),
  "gauge-coarse": figures(RATIO, RATIO),
  "fit-tight": figures(LENGTH),
  "fit-loose": figures(LENGTH),
  "fit-interferes": figures(LENGTH),
  "hot-tight": figures(LENGTH),
  "hot-loose": figures(LENGTH),
  "cold-tight": figures(LENGTH),
  "cold-loose": figures(LENGTH),
  "press-light": figures(LENGTH, LENGTH_OR_SHARE),
  "press-heavy": figures(LENGTH, LENGTH_OR_SHARE),
  "press-yields": figures(NONE, RATIO),
  "closure-not-valid": figures(LENGTH),
  "bush-slips-hot": figures(RATIO, RATIO),
  "heat-over": figures(NONE, ["temperature"]),
  "reamer-wrong-size": figures(LENGTH),
  "stock-thin": figures(LENGTH, LENGTH),
  "stock-heavy": figures(LENGTH, LENGTH),
  "wont-clean-up": figures(LENGTH, LENGTH),
  "pilot-slack": figures(LENGTH, LENGTH_OR_SHARE),
  "pilot-tight": figures(LENGTH),
  "ledge-fouls": figures(LENGTH, LENGTH),
  "fillet-fouls": figures(LENGTH, LENGTH),
  "line-crooked": figures(LENGTH),
  "film-thin": figures(LENGTH_OR_SHARE, LENGTH_OR_SHARE),
  "pv-over": figures(["pv"], ["pv"]),
  "load-over": figures(["pressure"], ["pressure"]),
  "speed-over": figures(["speed"], ["speed"]),
  "float-off": figures(LENGTH),
};

export function figuresOf(code: string): Figures {
  return (
    (Object.hasOwn(TABLE, code) ? TABLE[code] : undefined) ?? figures(NONE)
  );
}

/** Whether a concession can accept a finding of this code at all: it has a value, and may be signed away. */
export function canBeAllowed(code: string): boolean {
  return !NEVER.has(code) && 0 < figuresOf(code).value.length;
}
