// The end of a journal reaches the ledge that the reamer leaves at the bottom of a blind bore.
import { showLength, type System } from "../../core/quantity/show.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import { ledgeFoulsOf, type Fouling } from "../../model/evaluate/ledge.ts";
import { holeOfBore } from "../../model/evaluate/line-bores.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { boreSpan, relatedFact, relatedReamer } from "./at-bore.ts";

export const ledgeFouls: Rule = {
  code: "ledge-fouls",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    return ownBores(shop, ref).flatMap((bore) =>
      ledgeFoulsOf(shop, bore).map((found) => {
        const { journal, reaches, foul } = found;
        const hole = holeOfBore(shop, bore);
        return {
          span: boreSpan(shop, entry, bore),
          message: `${journal} reaches ${showLength(reaches, system)} into ${bore}, ${showLength(foul.by, system)} past where the reamer cuts to size, and fouls the ledge that is left there. Ways out: ${waysOut(found, system)}.`,
          related: [
            relatedFact(
              shop,
              journal,
              "ReachesFact",
              `reaches ${showLength(reaches, system)}`,
            ),
            ...(hole === undefined
              ? []
              : [relatedFact(shop, hole, "DepthFact", `the depth of ${hole}`)]),
            ...relatedReamer(
              shop,
              ref,
              (reamer) => `chamfer and point of ${reamer}`,
            ),
          ],
          value: foul.by,
        };
      }),
    );
  },
};

function waysOut({ foul }: Fouling, system: System): string {
  const { waysOut: ways } = foul;
  if (ways === undefined) return "";
  const show = (value: number): string => showLength(value, system);
  return [
    `relieve the ledge to ${show(ways.relieve.diameter)} over its last ${show(ways.relieve.length)}`,
    ...(ways.leadAtMost === undefined
      ? []
      : [
          `finish with a bottoming reamer of chamfer and point together no longer than ${show(ways.leadAtMost)}`,
        ]),
    `shorten the journal by ${show(ways.shorten)}`,
    `deepen the hole by ${show(ways.deepen)}`,
  ]
    .map((way, index) => `(${String(index + 1)}) ${way}`)
    .join("; ");
}
