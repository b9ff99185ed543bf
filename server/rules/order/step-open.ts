// What is to do next. A step that only the crib of the route has is told at the job's `follow`.
import { valueIn } from "../../model/entry.ts";
import { gateOf } from "../../model/evaluate/gate.ts";
import { orderOf } from "../../model/evaluate/order.ts";
import { nameOf } from "../../model/reference.ts";
import type { Shop } from "../../model/shop.ts";
import type { Draft, Rule } from "../rule.ts";
import { isInJob } from "./in-job.ts";
import { standCount, standName, standsAbout, type Stands } from "./stands.ts";

export const stepOpen: Rule = {
  code: "step-open",
  level: "hint",
  about: ["step", "job"],
  check(shop, ref, entry, findingsOf) {
    const draft = (step: string, span: Draft["span"]): Draft[] =>
      draftOf(shop, step, span, () => standsAbout(shop, step, findingsOf));
    if (entry.kind === "step") return draft(ref, entry.nameSpan);
    const span = valueIn(entry, "FollowFact")?.span;
    if (span === undefined) return [];
    return orderOf(shop)
      .next.filter((step) => !isInJob(shop, step))
      .flatMap((step) => draft(step, span).map((each) => ({ ...each, step })));
  },
};

function draftOf(
  shop: Shop,
  ref: string,
  span: Draft["span"],
  standsNow: () => readonly Stands[],
): Draft[] {
  const { next, steps } = orderOf(shop);
  const step = steps.find((each) => each.ref === ref);
  if (step === undefined || !next.includes(ref)) return [];
  if (step.failed)
    return [
      {
        level: "warning",
        span,
        message:
          "This step has failed and stays open: put it right, and what comes after it can go on.",
      },
    ];
  // where something is in its way, cut-unchecked says so
  const { wanting, unread } = gateOf(shop, ref);
  if (unread || 0 < wanting.length) return [];
  const name = nameOf(ref);
  const what = step.text === undefined ? name : `${name}: ${step.text}`;
  const stands = standsNow();
  return [
    {
      span,
      message: `Next is ${what}${/[.!?]$/.test(what) ? "" : "."}${stands.length === 0 ? "" : ` Look first: ${standCount(stands)}.`}`,
      related: stands.map((each) => ({
        ref: each.ref,
        message: standName(each),
      })),
    },
  ];
}
