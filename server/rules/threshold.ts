// A finding's threshold as the job writes it. It is read by the model, since a bush to make is held to the same ones.
import { settings } from "../model/evaluate/settings.ts";
import type { Shop } from "../model/shop.ts";

export { ownThreshold, type Threshold } from "../model/evaluate/threshold.ts";

/** A plain factor, `warn CODE at 1.5` or `at 150 %`; undefined where the job writes none. */
export function ownFactor(shop: Shop, code: string): number | undefined {
  const written = settings(shop).warn[code];
  return written === undefined ||
    (written.dimension !== undefined && written.dimension !== "ratio")
    ? undefined
    : written.value;
}

/** A temperature, `warn CODE at 300 F`, in °C; undefined where the job writes none. */
export function ownTemperature(shop: Shop, code: string): number | undefined {
  const written = settings(shop).warn[code];
  return written?.dimension === "temperature" ? written.value : undefined;
}
