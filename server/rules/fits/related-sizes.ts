// The two halves of a fit, to stand under its findings.
import { showRange } from "../../core/quantity/show.ts";
import { featureSize } from "../../model/evaluate/bore.ts";
import { namedIn } from "../../model/evaluate/index-of.ts";
import { lobesOf, lobesTake } from "../../model/evaluate/roundness.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Shop } from "../../model/shop.ts";
import type { DraftRelated } from "../rule.ts";

/** The journal and the bore with the sizes that were used. */
export function relatedSizes(shop: Shop, fit: string): readonly DraftRelated[] {
  const { system } = settings(shop);
  return namedIn(shop, fit).flatMap((ref) => {
    if (ref === undefined) return [];
    const size = featureSize(shop, ref);
    if (!size.known) return [];
    const { low, high, step, status } = size.value;
    const lobes = lobesOf(shop, ref, size.value);
    const take = lobes.known ? lobesTake(lobes.value, system) : "";
    const taken = take === "" ? "" : `; ${take}`;
    return [
      {
        ref,
        message: `${ref}: ${showRange(low, high, system, step)}, ${status}${taken}`,
      },
    ];
  });
}
