// What a bore is before its line cuts it: roughed, or as pressed, or as its part came.
import { allOf } from "../entry.ts";
import {
  known,
  need,
  readingOf,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import type { Stage } from "../values.ts";
import { holeOfBore } from "./line-bores.ts";
import { pressedOf } from "./press-closure.ts";
import { pressOfBore } from "./press.ts";
import { readingsAt } from "./readings.ts";
import {
  hostOf,
  materialOfFeature,
  placesOf,
  sizeFromPlaces,
  type Size,
} from "./size.ts";
import { kindOf } from "../reference.ts";

/** Such a size, and whose form it is. */
export interface Before extends Size {
  /** Undefined where it is foretold. Without a stage, that entry as it is now. */
  readonly form?: { readonly ref: string; readonly stage: Stage | undefined };
}

/**
 * The bore before it is cut: read `as roughed`, else `as pressed`, else foretold from the press of its bush. A bore in a part without a
 * bush: read `as bought`, else the hole of its name in that part, as read.
 */
export const boreBeforeCut = query<Known<Before>>("before-cut", (shop, ref) => {
  const host = hostOf(shop, ref);
  if (host === undefined) return SILENT;
  const inBush = kindOf(host) === "bush";
  const read = sizeAtStages(
    shop,
    ref,
    inBush ? ["roughed", "pressed"] : ["roughed", "bought"],
  );
  if (read !== undefined) return read;
  if (inBush) return boreFromPress(shop, ref);
  const hole = holeOfBore(shop, ref);
  const entry = hole === undefined ? undefined : entryOf(shop, hole);
  if (hole !== undefined && entry !== undefined) {
    const places = placesOf(shop, hole);
    if (!places.known) return places;
    if (0 < places.value.length)
      return known({
        ...sizeFromPlaces(shop, hole, places.value),
        form: { ref: hole, stage: undefined },
      });
  }
  return unknown(readingOf(ref, " as roughed"));
});

/** A bore that no line cuts, from its press: read `as pressed`, else foretold. */
export const pressedBore = query<Known<Size>>(
  "pressed-bore",
  (shop, ref) =>
    sizeAtStages(shop, ref, ["pressed"]) ?? boreFromPress(shop, ref),
);

/** The size by the readings of the first of these stages that has any; undefined where none has. */
function sizeAtStages(
  shop: Shop,
  ref: string,
  stages: readonly Stage[],
): Known<Before> | undefined {
  const entry = entryOf(shop, ref);
  if (entry === undefined || entry.damaged) return SILENT;
  for (const stage of stages) {
    const places = readingsAt(
      shop,
      allOf(entry, "ReadFact"),
      "finished",
      [stage],
      () => materialOfFeature(shop, ref),
    );
    if (!places.known) return places;
    if (0 < places.value.length)
      return known({
        ...sizeFromPlaces(shop, ref, places.value),
        form: { ref, stage },
      });
  }
  return undefined;
}

/** What pressing leaves of the bush's bore, as a size of the bore. */
const boreFromPress = query<Known<Size>>("bore-from-press", (shop, ref) => {
  const host = hostOf(shop, ref);
  if (host === undefined) return SILENT;
  const press = pressOfBore(shop, ref);
  if (press === undefined)
    return unknown(readingOf(ref), need(host, "press", `the press of ${host}`));
  const pressed = pressedOf(shop, press);
  // why it can't be foretold is said at the press, and a reading settles it
  if (!pressed.known)
    return pressed.because === undefined
      ? pressed
      : unknown(readingOf(ref, " as pressed"));
  const { low, nominal, high, status, step, working } = pressed.value.bore;
  return known({
    low,
    nominal,
    high,
    status,
    step,
    working,
    from: "press",
    places: [],
    outOfRound: undefined,
    taper: undefined,
    budget: undefined,
    budgetNeeds: [readingOf(ref)],
  });
});
