// The gate: metal is about to be cut, or was, while a figure that it hangs on is missing or out.
import { gateOf } from "../../model/evaluate/gate.ts";
import { doneSpan, orderOf, stepValue } from "../../model/evaluate/order.ts";
import type { Rule } from "../rule.ts";

export const cutUnchecked: Rule = {
  code: "cut-unchecked",
  level: "error",
  about: ["step"],
  check(shop, ref, entry) {
    const step = stepValue(shop, ref);
    const isNext = orderOf(shop).next.includes(ref);
    if (!step.done && !isNext) return [];
    const { wanting } = gateOf(shop, ref);
    if (wanting.length === 0) return [];
    const what = 0 < step.cuts.length ? "Don't cut yet" : "Don't press yet";
    const list = wanting.map((each) => each.text).join("; ");
    const span = step.done ? doneSpan(entry) : undefined;
    return [
      {
        span: span ?? entry.nameSpan,
        message: step.done
          ? `This is done, though ${list}. Put that right before the work goes on.`
          : `${what}: ${list}.`,
        related: wanting.map((each) => ({ ref: each.ref, message: each.text })),
      },
    ];
  },
};
