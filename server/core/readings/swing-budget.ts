// Owns the uncertainty of a radial roundness that was had from the swing of a pointer. How components combine is budget.ts's, what the factor of
// a method is lobing.ts's.
import { notValid, type Answer } from "../answer.ts";
import { budget, type Budget } from "./budget.ts";
import {
  gaugeErrorComponent,
  resolutionComponent,
  type Component,
  type GaugeError,
} from "./components.ts";

/** What is known of the gauge; lengths in m. */
export interface SwingGauge extends GaugeError {
  /** Step of its display or graduation. */
  readonly resolution?: number | undefined;
}

/**
 * The budget of roundness = swing / factor. A swing is the largest reading less the smallest: each of the two is rounded to the gauge's step,
 * so resolution counts √2 times. What the gauge is off by at its zero cancels; its calibration counts once, which is cautious for a short travel.
 * The part and the gauge are as warm at both ends of a turn. The number of lobes and the angle are taken as known.
 * Refuses a gauge of which neither calibration nor mpe is known, a factor not above zero, and what the components refuse.
 * Source: JCGM 100:2008, 5.1.2 (the law of propagation).
 */
export function swingBudget(gauge: SwingGauge, factor: number): Answer<Budget> {
  if (!(0 < factor && factor < Infinity))
    return notValid("a factor is a number above zero");
  const { resolution } = gauge;
  const error = gaugeErrorComponent(gauge);
  if (error === undefined)
    return notValid("nothing says how far the gauge may be off");
  const found: (readonly [Answer<Component>, number])[] = [];
  if (resolution !== undefined)
    found.push([resolutionComponent(resolution), Math.SQRT2]);
  found.push([error, 1]);
  const components: Component[] = [];
  for (const [each, times] of found) {
    if (!each.valid) return each;
    components.push({ ...each.value, sensitivity: times / factor });
  }
  return budget(components);
}
