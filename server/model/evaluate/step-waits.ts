// What a step waits for: the steps before it, and what is in the way of what it cuts or presses.
import type { Shop } from "../shop.ts";
import { gateOf, type Wanting } from "./gate.ts";
import { orderOf, type Step } from "./order.ts";

export interface StepWaits {
  /** The steps that are to be done before it, as far as they can be read. */
  readonly before: readonly string[];
  readonly wanting: readonly Wanting[];
  /** A line that it hangs on can't be read, which is said there. */
  readonly unread: boolean;
}

export function waitsOfStep(shop: Shop, step: Step): StepWaits {
  const { wanting, unread } = gateOf(shop, step.ref);
  const before = orderOf(shop).steps.filter(
    (each) => step.after.includes(each.ref) && !each.done,
  );
  return {
    before: before.flatMap((each) => (each.unread ? [] : each.ref)),
    wanting,
    unread: step.unread || unread || before.some((each) => each.unread),
  };
}

/** Each thing that it waits for, with the entry that it stands in. */
export function reasonsOf({
  before,
  wanting,
}: StepWaits): readonly { readonly ref: string; readonly text: string }[] {
  return [
    ...before.map((ref) => ({ ref, text: `${ref} to be done` })),
    ...wanting.map(({ ref, text }) => ({ ref, text })),
  ];
}
