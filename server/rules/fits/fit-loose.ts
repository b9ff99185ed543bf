// The most clearance of a fit is over what it wants.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import {
  clearance,
  clearanceVerdict,
  wanted,
} from "../../model/evaluate/fit.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { relatedSizes } from "./related-sizes.ts";

export const fitLoose: Rule = {
  code: "fit-loose",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const found = clearance(shop, ref);
    const want = wanted(shop, ref);
    if (
      !found.known ||
      want?.known !== true ||
      clearanceVerdict(shop, ref)?.verdict !== "out"
    )
      return [];
    const { low, high, step, status } = found.value;
    // what is read is loose where it is loosest; what is foretold, only where it is sure to be
    const end = status === "measured" ? high : low;
    if (metresToTenths(end) <= metresToTenths(want.value.high)) return [];
    const { system } = settings(shop, "job");
    const over = showLength(end - want.value.high, system, step);
    const verb = status === "measured" ? "is" : "is foretold at";
    return [
      {
        span: entry.nameSpan,
        message: `The clearance ${verb} ${showRange(low, high, system, step)} and ${showRange(want.value.low, want.value.high, system, want.value.step)} is wanted: ${over} too much. Use a smaller bore, or build the journal up.`,
        related: relatedSizes(shop, ref),
        value: high,
      },
    ];
  },
};
