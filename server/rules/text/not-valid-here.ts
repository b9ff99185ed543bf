// A method was asked outside the range in which it holds, and gives no number: which, and why. Said where it happens and not again where
// another result rests on it.
import { ENTRY_KINDS } from "../../../grammar/vocabulary.ts";
import { resultsOf } from "../../model/results.ts";
import { entryOf, refOf, type Shop } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";

const PREFIX = "not valid here, because ";
const FARTHEST = 3;

export const notValidHere: Rule = {
  code: "not-valid-here",
  level: "information",
  about: ENTRY_KINDS,
  check(shop, ref, entry) {
    const kinds = new Map<string, string[]>();
    for (const { kind, text, status } of resultsOf(shop, ref)) {
      if (status !== "unknown" || !text.startsWith(PREFIX)) continue;
      const because = text.slice(PREFIX.length);
      kinds.set(because, [...(kinds.get(because) ?? []), kind]);
    }
    return [...kinds].flatMap(([because, of]) =>
      restsOn(shop, ref, because, FARTHEST)
        ? []
        : [
            {
              span: entry.nameSpan,
              message: `No ${[...new Set(of)].map((kind) => kind.replaceAll("-", " ")).join(" or ")} is given, since the method does not hold here: ${because}.`,
            },
          ],
    );
  },
};

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
      (resultsOf(shop, other).some(({ text }) => text === PREFIX + because) ||
        restsOn(shop, other, because, far - 1))
    );
  });
}
