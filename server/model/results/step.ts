// Results of a step.
import { gateOf } from "../evaluate/gate.ts";
import { orderOf } from "../evaluate/order.ts";
import { numberResult } from "../make-result.ts";
import type { Result } from "../result.ts";
import { type Shop } from "../shop.ts";

export function stepResults(shop: Shop, ref: string): readonly Result[] {
  const order = orderOf(shop, "");
  const step = order.steps.find((each) => each.ref === ref);
  if (step === undefined) return [];
  const gate = gateOf(shop, ref);
  const isNext = order.next.includes(ref);
  const ready = isNext && gate.length === 0 ? 1 : 0;
  const waits = step.after.filter((before) =>
    order.steps.some((each) => each.ref === before && !each.done),
  );
  const reasons = [
    ...waits.map((each) => `${each} to be done`),
    ...gate.map((each) => each.text),
  ];
  const text = step.done
    ? "done"
    : ready === 1
      ? "ready"
      : `waits: ${reasons.join("; ")}`;
  return [
    numberResult(
      { entry: ref, kind: "ready" },
      "1",
      { low: ready, nominal: ready, high: ready },
      {
        status: "measured",
        text,
        needs: step.done
          ? []
          : gate.map((each) => ({
              ref: each.ref,
              fact: each.fact,
              text: each.text,
            })),
      },
    ),
  ];
}
