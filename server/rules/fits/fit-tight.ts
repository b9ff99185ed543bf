// The least clearance of a fit is under what it wants.
import { showLength, showRange } from "../../core/quantity/show.ts";
import {
  clearance,
  clearanceVerdict,
  wanted,
} from "../../model/evaluate/fit.ts";
import { namedIn } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { metresToTenths } from "../../core/quantity/exact.ts";
import type { Rule } from "../rule.ts";
import { relatedSizes } from "./related-sizes.ts";

export const fitTight: Rule = {
  code: "fit-tight",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const found = clearance(shop, ref);
    const want = wanted(shop, ref);
    if (!found.known || want?.known !== true) return [];
    // no clearance at all is fit-interferes
    if (metresToTenths(found.value.low) <= 0) return [];
    if (clearanceVerdict(shop, ref)?.verdict !== "out") return [];
    const end =
      found.value.status === "measured" ? found.value.low : found.value.high;
    if (metresToTenths(want.value.low) <= metresToTenths(end)) return [];
    const { system } = settings(shop, "job");
    const { low, high, step } = found.value;
    const short = showLength(want.value.low - low, system, step);
    const [, bore] = namedIn(shop, ref);
    const verb = found.value.status === "measured" ? "is" : "is foretold at";
    return [
      {
        span: entry.nameSpan,
        message: `The clearance ${verb} ${showRange(low, high, system, step)} and ${showRange(want.value.low, want.value.high, system, want.value.step)} is wanted: it lacks ${short} at the tightest place. Open out ${bore ?? "the bore"} or size the journal down.`,
        related: relatedSizes(shop, ref),
        value: low,
      },
    ];
  },
};
