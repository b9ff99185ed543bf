// Which units fit a place, those of the file's system first.
import type { System } from "../core/quantity/show.ts";
import { UNITS, type Dimension } from "../core/quantity/units.ts";
import type { Offer } from "./completion-item.ts";
import { DIMENSION_WORDS, unitName } from "./hover-words.ts";

/** What thou.ohm calls each kind of unit. */
const DESCRIBED: Readonly<Record<string, readonly Dimension[]>> = {
  "a unit of length": ["length"],
  "a unit of temperature": ["temperature"],
  "a unit of angle": ["angle"],
  "a unit of force": ["force"],
  "a unit of torque": ["torque"],
  "a unit of pressure": ["pressure"],
  "a unit of rotation": ["rotation"],
  "a unit of frequency": ["frequency"],
  "a unit of speed": ["speed"],
  "a unit of speed or rotation": ["speed", "rotation"],
  "a unit of viscosity": ["viscosity", "dynamic-viscosity"],
  "a unit of expansion": ["expansion"],
  "a unit of density": ["density"],
  "a unit of area": ["area"],
  "a unit of pressure times speed": ["pv"],
  "a unit of time": ["time"],
  "a unit": [
    "length",
    "ratio",
    "temperature",
    "force",
    "torque",
    "pressure",
    "rotation",
    "frequency",
    "speed",
    "pv",
    "angle",
  ],
};

export function dimensionsOf(
  described: string,
): readonly Dimension[] | undefined {
  return Object.hasOwn(DESCRIBED, described) ? DESCRIBED[described] : undefined;
}

const INCH = new Set([
  "in",
  "thou",
  "tenths",
  "uin",
  "F",
  "lbf",
  "psi",
  "ksi",
  "ft/min",
  "lbf-ft",
  "lbf-in",
  "uin/in-F",
  "sq-in",
  "sq-ft",
  "psi-ft/min",
]);
const METRIC = new Set([
  "sq-m",
  "um",
  "mm",
  "cm",
  "m",
  "C",
  "K",
  "N",
  "kN",
  "kPa",
  "MPa",
  "GPa",
  "m/min",
  "m/s",
  "N-m",
  "um/m-K",
  "MPa-m/s",
  "kg/m3",
]);

/** The symbols of a dimension's units, the file's system first. */
export function unitsOf(
  dimension: Dimension,
  system: System | undefined,
): readonly string[] {
  const own = system === "inch" ? INCH : METRIC;
  const foreign = system === "inch" ? METRIC : INCH;
  const bare = system === "inch" ? "in" : "mm";
  const rank = (symbol: string): number => {
    if (symbol === bare) return 0;
    return own.has(symbol) ? 1 : foreign.has(symbol) ? 3 : 2;
  };
  return UNITS.filter((unit) => unit.dimension === dimension)
    .map((unit) => unit.symbol)
    .sort((a, b) => rank(a) - rank(b));
}

export function unitOffers(
  dimensions: readonly Dimension[],
  system: System | undefined,
  rank: number,
): readonly Offer[] {
  return dimensions.flatMap((dimension) =>
    unitsOf(dimension, system).map((symbol): Offer => ({
      label: symbol,
      kind: "unit",
      detail: unitName(symbol) ?? DIMENSION_WORDS[dimension],
      rank,
    })),
  );
}
