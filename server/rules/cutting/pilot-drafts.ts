// The pilots of a line with their places in the text, for the rules that judge them.
import { allOf, type Entry } from "../../model/entry.ts";
import {
  guidesOf,
  pilotLinesOf,
  type Guide,
  type PilotLine,
} from "../../model/evaluate/pilot.ts";
import { showRange } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { isCut } from "../../model/evaluate/stock.ts";
import type { Shop } from "../../model/shop.ts";
import type { Span } from "../../model/values.ts";
import type { DraftRelated } from "../rule.ts";

export interface PlacedPilot extends PilotLine {
  /** The pilot's name in the line. */
  readonly pilotSpan: Span;
  /** The bore that it runs in, as the line names it. */
  readonly runsInSpan: Span;
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
            runsInSpan: value.in.span,
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
  const { system } = settings(shop, "job");
  const { bore, pilot: size } = guide;
  return [
    {
      ref: pilot,
      message: `${pilot}: ${showRange(size.low, size.high, system, size.step)}`,
    },
    {
      ref: runsIn,
      message: `${runsIn}, ${bore.moment}: ${showRange(bore.low, bore.high, system, bore.step)}`,
    },
  ];
}
