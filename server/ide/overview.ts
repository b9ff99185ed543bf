// A record at a glance: what is next and what is in its way, what is to measure, and every entry grouped as a shop would, each with how it
// stands in words. How one entry stands is overview-standing.ts, what the record waits for overview-waiting.ts.
import type { EntryKind } from "../../grammar/vocabulary.ts";
import { valueIn } from "../model/entry.ts";
import { namedIn } from "../model/evaluate/index-of.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { groupedBy } from "../model/groups.ts";
import type { OpenFile } from "../model/project.ts";
import type { Finding } from "../model/result.ts";
import { entryOf, openingEntry, isFirstOfName } from "../model/shop.ts";
import type {
  Overview,
  OverviewCounts,
  OverviewItem,
} from "../protocol/overview.ts";
import { findingsIn } from "../rules/check.ts";
import { plain } from "../markup/markdown.ts";
import { levelOf, type Levels } from "./levels.ts";
import { itemOf, type View } from "./overview-item.ts";
import { resultLines } from "./overview-standing.ts";
import { nextIn, nextText, toMeasureIn, unreadIn } from "./overview-waiting.ts";
import { kindOf } from "../model/reference.ts";

/** Groups of entries by kind, in the order of the work, then what a crib holds. */
const GROUPS: readonly (readonly [string, readonly EntryKind[]])[] = [
  ["Parts", ["part", "journal", "hole", "bush", "bore"]],
  ["Press fits", ["press"]],
  ["Running fits", ["fit"]],
  ["Lines", ["line"]],
  ["Stacks", ["stack"]],
  ["Steps", ["step"]],
  ["Concessions", ["concession"]],
  ["Reamers", ["reamer"]],
  ["Pilots", ["pilot"]],
  ["Gauges", ["gauge"]],
  ["Materials", ["material"]],
  ["Oils", ["oil"]],
  ["Routes", ["route"]],
  ["Lessons", ["lesson"]],
];

/** What is judged, and so counts as in, out or unsure. */
const JUDGED: ReadonlySet<string> = new Set<EntryKind>([
  "journal",
  "hole",
  "bore",
  "press",
  "fit",
  "line",
  "stack",
]);

/**
 * @param levels what the user has set for findings: what is off counts for nothing
 * @param uriOf the address by which whoever asks knows a path
 */
export function overviewOf(
  open: OpenFile,
  levels: Levels,
  uriOf: (path: string) => string,
): Overview {
  const { shop, file } = open;
  const own = file.entries.filter(({ ref }, index) =>
    isFirstOfName(shop, ref, index),
  );
  const view: View = { shop, own, findings: byEntry(open, levels), uriOf };
  const opening = openingEntry(shop);
  const items = GROUPS.map(([label, kinds]) => groupOf(view, label, kinds));
  const toMeasure = toMeasureIn(view);
  const unread = unreadIn(open, view);
  const counts = countsOf(items, toMeasure.length, unread.length);
  return {
    name: opening?.ref ?? "",
    title: valueIn(opening, "TitleFact") ?? "",
    counts,
    summary: summaryOf(counts),
    next: plain(nextText(shop)),
    groups: [
      grouped("Next", nextIn(view)),
      grouped("To measure", toMeasure),
      grouped("Can't be read", unread),
      ...items,
    ].filter(({ children }) => 0 < children.length),
  };
}

/** What more there is to say of an entry than its line does: its results and its findings, a line each, for a person. */
export function overviewMore(
  open: OpenFile,
  levels: Levels,
  ref: string,
): readonly string[] {
  const found = byEntry(open, levels).get(ref) ?? [];
  const lines = [
    ...(entryOf(open.shop, ref) === undefined
      ? []
      : resultLines(open.shop, ref)),
    ...found.map(({ level, message }) => `${level}: ${message}`),
  ];
  return lines.map(plain);
}

function byEntry(
  open: OpenFile,
  levels: Levels,
): ReadonlyMap<string, readonly Finding[]> {
  const shown = findingsIn(open).flatMap((finding): readonly Finding[] => {
    const level = levelOf(finding, levels);
    return level === "off" ? [] : [{ ...finding, level }];
  });
  return groupedBy(shown, ({ entry }) => entry ?? undefined);
}

function groupOf(
  view: View,
  label: string,
  kinds: readonly EntryKind[],
): OverviewItem {
  if (label === "Parts") return grouped(label, partsIn(view, kinds));
  // a job has the steps of its route, too
  const steps = label === "Steps" ? orderOf(view.shop).steps : [];
  const refs =
    0 < steps.length
      ? steps.map(({ ref }) => ref)
      : view.own.flatMap(({ kind, ref }) =>
          kind !== undefined && kinds.includes(kind) ? ref : [],
        );
  return grouped(
    label,
    refs.map((ref) => itemOf(view, label, ref)),
  );
}

function grouped(
  label: string,
  children: readonly OverviewItem[],
): OverviewItem {
  const count = children.length === 0 ? "" : String(children.length);
  return { id: label, label, detail: count, children };
}

/** Parts with what is on and in them, however deep. */
function partsIn(
  view: View,
  kinds: readonly EntryKind[],
): readonly OverviewItem[] {
  const { shop, own } = view;
  const refs = own.flatMap(({ kind, ref }) =>
    kind !== undefined && kinds.includes(kind) ? ref : [],
  );
  const isOwn = new Set(refs);
  const hostOf = (ref: string): string | undefined => {
    const host = kindOf(ref) === "part" ? undefined : namedIn(shop, ref)[0];
    return host !== undefined && isOwn.has(host) ? host : undefined;
  };
  const held = groupedBy(refs, hostOf);
  const nested = (ref: string): OverviewItem =>
    itemOf(view, "Parts", ref, (held.get(ref) ?? []).map(nested));
  return refs.filter((ref) => hostOf(ref) === undefined).map(nested);
}

function countsOf(
  groups: readonly OverviewItem[],
  toMeasure: number,
  unread: number,
): OverviewCounts {
  const counts = { in: 0, out: 0, unsure: 0, toMeasure, faults: unread };
  const count = ({ label, state, children }: OverviewItem): void => {
    children.forEach(count);
    if (state === "fault") counts.faults++;
    if (!JUDGED.has(kindOf(label))) return;
    if (state === "in" || state === "out" || state === "unsure")
      counts[state]++;
  };
  groups.forEach(count);
  return counts;
}

/** What is not there is not said; nothing at all is. */
function summaryOf(counts: OverviewCounts): string {
  const parts = [
    [counts.out, "out"],
    [counts.unsure, "unsure"],
    [counts.toMeasure, "to measure"],
    // "1 in" reads as an inch
    [counts.in, "in tolerance"],
    [counts.faults, counts.faults === 1 ? "fault" : "faults"],
  ] as const;
  const said = parts.flatMap(([count, word]) =>
    count === 0 ? [] : `${count} ${word}`,
  );
  return said.length === 0 ? "nothing to judge" : said.join(", ");
}
