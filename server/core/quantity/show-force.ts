// Forces, torques and pressures for a person to read, in the units that go with the job's. It rounds for display only, as show.ts does for lengths.
import { showIn, type System } from "./show.ts";

/** Pa to psi in an inch job, MPa in a metric one: "1250 psi", "8.1 to 8.6 MPa"; one value where both ends read alike. */
export function showPressures(
  low: number,
  high: number,
  system: System,
): string {
  return showIn(low, high, system === "inch" ? "psi" : "MPa");
}

/** N to lbf in an inch job. */
export function showForces(low: number, high: number, system: System): string {
  return showIn(low, high, system === "inch" ? "lbf" : "N");
}

/** N·m to lbf-in in an inch job. */
export function showTorques(low: number, high: number, system: System): string {
  return showIn(low, high, system === "inch" ? "lbf-in" : "N-m");
}
