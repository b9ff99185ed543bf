// Results of a step.
import { orderOf } from "../evaluate/order.ts";
import { reasonsOf, waitsOfStep } from "../evaluate/step-waits.ts";
import { SILENT } from "../known.ts";
import {
  numberResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

export function stepSketches(shop: Shop, ref: string): readonly Sketch[] {
  return [sketch("ready", undefined, () => stepResults(shop, ref))];
}

function stepResults(shop: Shop, ref: string): readonly Result[] {
  const order = orderOf(shop);
  const step = order.steps.find((each) => each.ref === ref);
  if (step === undefined) return [];
  const where = { entry: ref, kind: "ready" };
  const waits = waitsOfStep(shop, step);
  const reasons = reasonsOf(waits);
  // what can't be read is said where it stands: the step is neither ready nor known to wait
  if (!step.done && waits.unread && reasons.length === 0)
    return [unknownResult(where, "1", SILENT)];
  const ready = !step.done && reasons.length === 0 ? 1 : 0;
  const text = step.done
    ? "done"
    : ready === 1
      ? "next"
      : `waits: ${reasons.map((each) => each.text).join("; ")}`;
  return [
    numberResult(
      where,
      "1",
      { low: ready, nominal: ready, high: ready },
      {
        status: "measured",
        text,
        needs: step.done
          ? []
          : waits.wanting.map(({ ref: wants, fact, text: why }) => ({
              ref: wants,
              fact,
              text: why,
            })),
      },
    ),
  ];
}
