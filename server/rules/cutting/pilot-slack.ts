// A pilot has so much slack that the cut may wander by more than the fit can bear.
import { isPilotSlack, pilotOffsetShare } from "../../core/line/pilot.ts";
import { metresToTenths } from "../../core/quantity/exact.ts";
import {
  showLength,
  showRange,
  showWritten,
} from "../../core/quantity/show.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import { fitsOfBore } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Shop } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { ownThreshold } from "../threshold.ts";
import { guidingPilots, otherPilots, relatedPilot } from "./pilot-drafts.ts";

export const pilotSlack: Rule = {
  code: "pilot-slack",
  level: "warning",
  about: ["line"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    return guidingPilots(shop, ref, entry).flatMap((each) => {
      const { guide, pilot, runsIn, guides } = each;
      // one that may not go in is pilot-tight's
      if (guide.entry !== "goes") return [];
      const over = limitPassed(shop, guides, guide.high);
      if (over === undefined) return [];
      const { step } = guide;
      return [
        {
          span: each.pilotSpan,
          message: `${pilot} has ${showRange(guide.slack.low, guide.slack.high, system, step)} of slack in ${runsIn}, ${guide.bore.moment}, so ${guides} may be cut up to ${showLength(guide.high, system, step)} off its axis, over ${over.text}. Take a closer pilot, or one that is guided nearer to the cut.`,
          related: [
            ...relatedPilot(shop, each),
            ...(over.fit === undefined
              ? []
              : [{ ref: over.fit, message: over.fit }]),
          ],
          value: guide.high,
          fixes: otherPilots(
            shop,
            ref,
            each,
            (other) =>
              other.entry === "goes" &&
              limitPassed(shop, guides, other.high) === undefined,
          ),
        },
      ];
    });
  },
};

/** What the offset passes: the job's own length, else a share of the narrowest clearance that is wanted of the bore. */
function limitPassed(
  shop: Shop,
  bore: string,
  offset: number,
): { readonly text: string; readonly fit: string | undefined } | undefined {
  const { system } = settings(shop);
  const own = ownThreshold(shop, "pilot-slack");
  if (own !== undefined && "length" in own) {
    return metresToTenths(offset) <= metresToTenths(own.length)
      ? undefined
      : {
          text: `the job's ${showWritten(own.length, system)}`,
          fit: undefined,
        };
  }
  const share = own?.share ?? pilotOffsetShare;
  for (const fit of fitsOfBore(shop, bore)) {
    const want = wanted(shop, fit);
    if (want?.known !== true || !isPilotSlack(offset, want.value, share))
      continue;
    const width = want.value.high - want.value.low;
    return {
      text: `${(100 * share).toFixed(0)} % of the ${showLength(width, system, want.value.step)} between the least and the most clearance that ${fit} wants`,
      fit,
    };
  }
  return undefined;
}
