// A press finding's own threshold that is no length: a plain factor, or a temperature.
import { settings } from "../../model/evaluate/settings.ts";
import type { Shop } from "../../model/shop.ts";

/** `warn CODE at 1.5` or `at 150 %`; undefined where the job writes none. */
export function ownFactor(shop: Shop, code: string): number | undefined {
  const written = settings(shop, "job").warn[code];
  return written === undefined ||
    (written.dimension !== undefined && written.dimension !== "ratio")
    ? undefined
    : written.value;
}

/** `warn CODE at 300 F`, in °C; undefined where the job writes none. */
export function ownTemperature(shop: Shop, code: string): number | undefined {
  const written = settings(shop, "job").warn[code];
  return written?.dimension === "temperature" ? written.value : undefined;
}
