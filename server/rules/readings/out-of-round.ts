// Two-point diameters round one place differ by more than the fit can bear.
import { sizeOf } from "../../model/evaluate/size.ts";
import type { Rule } from "../rule.ts";
import { formDrafts } from "./form.ts";

export const outOfRound: Rule = {
  code: "out-of-round",
  level: "hint",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const size = sizeOf(shop, ref);
    if (!size.known || size.value.outOfRound === undefined) return [];
    return formDrafts(
      shop,
      ref,
      entry,
      "out-of-round",
      size.value.outOfRound,
      size.value.step,
    );
  },
};
