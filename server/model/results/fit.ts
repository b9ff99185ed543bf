// Results of a running fit.
import { clearance, clearanceVerdict } from "../evaluate/fit.ts";
import { settings } from "../evaluate/settings.ts";
import { lengthResult, sketchOf, type Sketch } from "../make-result.ts";
import type { Shop } from "../shop.ts";
import { warmSketches } from "./warm.ts";

export function fitSketches(shop: Shop, ref: string): readonly Sketch[] {
  const where = { entry: ref, kind: "clearance" };
  return [
    sketchOf(where, "m", clearance(shop, ref), (found) =>
      lengthResult(
        where,
        settings(shop).system,
        found,
        clearanceVerdict(shop, ref)?.verdict,
      ),
    ),
    ...warmSketches(shop, ref),
  ];
}
