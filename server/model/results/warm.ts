// Results of a running fit warm and cold, one a line of `hot` or `cold`.
import { showRange } from "../../core/quantity/show.ts";
import {
  coldCases,
  hotCases,
  type Warm,
  type WarmCase,
} from "../evaluate/press-hot.ts";
import { settings } from "../evaluate/settings.ts";
import { numberResult, unknownResult } from "../make-result.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

export function warmResults(shop: Shop, fit: string): readonly Result[] {
  const { system } = settings(shop, "job");
  const resultOf = (kind: string, { number, found }: WarmCase): Result => {
    const where = { entry: fit, kind, case: number };
    if (!found.known) return unknownResult(where, "m", found);
    const { low, high, step, status, verdict, working } = found.value;
    return numberResult(where, "m", found.value, {
      status,
      verdict,
      working,
      text: `${showRange(low, high, system, step)}${letGo(found.value)}`,
    });
  };
  return [
    ...hotCases(shop, fit).map((each) => resultOf("hot-clearance", each)),
    ...coldCases(shop, fit).map((each) => resultOf("cold-clearance", each)),
  ];
}

function letGo({ released }: Warm): string {
  if (released === "no") return "";
  return released === "yes"
    ? ", the bush loose in its hole"
    : ", the bush perhaps loose in its hole";
}
