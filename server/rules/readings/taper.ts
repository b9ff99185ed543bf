// The places of a journal or bore differ along its length by more than the fit can bear.
import { sizeOf } from "../../model/evaluate/size.ts";
import type { Rule } from "../rule.ts";
import { formDrafts } from "./form.ts";

export const taper: Rule = {
  code: "taper",
  level: "hint",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const size = sizeOf(shop, ref);
    if (!size.known || size.value.taper === undefined) return [];
    return formDrafts(
      shop,
      ref,
      entry,
      "taper",
      size.value.taper.difference,
      size.value.step,
    );
  },
};
