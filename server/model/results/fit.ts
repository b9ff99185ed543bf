// Results of a running fit.
import { clearance, clearanceVerdict } from "../evaluate/fit.ts";
import { settings } from "../evaluate/settings.ts";
import {
  lengthResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import { type Shop } from "../shop.ts";
import { warmSketches } from "./warm.ts";

export function fitSketches(shop: Shop, ref: string): readonly Sketch[] {
  const found = clearance(shop, ref);
  const where = { entry: ref, kind: "clearance" };
  return [
    sketch(where.kind, found, () =>
      found.known
        ? lengthResult(
            where,
            settings(shop, "job").system,
            found.value,
            clearanceVerdict(shop, ref)?.verdict,
          )
        : unknownResult(where, "m", found),
    ),
    ...warmSketches(shop, ref),
  ];
}
