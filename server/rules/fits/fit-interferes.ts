// A running fit has no clearance at its tightest place: the journal will not go in, or will seize.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength } from "../../core/quantity/show.ts";
import { clearance } from "../../model/evaluate/fit.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { relatedSizes } from "./related-sizes.ts";

export const fitInterferes: Rule = {
  code: "fit-interferes",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const found = clearance(shop, ref);
    if (!found.known) return [];
    const { low, high, step, status } = found.value;
    // limits that may or may not clear each other are no finding until one of them is read
    const end = status === "measured" ? low : high;
    if (0 < metresToTenths(end)) return [];
    const { system } = settings(shop, "job");
    const short =
      metresToTenths(low) === 0
        ? "no clearance"
        : `an interference of ${showLength(-low, system, step)}`;
    return [
      {
        span: entry.nameSpan,
        message: `There is ${short} at the tightest place${status === "measured" ? "" : ", foretold"}: a running fit needs clearance. Do not force the shaft in.`,
        related: relatedSizes(shop, ref),
        value: low,
      },
    ];
  },
};
