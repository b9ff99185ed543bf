// What a record waits for: the steps that are next and what is in their way, the lines that can't be read. What is to measure is to-measure.ts's.
import { gateOf } from "../model/evaluate/gate.ts";
import { orderOf } from "../model/evaluate/order.ts";
import type { OpenFile } from "../model/project.ts";
import type { Shop } from "../model/shop.ts";
import type { OverviewItem } from "../protocol/overview.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import { standCount, standName } from "../rules/order/stands.ts";
import { plain } from "../markup/markdown.ts";
import { itemOf, placed, type View } from "./overview-item.ts";
import { stepStanding } from "./overview-standing.ts";
import { toMeasure } from "./to-measure.ts";

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
      return { ...item, detail: `waits: ${wanting.length} in the way` };
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
        : `Next: ${ref}, but ${state === "blocked" ? "it " : ""}${detail}.`;
    })
    .join(" ");
}

/** What is to be measured. */
export function toMeasureIn(view: View): readonly OverviewItem[] {
  return [...toMeasure(view.shop, view.own)].map(([ref, detail]) => ({
    id: `To measure/${ref}`,
    label: ref,
    detail: plain(detail),
    state: "to-measure" as const,
    ...placed(view, ref),
    children: [],
  }));
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
