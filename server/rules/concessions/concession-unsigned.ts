// A concession lacks what makes it one: who signed it, when, or up to what value.
import { concessionOf } from "../../model/evaluate/concessions.ts";
import { given } from "../../model/entry.ts";
import { canBeAllowed } from "../figures.ts";
import type { Rule } from "../rule.ts";
import { allOf } from "../text/wording.ts";

export const concessionUnsigned: Rule = {
  code: "concession-unsigned",
  level: "error",
  about: ["concession"],
  check(shop, ref, entry) {
    const concession = concessionOf(shop, ref);
    // what no signature can accept is concession-idle's
    if (concession === undefined || !canBeAllowed(concession.code)) return [];
    const { who, date, bound } = concession;
    const missing = [
      ...(who === undefined ? ["who signed it"] : []),
      ...(date === undefined ? ["the day"] : []),
      ...(bound === undefined ? ["up to what value"] : []),
    ];
    if (missing.length === 0) return [];
    const why = given(entry, "WhyFact");
    const todo =
      who === undefined || date === undefined
        ? 'write `why "…" by NAME on DATE`'
        : "write `up to` and the value that is still good enough";
    return [
      {
        span: why.state === "given" ? why.span : entry.nameSpan,
        message: `This concession does not say ${allOf(missing)}, so it accepts nothing: ${todo}.`,
      },
    ];
  },
};
