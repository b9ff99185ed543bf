// Two-point diameters round one place differ by more than the fit can bear.
import { outOfRound as twoPoint } from "../../core/readings/form.ts";
import { showLength } from "../../core/quantity/show.ts";
import type { PlaceReadings } from "../../model/evaluate/readings.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { sizeOf } from "../../model/evaluate/size.ts";
import type { Rule } from "../rule.ts";
import { formDrafts } from "./form.ts";
import { spanOfValues } from "./spans.ts";

export const outOfRound: Rule = {
  code: "out-of-round",
  level: "hint",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const size = sizeOf(shop, ref);
    if (!size.known || size.value.outOfRound === undefined) return [];
    const { outOfRound: value, places, step } = size.value;
    const worst = places.find((place) => differenceAt(place) === value);
    const at = worst?.place === undefined ? "" : ` at ${worst.place}`;
    return formDrafts(shop, ref, entry, {
      code: "out-of-round",
      span: spanOfValues(worst) ?? entry.nameSpan,
      is: () =>
        `Out of round by ${showLength(value, settings(shop).system, step)}${at}`,
      value,
      step,
      look: "at more angles",
    });
  },
};

function differenceAt({ readings }: PlaceReadings): number | undefined {
  const found = twoPoint(readings.flatMap((reading) => reading.values));
  return found.valid ? found.value : undefined;
}
