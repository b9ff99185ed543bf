// A part has an odd number of lobes, which two points don't see and its mate does, and they take more than the fit can bear.
import { showLength } from "../../core/quantity/show.ts";
import { featureSize } from "../../model/evaluate/bore.ts";
import { lobesOf, methodWords } from "../../model/evaluate/roundness.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import { formDrafts } from "./form.ts";

export const lobed: Rule = {
  code: "lobed",
  level: "hint",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const size = featureSize(shop, ref);
    const lobes = size.known ? lobesOf(shop, ref, size.value) : undefined;
    if (lobes?.known !== true || lobes.value.form === undefined) return [];
    const { taken, form } = lobes.value;
    const { swing, step } = form;
    const at = swing.place === undefined ? "" : ` at ${swing.place}`;
    const side = entry.kind === "journal" ? "larger" : "smaller";
    return formDrafts(shop, ref, entry, {
      code: "lobed",
      span: swing.swingSpan,
      is: () =>
        `Its ${methodWords(swing)}${at} make it ${side} to its mate by ${showLength(taken, settings(shop).system, step)}`,
      value: taken,
      taken,
      look: "at more places along it",
    });
  },
};
