// A reamer with straight flutes meets a groove that runs the same way: each flute drops into it and chatters.
import { valueIn } from "../../model/entry.ts";
import {
  bushOfBore,
  reamerOfLine,
  reamerTool,
} from "../../model/evaluate/line-bores.ts";
import { entryOf } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { boreSpan, ownBores, relatedFact } from "./at-bore.ts";

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
        },
      ];
    });
  },
};
