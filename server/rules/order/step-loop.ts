// Steps wait for each other in a ring, so that none can ever be next.
import { allOf, valueIn, type Entry } from "../../model/entry.ts";
import { orderOf, routeSteps } from "../../model/evaluate/order.ts";
import { refOf, type Shop } from "../../model/shop.ts";
import type { Span } from "../../model/values.ts";
import { lineAsComment } from "../fixes.ts";
import type { DraftFix, Rule } from "../rule.ts";
import { isInJob } from "./in-job.ts";

export const stepLoop: Rule = {
  code: "step-loop",
  level: "error",
  about: ["step", "job"],
  check(shop, ref, entry) {
    return orderOf(shop).loops.flatMap((loop) => {
      // said once: at the first step of the ring that the job writes, and at its `follow` where it writes none
      const at = loop.findIndex((each) => isInJob(shop, each));
      const isHere = at === -1 ? entry.kind === "job" : loop[at] === ref;
      if (!isHere) return [];
      const ring = at === -1 ? loop : [...loop.slice(at), ...loop.slice(0, at)];
      const [first = ref, second = first] = ring;
      const route =
        routeSteps(shop).length === 0 ? "" : ", or change the route";
      const span =
        entry.kind === "job"
          ? valueIn(entry, "FollowFact")?.span
          : spanOfWait(shop, entry, second);
      return [
        {
          span: span ?? entry.nameSpan,
          message:
            ring.length === 1
              ? "This step waits for itself: take it out of its `after`."
              : `These steps can never start: ${[...ring, first].join(" waits for ")}. Take one \`after\` out${route}.`,
          related: ring
            .filter((other) => other !== ref)
            .map((other) => ({ ref: other, message: other })),
          fixes: entry.kind === "job" ? [] : withoutWait(shop, entry, second),
        },
      ];
    });
  },
};

/** Takes a step out of an `after`, and the whole line where it was alone in it. */
function withoutWait(
  shop: Shop,
  entry: Entry,
  step: string,
): readonly DraftFix[] {
  for (const { value, span } of allOf(entry, "AfterFact")) {
    const sites = value ?? [];
    const at = sites.findIndex((site) => refOf(shop, site) === step);
    const site = sites[at];
    if (site === undefined) continue;
    const [before, after] = [sites[at - 1], sites[at + 1]];
    return [
      {
        title: `Wait no longer for ${step}`,
        safe: false,
        edits: [
          before !== undefined
            ? { span: { ...site.span, start: before.span.end }, text: "" }
            : after !== undefined
              ? { span: { ...site.span, end: after.span.start }, text: "" }
              : lineAsComment(span),
        ],
      },
    ];
  }
  return [];
}

/** Where an entry says that it comes after a step; undefined where only the route does. */
function spanOfWait(shop: Shop, entry: Entry, step: string): Span | undefined {
  return allOf(entry, "AfterFact")
    .flatMap(({ value }) => value ?? [])
    .find((site) => refOf(shop, site) === step)?.span;
}
