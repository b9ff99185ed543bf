// What a record waits for: the steps that are next and what is in their way, what is to measure, the lines that can't be read.
import { given, type Entry } from "../model/entry.ts";
import { gateOf } from "../model/evaluate/gate.ts";
import { pressesOfBush } from "../model/evaluate/index-of.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { readingOf } from "../model/known.ts";
import type { OpenFile } from "../model/project.ts";
import type { Need } from "../model/result.ts";
import { resultsOf } from "../model/results.ts";
import type { Shop } from "../model/shop.ts";
import type { OverviewItem } from "../protocol/overview.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import { standCount, standName } from "../rules/order/stands.ts";
import { plain } from "../markup/markdown.ts";
import { itemOf, placed, type View } from "./overview-item.ts";
import {
  isFeature,
  standingOf,
  stepStanding,
  withoutName,
  type Standing,
} from "./overview-standing.ts";

/** What can be done now, or could but for what is in its way. */
export function nextIn(view: View): readonly OverviewItem[] {
  const { shop } = view;
  return orderOf(shop).next.map((ref) => {
    const wanting = gateOf(shop, ref).wanting.map(({ ref: wants, text }) => ({
      id: `Next/${ref}/${text}`,
      label: plain(text),
      detail: "",
      state: "blocked" as const,
      ...placed(view, wants),
      children: [],
    }));
    const stands = standsAgainst(shop, ref);
    const item = itemOf(view, "Next", ref, [
      ...wanting,
      ...stands.map((each, index) => ({
        id: `Next/${ref}/${standName(each)}/${String(index)}`,
        label: standName(each),
        detail: plain(`${each.level}: ${each.message}`),
        state: "look-first" as const,
        ...placed(view, each.ref),
        children: [],
      })),
    ]);
    // a line each below says what
    if (item.state === "blocked" && 0 < wanting.length)
      return { ...item, detail: `not yet: ${wanting.length} in the way` };
    return item.state === "look-first"
      ? { ...item, detail: `look first: ${standCount(stands)}` }
      : item;
  });
}

export function nextText(shop: Shop): string {
  const { steps, next } = orderOf(shop);
  if (steps.length === 0) return "";
  if (steps.every((step) => step.done)) return "All steps are done.";
  if (next.length === 0) return "No step can be done next.";
  return next
    .map((ref) => {
      const { state, detail } = stepStanding(shop, ref);
      return state === "ready"
        ? `Next: ${ref}.`
        : `Next: ${ref}, but ${detail}.`;
    })
    .join(" ");
}

/** Features without the reading that they should have, then what else a result waits for a reading of. */
export function toMeasureIn(view: View): readonly OverviewItem[] {
  const { shop, own } = view;
  const standings = new Map<string, Standing>();
  for (const { ref } of own) {
    if (isFeature(ref)) standings.set(ref, standingOf(shop, ref, []));
  }
  const found = new Map<string, string>();
  for (const entry of own) {
    const { ref } = entry;
    const standing = standings.get(ref);
    if (standing?.state === "to-measure")
      found.set(ref, standing.expected ?? "no reading yet");
    if (entry.kind === "bush" && lacksSize(shop, entry))
      found.set(ref, "its od: no limits, no reading");
  }
  for (const [ref, need] of readingsNeeded(view)) {
    const standing = standings.get(ref);
    // what is cut and read is past being read as roughed; what is to be cut is read as it is before
    if (
      !found.has(ref) &&
      (standing === undefined || standing.state === "to-cut")
    )
      found.set(ref, withoutName(need.text, ref));
  }
  return [...found].map(([ref, detail]) => ({
    id: `To measure/${ref}`,
    label: ref,
    detail: plain(detail),
    state: "to-measure" as const,
    ...placed(view, ref),
    children: [],
  }));
}

/** The readings that results wait for, by the entry that is to be read: the first that says more than that it be read, where one does. */
function readingsNeeded({ shop, own }: View): ReadonlyMap<string, Need> {
  const needed = new Map<string, Need>();
  for (const { ref } of own)
    for (const { kind, status, needs } of resultsOf(shop, ref)) {
      // an uncertainty waits for a gauge to be named and not for a reading
      if (status !== "unknown" || kind === "uncertainty") continue;
      for (const need of needs) {
        const before = needed.get(need.ref);
        if (need.fact === "read" && (before === undefined || isAny(before)))
          needed.set(need.ref, need);
      }
    }
  return needed;
}

/** Any reading of the entry will do, as it is now. */
function isAny({ ref, text }: Need): boolean {
  return text === readingOf(ref).text;
}

/** A press asks for the bush's od; a bush that no press names needs none. */
function lacksSize(shop: Shop, entry: Entry): boolean {
  return (
    !entry.damaged &&
    0 < pressesOfBush(shop, entry.ref).length &&
    given(entry, "OdFact").state === "absent" &&
    !entry.facts.some(({ rule }) => rule === "BushReadFact")
  );
}

/** Entries whose opening line says nothing; a name that can be made out stands under its kind as well. */
export function unreadIn(
  { file }: OpenFile,
  { uriOf }: View,
): readonly OverviewItem[] {
  return file.entries.flatMap((entry, index): readonly OverviewItem[] => {
    const [head] = entry.block.lines;
    const isUnread =
      entry.block.opens && (entry.damaged || entry.kind === undefined);
    if (!isUnread || head === undefined) return [];
    const line = file.lines.starts[index] ?? 0;
    return [
      {
        id: `Can't be read/${head.body}/${index}`,
        label: head.body.slice(0, 80),
        detail: `line ${line + 1}`,
        state: "unread",
        place: {
          uri: uriOf(file.path),
          line,
          start: head.indent,
          end: head.indent + head.body.length,
        },
        children: [],
      },
    ];
  });
}
