// The least clearance of a fit is under what it wants.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showRange } from "../../core/quantity/show.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import { clearance, clearanceVerdict } from "../../model/evaluate/fit.ts";
import { namedIn } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { interferes } from "./interferes.ts";
import { showExcess } from "../show-excess.ts";
import { relatedSizes } from "./related-sizes.ts";

export const fitTight: Rule = {
  code: "fit-tight",
  level: "error",
  about: ["fit"],
  check(shop, ref, entry) {
    const found = clearance(shop, ref);
    const want = wanted(shop, ref);
    if (
      !found.known ||
      want?.known !== true ||
      interferes(found.value) ||
      clearanceVerdict(shop, ref)?.verdict !== "out"
    )
      return [];
    const { low, high, step, status, bore } = found.value;
    const end = found.value.atBest.least;
    if (metresToTenths(want.value.low) <= metresToTenths(end)) return [];
    const { system } = settings(shop);
    const short = showExcess(want.value.low - end, system, step);
    const [journalRef = "the journal", boreRef = "the bore"] = namedIn(
      shop,
      ref,
    );
    const isLooseToo =
      metresToTenths(want.value.high) < metresToTenths(found.value.atBest.most);
    const cure = isLooseToo
      ? `It is loose elsewhere: true ${journalRef} and ${boreRef} up first`
      : bore.from === "cut"
        ? `Cut ${boreRef} larger, or size ${journalRef} down`
        : `Open out ${boreRef}, or size ${journalRef} down`;
    const isMeasured = status === "measured";
    const verb = isMeasured ? "is" : "is foretold at";
    const lacks = isMeasured
      ? `it lacks ${short} at the tightest place`
      : `it will lack ${short} at least`;
    return [
      {
        span: entry.nameSpan,
        message: `The clearance ${verb} ${showRange(low, high, system, step)} and ${showRange(want.value.low, want.value.high, system, want.value.step)} is wanted: ${lacks}. ${cure}.`,
        related: relatedSizes(shop, ref),
        value: low,
      },
    ];
  },
};
