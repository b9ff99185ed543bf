// Forces, torques and pressures for a person to read, in the units that go with the job's. It rounds for display only, as show.ts does for lengths.
import { significant, type System } from "./show.ts";
import { sizeOf, type Dimension } from "./units.ts";

type Shown = Extract<Dimension, "force" | "torque" | "pressure">;

const SYMBOLS: Readonly<Record<System, Readonly<Record<Shown, string>>>> = {
  inch: { force: "lbf", torque: "lbf-in", pressure: "psi" },
  mm: { force: "N", torque: "N-m", pressure: "MPa" },
};

/** Pa to psi in an inch job, MPa in a metric one: "1250 psi", "8.1 to 8.6 MPa"; one value where both ends read alike. */
export function showPressures(
  low: number,
  high: number,
  system: System,
): string {
  return shown(low, high, "pressure", system);
}

/** N to lbf in an inch job. */
export function showForces(low: number, high: number, system: System): string {
  return shown(low, high, "force", system);
}

/** N·m to lbf-in in an inch job. */
export function showTorques(low: number, high: number, system: System): string {
  return shown(low, high, "torque", system);
}

function shown(
  low: number,
  high: number,
  dimension: Shown,
  system: System,
): string {
  const symbol = SYMBOLS[system][dimension];
  const size = sizeOf(symbol);
  const digits = (value: number): string => significant(value / size, 3);
  const [from, to] = [digits(low), digits(high)];
  return from === to ? `${from} ${symbol}` : `${from} to ${to} ${symbol}`;
}
