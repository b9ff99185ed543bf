// What hot-tight, hot-loose, cold-tight and cold-loose share: the clearance of each line against `want-hot`, else only whether any is left.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { judgeAtBest } from "../../model/evaluate/at-best.ts";
import { clearance } from "../../model/evaluate/fit.ts";
import {
  coldCases,
  hotCases,
  wantedWarm,
  type Warm,
} from "../../model/evaluate/press-hot.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { When } from "../../model/evaluate/warm-bore.ts";
import type { Shop } from "../../model/shop.ts";
import { interferes } from "../fits/interferes.ts";
import { relatedSizes } from "../fits/related-sizes.ts";
import type { Draft } from "../rule.ts";
import { showExcess } from "../show-excess.ts";

export function warmDrafts(
  shop: Shop,
  fit: string,
  when: When,
  fault: "tight" | "loose",
): readonly Draft[] {
  const cases = when === "hot" ? hotCases(shop, fit) : coldCases(shop, fit);
  return cases.flatMap(({ span, found }): readonly Draft[] => {
    if (!found.known) return [];
    const text = sentence(shop, fit, when, fault, found.value);
    return text === undefined
      ? []
      : [
          {
            span,
            message: text,
            related: relatedSizes(shop, fit),
            value: fault === "tight" ? found.value.low : found.value.high,
          },
        ];
  });
}

function sentence(
  shop: Shop,
  fit: string,
  when: When,
  fault: "tight" | "loose",
  warm: Warm,
): string | undefined {
  const { system } = settings(shop);
  const { low, high, status, step } = warm;
  const want = wantedWarm(shop, fit);
  const at20 = clearance(shop, fit);
  if (want?.known === false || !at20.known) return undefined;
  const isMeasured = status === "measured";
  const cure =
    fault === "tight"
      ? "Open out the bore or size the journal down, or keep the two nearer in temperature."
      : "Use a smaller bore, or keep the two nearer in temperature.";
  const { least, most } = warm.atBest;
  if (want === undefined) {
    // without a band, only that nothing is left; a fit that has nothing at 20 °C is fit-interferes
    if (
      fault === "loose" ||
      interferes(at20.value) ||
      0 < metresToTenths(least)
    )
      return undefined;
    return `When ${when} no clearance is left: ${showLength(-least, system, step)} of interference at the ${isMeasured ? "tightest" : "loosest that is foretold"}. The journal will seize. ${cure}`;
  }
  const limits =
    fault === "tight" ? { low: want.value.low } : { high: want.value.high };
  const { budget } = at20.value;
  if (judgeAtBest(shop, warm, limits, budget).verdict !== "out")
    return undefined;
  const by =
    fault === "tight" ? want.value.low - least : most - want.value.high;
  return `When ${when} the clearance is ${isMeasured ? "" : "foretold at "}${showRange(low, high, system, step)} and ${showRange(want.value.low, want.value.high, system, want.value.step)} is wanted: ${showExcess(by, system, step)} too ${fault === "tight" ? "little" : "much"}${isMeasured ? "" : " at least"}. ${cure}`;
}
