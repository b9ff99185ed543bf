// A step is done before one that it comes after.
import { doneSpan, orderOf, stepValue } from "../../model/evaluate/order.ts";
import type { Rule } from "../rule.ts";

export const stepEarly: Rule = {
  code: "step-early",
  level: "error",
  about: ["step"],
  check(shop, ref, entry) {
    const step = stepValue(shop, ref);
    const span = doneSpan(entry);
    if (!step.done || span === undefined) return [];
    const { steps } = orderOf(shop);
    return step.after.flatMap((before) => {
      const other = steps.find((each) => each.ref === before);
      if (other === undefined || other.unread) return [];
      const related = [{ ref: before, message: before }];
      if (!other.done) {
        const state = other.failed ? "has failed" : "is not done";
        return [
          {
            span,
            message: `This is done, and ${before}, which it comes after, ${state}. Do that first, or correct the order.`,
            related,
          },
        ];
      }
      if (
        step.date === undefined ||
        other.date === undefined ||
        other.date <= step.date
      )
        return [];
      return [
        {
          span,
          message: `This was done on ${step.date}, before ${before} on ${other.date}, which it comes after.`,
          related,
        },
      ];
    });
  },
};
