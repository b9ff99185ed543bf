// A pilot is to run in the very bore that it guides the cut of: it would lose its guide as the cut goes on.
import { ownBores } from "../../model/evaluate/index-of.ts";
import { MOST_OFFERED, nameInstead } from "../fixes.ts";
import type { Rule } from "../rule.ts";
import { placedPilots } from "./pilot-drafts.ts";

export const pilotInCutBore: Rule = {
  code: "pilot-in-cut-bore",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    return placedPilots(shop, ref, entry).flatMap((each) =>
      each.runsIn === each.guides
        ? [
            {
              span: each.runsInSpan,
              message: `${each.pilot} would run in ${each.runsIn} and guide the cut of that same bore. Let it run in another bore of the line, one that stays as it is meanwhile.`,
              related: [
                { ref: each.pilot, message: each.pilot },
                { ref: each.runsIn, message: "the bore being cut" },
              ],
              fixes: ownBores(shop, ref)
                .filter((bore) => bore !== each.guides)
                .slice(0, MOST_OFFERED)
                .map((bore) =>
                  nameInstead(each.runsInSite, bore, `Run it in ${bore}`),
                ),
            },
          ]
        : [],
    );
  },
};
