// Results of a running fit.
import { clearance, clearanceVerdict } from "../evaluate/fit.ts";
import { settings } from "../evaluate/settings.ts";
import { lengthResult, unknownResult } from "../make-result.ts";
import type { Result } from "../result.ts";
import { type Shop } from "../shop.ts";
import { warmResults } from "./warm.ts";

export function fitResults(shop: Shop, ref: string): readonly Result[] {
  const { system } = settings(shop, "job");
  const found = clearance(shop, ref);
  if (!found.known)
    return [
      unknownResult({ entry: ref, kind: "clearance" }, "m", found),
      ...warmResults(shop, ref),
    ];
  return [
    lengthResult(
      { entry: ref, kind: "clearance" },
      system,
      found.value,
      clearanceVerdict(shop, ref)?.verdict,
    ),
    ...warmResults(shop, ref),
  ];
}
