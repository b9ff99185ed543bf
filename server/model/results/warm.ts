// Results of a running fit warm and cold, one a line of `hot` or `cold`.
import { showRange } from "../../core/quantity/show.ts";
import {
  coldCases,
  hotCases,
  type Warm,
  type WarmCase,
} from "../evaluate/press-hot.ts";
import { settings } from "../evaluate/settings.ts";
import {
  numberResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

export function warmSketches(shop: Shop, fit: string): readonly Sketch[] {
  const resultOf = (kind: string, { number, found }: WarmCase): Result => {
    const where = { entry: fit, kind, case: number };
    if (!found.known) return unknownResult(where, "m", found);
    const { system } = settings(shop);
    const { low, high, step, status, verdict, working } = found.value;
    return numberResult(where, "m", found.value, {
      status,
      verdict,
      working,
      text: `${showRange(low, high, system, step)}${letGo(found.value)}`,
      step,
    });
  };
  const sketchOf = (kind: string, each: WarmCase): Sketch =>
    sketch(kind, each.found, () => resultOf(kind, each));
  return [
    ...hotCases(shop, fit).map((each) => sketchOf("hot-clearance", each)),
    ...coldCases(shop, fit).map((each) => sketchOf("cold-clearance", each)),
  ];
}

function letGo({ released }: Warm): string {
  if (released === "no") return "";
  return released === "yes"
    ? ", the bush loose in its hole"
    : ", the bush perhaps loose in its hole";
}
