// A service limit that a part passes as it is made: wear begins where the limits end, so that one of the two is a slip.
import { showLength, showRange } from "../../core/quantity/show.ts";
import { given } from "../../model/entry.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { isWithinLimits } from "../../model/evaluate/wear.ts";
import type { Rule } from "../rule.ts";

export const serviceLimitWithin: Rule = {
  code: "service-limit-within",
  level: "error",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const service = given(entry, "ServiceLimitFact");
    const limits = given(entry, "LimitsFact");
    if (
      service.state !== "given" ||
      limits.state !== "given" ||
      !isWithinLimits(entry)
    )
      return [];
    const { system } = settings(shop);
    const isJournal = entry.kind === "journal";
    const { low, high, step } = limits.value;
    const at = isJournal ? service.value.low : service.value.high;
    return [
      {
        span: service.span,
        message: `The service limit ${showLength(at, system, service.value.step)} is ${isJournal ? "over the least" : "under the most"} that the limits ${showRange(low, high, system, step)} allow, so that ${ref} could be worn as it is made. ${isJournal ? "A journal wears smaller" : `A ${entry.kind} wears larger`}: correct one of the two.`,
        related: [{ ref, span: limits.span, message: `limits of ${ref}` }],
      },
    ];
  },
};
