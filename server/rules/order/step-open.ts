// What is to do next.
import { gateOf } from "../../model/evaluate/gate.ts";
import { orderOf } from "../../model/evaluate/order.ts";
import type { Rule } from "../rule.ts";

export const stepOpen: Rule = {
  code: "step-open",
  level: "hint",
  about: ["step"],
  check(shop, ref, entry) {
    const { next, steps } = orderOf(shop, "");
    const step = steps.find((each) => each.ref === ref);
    // where something is in its way, cut-unchecked says so
    if (
      step === undefined ||
      !next.includes(ref) ||
      0 < gateOf(shop, ref).length
    )
      return [];
    if (step.failed)
      return [
        {
          level: "warning",
          span: entry.nameSpan,
          message:
            "This step has failed and stays open: put it right, and what comes after it can go on.",
        },
      ];
    return [
      {
        span: entry.nameSpan,
        message: `Next: ${step.text ?? ref.slice("step ".length)}`,
      },
    ];
  },
};
