// A pilot does not go into the bore that it is to run in.
import { showLength, showRange } from "../../core/quantity/show.ts";
import { lobesTake } from "../../model/evaluate/roundness.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { guidingPilots, otherPilots, relatedPilot } from "./pilot-drafts.ts";

export const pilotTight: Rule = {
  code: "pilot-tight",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    return guidingPilots(shop, ref, entry).flatMap((each) => {
      const { guide, pilot, runsIn } = each;
      if (guide.entry === "goes") return [];
      const { bore, slack, step } = guide;
      // two sizes that are read are what they are; one that is foretold may still turn out well
      const sure = guide.entry === "will-not-go" || guide.status === "measured";
      const lacks = showLength(-slack.low, system, step);
      const take = lobesTake(bore.lobes, system);
      return [
        {
          level: sure ? ("error" as const) : ("warning" as const),
          span: each.pilotSpan,
          message: `${pilot} ${sure ? "does not" : "may not"} go into ${runsIn}, ${bore.moment}: the pilot is ${showRange(guide.pilot.low, guide.pilot.high, system, step)} and the bore ${showRange(bore.low, bore.high, system, step)}${take === "" ? "" : `, of which ${take}`}, up to ${lacks} too small. Take a smaller pilot or turn this one down${sure ? "" : ", or measure the bore first"}.`,
          related: relatedPilot(shop, each),
          value: -slack.low,
          fixes: otherPilots(
            shop,
            ref,
            each,
            (other) => other.entry === "goes",
          ),
        },
      ];
    });
  },
};
