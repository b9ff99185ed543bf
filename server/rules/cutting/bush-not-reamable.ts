// A line reams a bush that must not be reamed: a porous one, whose pores it closes, or a lined one, whose lining it cuts through.
import { valueIn } from "../../model/entry.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import { bushOfBore, reamerOfLine } from "../../model/evaluate/line-bores.ts";
import { materialOf } from "../../model/evaluate/material.ts";
import { entryOf, type Shop } from "../../model/shop.ts";
import type { FactRule } from "../../model/values.ts";
import type { Rule } from "../rule.ts";
import { boreSpan, relatedFact, relatedReamer } from "./at-bore.ts";

export const bushNotReamable: Rule = {
  code: "bush-not-reamable",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const reamer = reamerOfLine(shop, ref);
    if (!reamer.known || reamer.value === undefined) return [];
    return ownBores(shop, ref).flatMap((bore) => {
      const bush = bushOfBore(shop, bore);
      const found = bush === undefined ? undefined : kindOf(shop, bush);
      if (bush === undefined || found === undefined) return [];
      const message =
        found.kind === "porous"
          ? `${bush} is porous, and a reamer smears its pores shut, so that it gives no oil. Press it in over a mandrel that leaves the bore to size, or burnish it.`
          : `${bush} is lined, and a reamer cuts its thin lining away. Take a bush that is to size once pressed, or size it on a mandrel.`;
      return [
        {
          span: boreSpan(shop, entry, bore),
          message,
          related: [
            relatedFact(shop, bush, found.rule, `${bush} is ${found.kind}`),
            ...relatedReamer(shop, ref, (each) => each),
          ],
        },
      ];
    });
  },
};

/** As its construction says, else as its material is made. */
function kindOf(
  shop: Shop,
  bush: string,
): { readonly kind: "porous" | "lined"; readonly rule: FactRule } | undefined {
  const construction = valueIn(entryOf(shop, bush), "ConstructionFact");
  if (construction === "porous" || construction === "lined")
    return { kind: construction, rule: "ConstructionFact" };
  if (construction !== undefined) return undefined;
  const material = materialOf(shop, bush);
  const family = material.known ? material.value.family : undefined;
  if (family === "sintered") return { kind: "porous", rule: "MaterialFact" };
  return family === "lined"
    ? { kind: "lined", rule: "MaterialFact" }
    : undefined;
}
