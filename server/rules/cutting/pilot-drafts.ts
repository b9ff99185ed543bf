// The pilots of a line with their places in the text, for the rules that judge them.
import { allOf, type Entry } from "../../model/entry.ts";
import {
  guidesOf,
  guideWith,
  pilotLinesOf,
  type Guide,
  type PilotLine,
} from "../../model/evaluate/pilot.ts";
import { showRange } from "../../core/quantity/show.ts";
import { lobesTake } from "../../model/evaluate/roundness.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { isCut } from "../../model/evaluate/stock.ts";
import { refsOfKind, type Shop } from "../../model/shop.ts";
import type { RefSite, Span } from "../../model/values.ts";
import { MOST_OFFERED, nameInstead } from "../fixes.ts";
import type { DraftFix, DraftRelated } from "../rule.ts";

export interface PlacedPilot extends PilotLine {
  /** The pilot's name in the line. */
  readonly pilotSpan: Span;
  readonly pilotSite: RefSite;
  /** The bore that it runs in, as the line names it. */
  readonly runsInSpan: Span;
  readonly runsInSite: RefSite;
}

export function placedPilots(
  shop: Shop,
  line: string,
  entry: Entry,
): readonly PlacedPilot[] {
  const facts = allOf(entry, "LinePilotFact");
  return pilotLinesOf(shop, line).flatMap((each) => {
    const value = facts[each.index]?.value;
    return value === undefined
      ? []
      : [
          {
            ...each,
            pilotSpan: value.pilot.span,
            pilotSite: value.pilot,
            runsInSpan: value.in.span,
            runsInSite: value.in,
          },
        ];
  });
}

/** The pilots whose guiding is worked out and still to come: a bore that is cut and read needs none. */
export function guidingPilots(
  shop: Shop,
  line: string,
  entry: Entry,
): readonly (PlacedPilot & { readonly guide: Guide })[] {
  const guides = guidesOf(shop, line);
  const lines = pilotLinesOf(shop, line);
  return placedPilots(shop, line, entry).flatMap((each) => {
    const at = lines.findIndex((one) => one.index === each.index);
    const found = guides[at];
    return found?.known === true && !isCut(shop, each.guides)
      ? [{ ...each, guide: found.value }]
      : [];
  });
}

/** The pilot and the bore that it runs in, with the sizes that were used. */
export function relatedPilot(
  shop: Shop,
  { pilot, runsIn, guide }: PlacedPilot & { readonly guide: Guide },
): readonly DraftRelated[] {
  const { system } = settings(shop);
  const { bore, pilot: size } = guide;
  const take = lobesTake(bore.lobes, system);
  return [
    {
      ref: pilot,
      message: `${pilot}: ${showRange(size.low, size.high, system, size.step)}`,
    },
    {
      ref: runsIn,
      message: `${runsIn}, ${bore.moment}: ${showRange(bore.low, bore.high, system, bore.step)}${take === "" ? "" : `; ${take}`}`,
    },
  ];
}

/** The crib's other pilots that would serve in this one's place, those that let the cut wander least first. */
export function otherPilots(
  shop: Shop,
  line: string,
  each: PlacedPilot,
  serves: (guide: Guide) => boolean,
): readonly DraftFix[] {
  return refsOfKind(shop, "pilot")
    .flatMap((ref) => {
      const found =
        ref === each.pilot ? undefined : guideWith(shop, line, each, ref);
      return found?.known === true && serves(found.value)
        ? [{ ref, offset: found.value.high }]
        : [];
    })
    .sort((a, b) => a.offset - b.offset)
    .slice(0, MOST_OFFERED)
    .map(({ ref }) => nameInstead(each.pilotSite, ref, `Take ${ref}`));
}
