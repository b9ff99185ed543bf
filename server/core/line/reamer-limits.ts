// The limits of size of a reamer as made: the DIN 1420 rule for a wanted hole, its table for H7, and the inch tolerance.
// It doesn't own the classes of holes: their limits and tolerance are given.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import { faultOfDiameters, isLess } from "./range.ts";

/**
 * The limits of size (m) of a reamer for a hole of those limits and that standard tolerance IT (m): greatest = the
 * hole's greatest − 0.15·IT, least = that − 0.35·IT, each part rounded up to a whole micrometre.
 * Refuses limits that are reversed or not above zero, an IT that isn't above zero or is wider than the hole's limits by
 * more than rounding. Range: any tolerance from 3 µm on; below it the rounding may leave no reamer, refused.
 * Source: DIN 1420, as reprinted in a reamer maker's technical pages, "Tolerance limits", points 1 and 3 (10 D8 worked).
 */
export function reamerLimits(hole: Band, tolerance: number): Answer<Band> {
  const fault = faultOfDiameters("the limits of the hole", hole);
  if (fault !== undefined) return notValid(fault);
  if (!(0 < tolerance && Number.isFinite(tolerance)))
    return notValid("the tolerance of the hole is not above zero");
  const high = hole.high - wholeMicrometresUp(0.15 * tolerance);
  const low = high - wholeMicrometresUp(0.35 * tolerance);
  if (isLess(low, hole.low))
    return notValid(
      "the hole's tolerance is too fine for the rule: its reamer would cut under the least hole",
    );
  return valid({ low, high });
}

/**
 * The limits of size (m) of a reamer of that nominal diameter (m) sold as H7, from 1 to 80 mm; outside refused.
 * Source: DIN 1420 table for H7, as reprinted in a reamer maker's technical pages, "Tolerance limits", point 1.
 */
export function reamerLimitsH7(nominal: number): Answer<Band> {
  const row = h7.find(({ upTo }) => !isLess(upTo, nominal));
  if (!(1e-3 <= nominal) || !row)
    return notValid("the table of H7 reamers is for 1 to 80 mm");
  return valid({ low: nominal + row.low, high: nominal + row.high });
}

/**
 * The limits of size (m) of an inch reamer of that nominal diameter (m), to 3 in; outside refused. Straight chucking and
 * hand reamers are made over nominal: to 1/4 in +0.0001 to +0.0004, to 1 in +0.0001 to +0.0005, to 3 in +0.0002 to
 * +0.0006. Source: ASME B94.2, from memory.
 */
export function reamerLimitsInch(nominal: number): Answer<Band> {
  const row = inch.find(({ upTo }) => !isLess(upTo, nominal));
  if (!(0 < nominal) || !row)
    return notValid("the table of inch reamers is for sizes to 3 in");
  return valid({ low: nominal + row.low, high: nominal + row.high });
}

/** Up to and including this nominal size, least and greatest deviation, m. */
interface Row {
  readonly upTo: number;
  readonly low: number;
  readonly high: number;
}

const h7: readonly Row[] = [
  { upTo: 3e-3, low: 4e-6, high: 8e-6 },
  { upTo: 6e-3, low: 5e-6, high: 10e-6 },
  { upTo: 10e-3, low: 6e-6, high: 12e-6 },
  { upTo: 18e-3, low: 8e-6, high: 15e-6 },
  { upTo: 30e-3, low: 9e-6, high: 17e-6 },
  { upTo: 50e-3, low: 12e-6, high: 21e-6 },
  { upTo: 80e-3, low: 14e-6, high: 25e-6 },
];

const inch: readonly Row[] = [
  { upTo: 0.25 * 0.0254, low: 1e-4 * 0.0254, high: 4e-4 * 0.0254 },
  { upTo: 0.0254, low: 1e-4 * 0.0254, high: 5e-4 * 0.0254 },
  { upTo: 3 * 0.0254, low: 2e-4 * 0.0254, high: 6e-4 * 0.0254 },
];

/** Up to the next micrometre, but not for the noise of a product such as 0.15 × 20 µm. */
function wholeMicrometresUp(metres: number): number {
  return Math.ceil(Math.round(metres * 1e12) / 1e6) * 1e-6;
}
