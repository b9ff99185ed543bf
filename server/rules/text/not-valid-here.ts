// A method was asked outside the range in which it holds, and gives no number: which, and why. Said where it happens and not again where
// another result rests on it. That no film is claimed where grease or a load in shocks leaves none is as it was written, and is no finding.
import { ENTRY_KINDS } from "../../../grammar/vocabulary.ts";
import { unclaimedFilm } from "../../model/evaluate/film-facts.ts";
import { groupedBy } from "../../model/groups.ts";
import { notValidOf } from "../../model/results.ts";
import { entryOf, refOf, type Shop } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";
import { eitherOf } from "./wording.ts";

const FARTHEST = 3;

/** That is a slip in the sizes of the ring, and said there: see wall-missing. */
const NO_WALL = "has no wall";

export const notValidHere: Rule = {
  code: "not-valid-here",
  level: "information",
  about: ENTRY_KINDS,
  check(shop, ref, entry) {
    const found = notValidOf(shop, ref);
    if (found.length === 0) return [];
    const unclaimed =
      entry.kind === "fit" ? unclaimedFilm(shop, ref) : undefined;
    const kinds = groupedBy(found, (each) => each.because);
    return [...kinds].flatMap(([because, of]) =>
      because === unclaimed ||
      because.includes(NO_WALL) ||
      restsOn(shop, ref, because, FARTHEST)
        ? []
        : [
            {
              span: entry.nameSpan,
              message: `No ${eitherOf(of.map(({ kind }) => named(kind)))} is given, since the method does not hold here: ${because}.`,
            },
          ],
    );
  },
};

/** As it is said in a sentence: some are named after a person, or are letters. */
function named(kind: string): string {
  if (kind === "sommerfeld") return "Sommerfeld number";
  return kind === "pv" ? "PV" : kind.replaceAll("-", " ");
}

/** Whether an entry that this one refers to, however far, has the same to say. */
function restsOn(
  shop: Shop,
  ref: string,
  because: string,
  far: number,
): boolean {
  if (far === 0) return false;
  const refs = entryOf(shop, ref)?.refs ?? [];
  return refs.some((site) => {
    const other = refOf(shop, site);
    return (
      other !== undefined &&
      other !== ref &&
      (notValidOf(shop, other).some((each) => each.because === because) ||
        restsOn(shop, other, because, far - 1))
    );
  });
}
