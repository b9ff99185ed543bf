// One line on an entry, to stand beside its name where it is offered.
import { neededText } from "../model/known.ts";
import { entrySpec } from "../../grammar/vocabulary.ts";
import { showRange } from "../core/quantity/show.ts";
import { valueIn } from "../model/entry.ts";
import { materialOf } from "../model/evaluate/material.ts";
import { stepValue } from "../model/evaluate/order.ts";
import { settings } from "../model/evaluate/settings.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import { resultsOf } from "../model/results.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import { VERDICT_WORDS } from "../model/result-kinds.ts";
import { gaugeSummary, reamerSize, shippedWhat } from "./hover-crib.ts";

/** One line on an entry: its size and verdict, or what it is. */
export function detailOf(shop: Shop, ref: string): string {
  switch (kindOf(ref)) {
    case "gauge":
      return gaugeSummary(shop, ref);
    case "reamer":
      return reamerSize(shop, ref);
    case "material":
    case "oil":
      return `${shippedWhat(ref) ?? ""}${shippedWhat(ref) === undefined ? "" : "; "}written in the record`;
    case "part":
    case "bush": {
      const material =
        kindOf(ref) === "bush"
          ? materialOfFeature(shop, ref)
          : materialOf(shop, ref);
      return material.known ? nameOf(material.value.ref) : "";
    }
    case "pilot":
      return pilotDetail(shop, ref);
    case "step":
      return stepValue(shop, ref).text ?? firstResult(shop, ref);
    default:
      return firstResult(shop, ref);
  }
}

function pilotDetail(shop: Shop, ref: string): string {
  const entry = entryOf(shop, ref);
  const { system } = settings(shop);
  const od = valueIn(entry, "OdFact");
  const length = valueIn(entry, "LengthFact");
  return [
    od === undefined ? "" : `od ${showRange(od.low, od.high, system, od.step)}`,
    length === undefined
      ? ""
      : `length ${showRange(length.low, length.high, system, length.step)}`,
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/** "0.87428 to 0.87435 in, measured, in tolerance" */
function firstResult(shop: Shop, ref: string): string {
  const [result] = resultsOf(shop, ref);
  if (result === undefined) return entrySpec(kindOf(ref))?.means ?? "";
  if (result.kind === "ready") return result.text;
  if (result.status === "unknown")
    return result.needs.length === 0
      ? "unknown"
      : `unknown: ${neededText(result.needs)}`;
  return [result.text, result.status, VERDICT_WORDS[result.verdict]]
    .filter((part) => part !== "")
    .join(", ");
}
