// The shims to put into a chain so that its end float is as wanted. The chain itself is chain.ts.
import { metresToTenths, tenthsToMetres } from "../quantity/exact.ts";
import { notValid, valid, type Answer } from "../answer.ts";
import { isBand, type Band } from "../quantity/band.ts";

export interface ShimChoice {
  /** Thickest first, m; empty where the float is right without any. */
  readonly shims: readonly number[];
  readonly sum: number;
  /** The float with them in. */
  readonly float: Band;
}

/** A pack of more shims than this is springy and picks up dirt; common practice, no source. */
const mostShims = 6;

/**
 * Shims, repeats allowed, that bring the whole float (both ends of its band) within `want`. Rules, in this order: fewest
 * shims; the middle of the float nearest to the middle of `want`; the lesser sum, which leaves more float; the pack
 * whose thickest shim is thickest, then the next. All in m; judged to a tenth of a nanometre, ends included.
 * Refuses reversed limits, shims that are not positive, more than 30 sizes, a float wider than `want`, and says so
 * where no pack of up to six will do.
 */
export function chooseShims(
  float: Band,
  want: Band,
  sizes: readonly number[],
): Answer<ShimChoice> {
  if (!isBand(float) || !isBand(want))
    return notValid("limits are reversed or missing");
  const ticks = [...new Set(sizes.map(metresToTenths))].sort((a, b) => b - a);
  if (!ticks.every((size) => 0 < size && Number.isFinite(size)))
    return notValid("a shim's thickness is missing or not positive");
  if (30 < ticks.length)
    return notValid("there are more shim sizes than can be tried");
  // A pack does when float.high − sum ≤ want.high and want.low ≤ float.low − sum.
  const least = metresToTenths(float.high) - metresToTenths(want.high);
  const greatest = metresToTenths(float.low) - metresToTenths(want.low);
  if (greatest < least)
    return notValid(
      "the float varies by more than is wanted, and no shim narrows it",
    );
  const best = (least + greatest) / 2;
  for (let count = 0; count <= mostShims; count++) {
    const packs = packsWithin(ticks, count, least, greatest);
    const choice = packs.sort(
      (a, b) =>
        Math.abs(total(a) - best) - Math.abs(total(b) - best) ||
        total(a) - total(b),
    )[0];
    if (choice === undefined) continue;
    const sum = tenthsToMetres(total(choice));
    return valid({
      shims: choice.map(tenthsToMetres),
      sum,
      float: { low: float.low - sum, high: float.high - sum },
    });
  }
  return notValid(
    "no pack of the shims there are brings the float within what is wanted",
  );
}

/**
 * All packs of `count` whose sum lies between the bounds, thickest first in each, packs with the thicker first shim first (the
 * sort above keeps that order among equals). `ticks` is sorted falling; branches that cannot reach the bounds are cut.
 */
function packsWithin(
  ticks: readonly number[],
  count: number,
  least: number,
  greatest: number,
): number[][] {
  if (count === 0) return least <= 0 && 0 <= greatest ? [[]] : [];
  const thinnest = ticks.at(-1) ?? Infinity;
  return ticks.flatMap((first, i) => {
    if (first * count < least || greatest < first + thinnest * (count - 1))
      return [];
    return packsWithin(
      ticks.slice(i),
      count - 1,
      least - first,
      greatest - first,
    ).map((rest) => [first, ...rest]);
  });
}

function total(pack: readonly number[]): number {
  return pack.reduce((sum, shim) => sum + shim, 0);
}
