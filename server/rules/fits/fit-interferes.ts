// A running fit has no clearance at its tightest place: the journal will not go in, or will seize.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { clearance } from "../../model/evaluate/fit.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { interferes } from "./interferes.ts";
import { showExcess } from "../show-excess.ts";
import { slipOf } from "./slip-of-fit.ts";
import { relatedSizes } from "./related-sizes.ts";

export const fitInterferes: Rule = {
  code: "fit-interferes",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const found = clearance(shop, ref);
    if (!found.known || !interferes(found.value)) return [];
    const { low, atBest, step, status } = found.value;
    const isMeasured = status === "measured";
    const { system } = settings(shop);
    const slip = slipOf(found.value);
    const short =
      metresToTenths(atBest.least) === 0
        ? "no clearance"
        : `an interference of ${showExcess(-atBest.least, system, step)}${isMeasured ? "" : " at least"}`;
    return [
      {
        span: entry.nameSpan,
        message:
          slip !== ""
            ? `There ${isMeasured ? "is" : "will be"} ${short}${slip}. Look at both sizes before any metal goes.`
            : isMeasured
              ? `There is ${short} at the tightest place: a running fit needs clearance. Do not force the shaft in.`
              : `There will be ${short}: a running fit needs clearance. Make the bore larger before it is cut, or the journal smaller.`,
        related: relatedSizes(shop, ref),
        value: low,
      },
    ];
  },
};
