// A finding's threshold as the job writes it. What is a length or a share is the model's to read, since a bush to make and a ledge are held to the same ones.
import { settings } from "../model/evaluate/settings.ts";
import type { Shop } from "../model/shop.ts";

export { ownLength, ownThreshold } from "../model/evaluate/threshold.ts";

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
