// Whether a fit has the clearance that it wants can't be told: the readings are not sure enough, or a part is known only by its limits.
import { showRange, showUncertainty } from "../../core/quantity/show.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import { clearance, clearanceVerdict } from "../../model/evaluate/fit.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { neededText } from "../../model/known.ts";
import type { Rule } from "../rule.ts";
import { interferes } from "./interferes.ts";
import { relatedSizes } from "./related-sizes.ts";

export const fitUnsure: Rule = {
  code: "fit-unsure",
  level: "warning",
  about: ["fit"],
  check(shop, ref, entry) {
    const found = clearance(shop, ref);
    const want = wanted(shop, ref);
    const judged = clearanceVerdict(shop, ref);
    if (
      !found.known ||
      want?.known !== true ||
      judged?.verdict !== "unsure" ||
      interferes(found.value)
    )
      return [];
    // what is known only by its limits is still to be read: the gate says so before it matters
    if (
      found.value.journal.from === "limits" ||
      found.value.bore.from === "limits"
    )
      return [];
    const { system } = settings(shop);
    const { low, high, step, status, budgetNeeds } = found.value;
    const needs = neededText(budgetNeeds);
    const why =
      status === "predicted"
        ? `it is foretold at ${showRange(low, high, system, step)}, which reaches past that. ${found.value.bore.from === "cut" ? "A test cut in a scrap bush tells how large it comes out" : `It ${needs}`}`
        : judged.guard === undefined
          ? `the verdict is guarded, and ${needs}`
          : `${showRange(low, high, system, step)} does not keep clear of a limit by ${showUncertainty(judged.guard, system)} (k = ${judged.factor?.toFixed(2) ?? ""}), as its uncertainty asks (ISO 14253-1). Read both again with surer gauges`;
    return [
      {
        span: entry.nameSpan,
        message: `Whether the clearance is within ${showRange(want.value.low, want.value.high, system, want.value.step)} is not sure: ${why}.`,
        related: relatedSizes(shop, ref),
      },
    ];
  },
};
