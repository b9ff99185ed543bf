// A reamer with straight flutes meets a groove that runs the same way: each flute drops into it and chatters.
import { valueIn, type Entry } from "../../model/entry.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import {
  bushOfBore,
  reamerOfLine,
  reamerTool,
} from "../../model/evaluate/line-bores.ts";
import { entryOf, type Shop } from "../../model/shop.ts";
import { cribRankingOf } from "../../model/evaluate/window.ts";
import { MOST_OFFERED, nameInstead } from "../fixes.ts";
import type { DraftFix, Rule } from "../rule.ts";
import { boreSpan, relatedFact } from "./at-bore.ts";

export const grooveMeetsFlutes: Rule = {
  code: "groove-meets-flutes",
  level: "warning",
  about: ["line"],
  check(shop, ref, entry) {
    const reamer = reamerOfLine(shop, ref);
    if (!reamer.known || reamer.value === undefined) return [];
    const tool = reamer.value;
    if (reamerTool(shop, tool)?.flutes?.hand !== "straight") return [];
    return ownBores(shop, ref).flatMap((bore) => {
      const bush = bushOfBore(shop, bore);
      if (
        bush === undefined ||
        valueIn(entryOf(shop, bush), "GrooveFact") !== "lengthwise"
      )
        return [];
      return [
        {
          span: boreSpan(shop, entry, bore),
          message: `The flutes of ${tool} are straight and the groove of ${bush} runs lengthwise: they drop into it, chatter, and cut out of round. Take a reamer with left-hand spiral flutes, or groove the bush after it is reamed.`,
          related: [
            relatedFact(shop, bush, "GrooveFact", `the groove of ${bush}`),
            relatedFact(shop, tool, "FlutesFact", `the flutes of ${tool}`),
          ],
          fixes: spiralReamers(shop, ref, entry),
        },
      ];
    });
  },
};

/** The reamers of the crib with left-hand spiral flutes that serve the line, best first. */
function spiralReamers(
  shop: Shop,
  line: string,
  entry: Entry,
): readonly DraftFix[] {
  const ranking = cribRankingOf(shop, line);
  const site = valueIn(entry, "ReamFact");
  if (!ranking.known || site === undefined) return [];
  return ranking.value.crib
    .flatMap(({ reamer, ranked }) =>
      reamer !== undefined &&
      ranked.serves &&
      reamerTool(shop, reamer)?.flutes?.hand === "left"
        ? [reamer]
        : [],
    )
    .slice(0, MOST_OFFERED)
    .map((reamer) => nameInstead(site, reamer, `Ream with ${reamer}`));
}
