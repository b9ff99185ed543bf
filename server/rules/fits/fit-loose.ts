// The most clearance of a fit is over what it wants.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showRange } from "../../core/quantity/show.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import { clearance, clearanceVerdict } from "../../model/evaluate/fit.ts";
import { namedIn } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { showExcess } from "../show-excess.ts";
import { slipOf } from "./slip-of-fit.ts";
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
    const { low, high, step, status, bore } = found.value;
    const end = found.value.atBest.most;
    if (metresToTenths(end) <= metresToTenths(want.value.high)) return [];
    const { system } = settings(shop);
    const over = showExcess(end - want.value.high, system, step);
    const [journalRef = "the journal", boreRef = "the bore"] = namedIn(
      shop,
      ref,
    );
    const isTightToo =
      metresToTenths(found.value.atBest.least) < metresToTenths(want.value.low);
    const slip = slipOf(found.value);
    const cure = isTightToo
      ? `It is tight elsewhere: true ${journalRef} and ${boreRef} up first`
      : bore.from === "readings"
        ? `Make ${boreRef} new, or build ${journalRef} up`
        : `Cut ${boreRef} smaller, or build ${journalRef} up`;
    const isMeasured = status === "measured";
    const verb = isMeasured ? "is" : "is foretold at";
    const tooMuch = isMeasured
      ? `${over} too much at the loosest place`
      : `it will be ${over} too much at least`;
    return [
      {
        span: entry.nameSpan,
        message: `The clearance ${verb} ${showRange(low, high, system, step)} and ${showRange(want.value.low, want.value.high, system, want.value.step)} is wanted: ${tooMuch}${slip === "" ? `. ${cure}.` : `${slip}. Look at both sizes before any metal goes.`}`,
        related: relatedSizes(shop, ref),
        value: high,
      },
    ];
  },
};
