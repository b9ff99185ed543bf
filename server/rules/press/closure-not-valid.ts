// The press goes past first yield, so that how far the bush's bore closes can't be worked out, and nobody has measured it yet.
import { showLength } from "../../core/quantity/show.ts";
import { allOf } from "../../model/entry.ts";
import { elasticLimitOf } from "../../model/evaluate/press-closure.ts";
import { interferenceOf, partsOf } from "../../model/evaluate/press.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { entryOf, type Shop } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { relatedPress } from "./allowed.ts";

export const closureNotValid: Rule = {
  code: "closure-not-valid",
  level: "warning",
  about: ["press"],
  check(shop, ref, entry) {
    const parts = partsOf(shop, ref);
    const limit = elasticLimitOf(shop, ref);
    const found = interferenceOf(shop, ref);
    if (parts === undefined || !limit.known || !found.known) return [];
    const { high, step } = found.value;
    if (high <= limit.value.interference) return [];
    if (parts.bore !== undefined && isRead(shop, parts.bore)) return [];
    const { system } = settings(shop);
    const what =
      limit.value.where === "bush" ? "the bush at its bore" : "the case";
    const bore = parts.bore ?? "its bore";
    return [
      {
        span: entry.nameSpan,
        message: `The interference may be ${showLength(high, system, step)}, and over ${showLength(limit.value.interference, system, step)} ${what} yields: how far the bore closes can't be worked out from there. Measure ${bore} after pressing and write it \`as pressed\`.`,
        related: relatedPress(shop, ref),
        value: high,
      },
    ];
  },
};

/** The bore has been read since it was pressed; a damaged line may be that reading. */
function isRead(shop: Shop, bore: string): boolean {
  const entry = entryOf(shop, bore);
  return (
    entry !== undefined &&
    allOf(entry, "ReadFact").some((fact) => fact.value?.stage !== "bought")
  );
}
