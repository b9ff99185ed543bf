// Steps wait for each other in a ring, so that none can ever be next.
import { orderOf } from "../../model/evaluate/order.ts";
import { given } from "../../model/entry.ts";
import type { Rule } from "../rule.ts";

export const stepLoop: Rule = {
  code: "step-loop",
  level: "error",
  about: ["step"],
  check(shop, ref, entry) {
    return orderOf(shop, "").loops.flatMap((loop) => {
      // said once, at the first step of the ring
      if (loop[0] !== ref) return [];
      const after = given(entry, "AfterFact");
      const ring = [...loop, ref].join(" waits for ");
      return [
        {
          span: after.state === "given" ? after.span : entry.nameSpan,
          message:
            loop.length === 1
              ? "This step waits for itself: take it out of its `after`."
              : `These steps can never start: ${ring}. Take one \`after\` out.`,
          related: loop
            .slice(1)
            .map((other) => ({ ref: other, message: other })),
        },
      ];
    });
  },
};
