// The outside diameter and the bore of a bush as bought: read, else its limits. What pressing makes of them is press-closure.ts's.
import { allOf, given } from "../entry.ts";
import {
  known,
  need,
  readingOf,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import { readingsAt } from "./readings.ts";
import {
  materialOfFeature,
  sizeFromPlaces,
  sizeOfLimits,
  type Size,
} from "./size.ts";

export const bushOd = query<Known<Size>>("bush-od", (shop, ref) =>
  sideOf(shop, ref, "od"),
);
export const bushId = query<Known<Size>>("bush-id", (shop, ref) =>
  sideOf(shop, ref, "id"),
);

function sideOf(shop: Shop, ref: string, side: "od" | "id"): Known<Size> {
  const entry = entryOf(shop, ref);
  if (entry === undefined || entry.damaged) return SILENT;
  const facts = allOf(entry, "BushReadFact");
  // a damaged line may have been of either side
  if (facts.some((fact) => fact.value === undefined)) return SILENT;
  const places = readingsAt(
    shop,
    facts.filter((fact) => fact.value?.side === side),
    "bought",
    ["bought"],
    () => materialOfFeature(shop, ref),
  );
  if (!places.known) return places;
  if (0 < places.value.length) {
    const size = sizeFromPlaces(shop, ref, places.value);
    return known({
      ...size,
      working: size.working.map((step, index) =>
        index === 0
          ? {
              ...step,
              formula: `${side}, as bought = least, mean and largest of the readings at 20 °C`,
            }
          : step,
      ),
    });
  }
  const limits = given(entry, side === "od" ? "OdFact" : "IdFact");
  if (limits.state === "damaged") return SILENT;
  if (limits.state === "absent")
    return unknown(need(ref, side, `the ${side} of ${ref}`));
  return known(
    sizeOfLimits(
      shop,
      limits.value,
      `${side}, as bought = its limits, until it is read`,
      readingOf(ref, "", `the ${side} of ${ref}`),
    ),
  );
}
