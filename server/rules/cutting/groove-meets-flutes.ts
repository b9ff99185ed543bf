// A reamer with straight flutes meets a groove that runs the same way: each flute drops into it and chatters.
import { given, valueIn, type Entry } from "../../model/entry.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import {
  bushOfBore,
  holeOfBore,
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
    const bores = ownBores(shop, ref);
    const blind = bores.map((bore) => blindHole(shop, bore)).find(Boolean);
    return bores.flatMap((bore) => {
      const bush = bushOfBore(shop, bore);
      if (
        bush === undefined ||
        valueIn(entryOf(shop, bush), "GrooveFact") !== "lengthwise"
      )
        return [];
      return [
        {
          span: boreSpan(shop, entry, bore),
          message: `The flutes of ${tool} are straight and the groove of ${bush} runs lengthwise: they drop into it, chatter, and cut out of round. ${wayOut(blind)}`,
          related: [
            relatedFact(shop, bush, "GrooveFact", `the groove of ${bush}`),
            relatedFact(shop, tool, "FlutesFact", `the flutes of ${tool}`),
          ],
          fixes: spiralReamers(
            shop,
            ref,
            entry,
            blind === undefined ? "left" : "right",
          ),
        },
      ];
    });
  },
};

/** Any spiral bridges the groove; its hand is the one that takes the chips out: ahead through an open bore, back from a bottom. */
function wayOut(blind: string | undefined): string {
  return blind === undefined
    ? "Take a reamer with left-hand spiral flutes, or groove the bush after it is reamed."
    : `Groove the bush after it is reamed, or take a reamer with right-hand spiral flutes and hold it back as it feeds, since they pull in: left-hand ones push the chips to the bottom of ${blind}.`;
}

/** The hole of a bore, where it has a bottom. */
function blindHole(shop: Shop, bore: string): string | undefined {
  const hole = holeOfBore(shop, bore);
  const entry = hole === undefined ? undefined : entryOf(shop, hole);
  const depth = entry === undefined ? undefined : given(entry, "DepthFact");
  return depth?.state === "given" && depth.value.bottom === "blind"
    ? hole
    : undefined;
}

/** The reamers of the crib with spiral flutes of a hand that serve the line, best first. */
function spiralReamers(
  shop: Shop,
  line: string,
  entry: Entry,
  hand: "left" | "right",
): readonly DraftFix[] {
  const ranking = cribRankingOf(shop, line);
  const site = valueIn(entry, "ReamFact");
  if (!ranking.known || site === undefined) return [];
  return ranking.value.crib
    .flatMap(({ reamer, ranked }) =>
      reamer !== undefined &&
      ranked.serves &&
      reamerTool(shop, reamer)?.flutes?.hand === hand
        ? [reamer]
        : [],
    )
    .slice(0, MOST_OFFERED)
    .map((reamer) => nameInstead(site, reamer, `Ream with ${reamer}`));
}
