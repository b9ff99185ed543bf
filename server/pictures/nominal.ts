// The nominal size behind limits that were written as a size and a class: a record keeps the limits alone.
import { classZones, parseClass } from "../core/fits/class-words.ts";
import type { Feature } from "../core/fits/limits.ts";
import { metresToTenths } from "../core/quantity/exact.ts";
import type { LengthRange } from "../model/values.ts";

/**
 * The size in m whose class gives these limits; undefined where no class is written, or where limits near the end of a size step leave
 * none that gives them again. Deviations are looked up at the limit and at the size found, and must agree to 0.1 nm.
 */
export function nominalOf(
  range: LengthRange,
  feature: Feature,
): number | undefined {
  const { className, low, high } = range;
  const read = className === undefined ? undefined : parseClass(className);
  if (read?.valid !== true) return undefined;
  const zoneAt = (size: number) => {
    const zones = classZones(size, read.value);
    return zones.valid
      ? zones.value.find((zone) => zone.feature === feature)
      : undefined;
  };
  for (const guess of [low, high]) {
    const near = zoneAt(guess);
    if (near === undefined) continue;
    const size = low - near.lowerDeviation;
    const zone = zoneAt(size);
    if (
      zone !== undefined &&
      metresToTenths(zone.lower) === metresToTenths(low) &&
      metresToTenths(zone.upper) === metresToTenths(high)
    )
      return size;
  }
  return undefined;
}
