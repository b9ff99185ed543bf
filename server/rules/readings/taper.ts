// The places of a journal or bore differ along its length by more than the fit can bear.
import { showLength } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { sizeOf } from "../../model/evaluate/size.ts";
import type { Rule } from "../rule.ts";
import { formDrafts } from "./form.ts";
import { spanOfValues } from "./spans.ts";

export const taper: Rule = {
  code: "taper",
  level: "hint",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const size = sizeOf(shop, ref);
    if (!size.known || size.value.taper === undefined) return [];
    const { places, step } = size.value;
    const { difference, largestAt, smallestAt } = size.value.taper;
    // taper counts the named places alone
    const named = places.filter((place) => place.place !== undefined);
    const [largest, smallest] = [named[largestAt], named[smallestAt]];
    if (largest?.place === undefined || smallest?.place === undefined)
      return [];
    return formDrafts(shop, ref, entry, {
      code: "taper",
      span: spanOfValues(largest) ?? entry.nameSpan,
      is: () =>
        `The taper is ${showLength(difference, settings(shop).system, step)}, larger at ${largest.place} than at ${smallest.place}`,
      value: difference,
      step,
      look: "at more places along it",
    });
  },
};
