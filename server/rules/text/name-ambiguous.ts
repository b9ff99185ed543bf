// A name without its kind that several entries have, each of a kind that the place takes.
import { ENTRY_KINDS } from "../../../grammar/vocabulary.ts";
import { resolve } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { oneOf, writeInstead } from "./wording.ts";

export const nameAmbiguous: Rule = {
  code: "name-ambiguous",
  level: "error",
  about: ENTRY_KINDS,
  check(shop, _, entry) {
    return entry.refs.flatMap((site) => {
      const found = resolve(shop, site);
      if (found.state !== "ambiguous") return [];
      return [
        {
          span: site.span,
          message: `\`${site.name}\` names more than one entry: write ${oneOf(found.refs)}.`,
          related: found.refs.map((ref) => ({
            ref,
            message: `${ref} is here.`,
          })),
          fixes: writeInstead(site.span, found.refs),
        },
      ];
    });
  },
};
