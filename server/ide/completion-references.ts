// Which entries fit a place, best first, each with what is known of it: those that nothing uses yet before those that have their mate.
import {
  ENTRY_KINDS,
  entrySpec,
  type EntryKind,
} from "../../grammar/vocabulary.ts";
import { materials, type Family } from "../core/materials/material.ts";
import { oils } from "../core/materials/oils.ts";
import { boresOfLine, namedIn } from "../model/evaluate/index-of.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { cribRankingOf } from "../model/evaluate/window.ts";
import { entryOf, refOf, refsOfKind, type Shop } from "../model/shop.ts";
import type { Offer } from "./completion-item.ts";
import { shippedWhat } from "./hover-crib.ts";
import { detailOf } from "./completion-details.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import { fitsAsking, toolWords } from "../model/tool-words.ts";

/** Where a reference is asked for. */
export interface Place {
  readonly shop: Shop;
  /** The rule of the line. */
  readonly rule: string;
  /** Full reference of the entry that the line is in; "" where it has none. */
  readonly owner: string;
  /** References that stand before the caret on this line. */
  readonly before: readonly string[];
  /** Which of the line's places for a reference it is, from 0. */
  readonly slot: number;
}

/** Above this many no details are worked out: nobody reads that far. */
const MOST_WITH_DETAIL = 150;

/** Entries of these kinds. `written` says whether the kind is written before the name, or stands already. */
export function referenceOffers(
  place: Place,
  kinds: readonly EntryKind[],
  written: "full" | "name",
  rank: number,
  withDetails = true,
): readonly Offer[] {
  const { shop, owner, before } = place;
  const used = usedElsewhere(place);
  const tools =
    place.rule === "ReamFact" ? rankedReamers(shop, owner) : undefined;
  const refs = kinds.flatMap((kind) => refsOfKind(shop, kind));
  const withDetail = withDetails && refs.length <= MOST_WITH_DETAIL;
  const own = refs
    .filter(
      (ref) =>
        !before.includes(ref) && (ref !== owner || !isSelfless(place.rule)),
    )
    .map((ref): Offer => {
      const tool = tools?.get(ref);
      return {
        label: labelOf(ref, written),
        kind: kindOf(ref) === "material" ? "material" : "reference",
        detail: tool?.detail ?? (withDetail ? detailOf(shop, ref) : ""),
        filterText: `${nameOf(ref)} ${kindOf(ref)}`,
        rank: rank + (tool?.rank ?? preference(place, ref, used)),
      };
    });
  return [...own, ...shippedOffers(place, kinds, rank)];
}

function labelOf(ref: string, written: "full" | "name"): string {
  return written === "full" ? ref : nameOf(ref);
}

/** Places that never name their own entry. */
function isSelfless(rule: string): boolean {
  return rule === "AfterFact" || rule === "SetFact";
}

/** How far down a reference stands among those of its place, below 1: free before used, of the entry's own name before others. */
function preference(
  place: Place,
  ref: string,
  used: ReadonlySet<string>,
): number {
  const sameName = nameOf(ref) === nameOf(place.owner) ? 0 : 0.1;
  const free = used.has(ref) ? 0.4 : 0;
  // most running bores are a bush's
  const unlikely =
    place.rule === "BoreEntry" && kindOf(ref) === "part" ? 0.3 : 0;
  const expected = expectedNext(place).includes(ref) ? -0.05 : 0;
  return free + sameName + unlikely + expected;
}

/** What goes with the references that stand before: the hole of the bush that is pressed, the bore of the journal's name. */
function expectedNext({ shop, rule, before, owner }: Place): readonly string[] {
  const [first] = before;
  if (rule === "PressEntry" && first?.startsWith("bush ") === true)
    return namedIn(shop, first).flatMap((ref) => ref ?? []);
  if (rule === "FitEntry" && first?.startsWith("journal ") === true)
    return [`bore ${nameOf(first)}`];
  if (rule === "LinePilotFact") return boresOfLine(shop, owner);
  return [];
}

/** What other entries already name in this place. */
function usedElsewhere({
  shop,
  rule,
  owner,
  slot,
}: Place): ReadonlySet<string> {
  const kind = HEADS[rule];
  if (kind !== undefined)
    return new Set(
      refsOfKind(shop, kind)
        .filter((ref) => ref !== owner)
        .flatMap((ref) => namedIn(shop, ref)[slot] ?? []),
    );
  if (rule === "LineBoreFact")
    return new Set(
      refsOfKind(shop, "line").flatMap((ref) => boresOfLine(shop, ref)),
    );
  if (rule === "CutsFact" || rule === "PressesFact") {
    const list = rule === "CutsFact" ? "cuts" : "presses";
    return new Set(
      orderOf(shop)
        .steps.filter((step) => step.ref !== owner)
        .flatMap((step) => step[list]),
    );
  }
  return new Set();
}

const HEADS: Readonly<Record<string, EntryKind>> = {
  BushEntry: "bush",
  BoreEntry: "bore",
  PressEntry: "press",
  FitEntry: "fit",
};

/** The crib's reamers as they serve this line: best first, with what each would leave. */
function rankedReamers(
  shop: Shop,
  line: string,
): ReadonlyMap<string, { readonly rank: number; readonly detail: string }> {
  const found = cribRankingOf(shop, line);
  if (!found.known) return new Map();
  const { demands, crib } = found.value;
  const fits = fitsAsking(demands);
  return new Map(
    crib.flatMap((choice, index) => {
      if (choice.reamer === undefined) return [];
      const words = toolWords(shop, demands, choice);
      const clearances = words.clearances.map(
        (clearance, at) => `${fits[at] ?? ""} ${clearance}`,
      );
      const detail = [
        words.serves === "no" ? "does not serve" : "",
        `cuts ${words.cuts}`,
        ...clearances,
        `margin ${words.margin}`,
        words.chance === "" ? "" : `chance ${words.chance}`,
      ]
        .filter((part) => part !== "")
        .join("; ");
      return [[choice.reamer, { rank: index / 1000 - 0.9, detail }] as const];
    }),
  );
}

/** Shipped materials and oils that no file has an entry of; what the entry may well be made of first. */
function shippedOffers(
  { shop, owner }: Place,
  kinds: readonly EntryKind[],
  rank: number,
): readonly Offer[] {
  if (kinds.length !== 1) return [];
  const named =
    kinds[0] === "material"
      ? materials.map(({ name, family }) => ({
          ref: `material ${name}`,
          likely: OF_BUSHES.has(family) === (kindOf(owner) === "bush"),
        }))
      : kinds[0] === "oil"
        ? oils.map(({ name }) => ({ ref: `oil ${name}`, likely: true }))
        : [];
  return named
    .filter(({ ref }) => entryOf(shop, ref) === undefined)
    .map(({ ref, likely }): Offer => ({
      label: nameOf(ref),
      kind: "material",
      detail: `${shippedWhat(ref) ?? ""}; shipped`,
      filterText: [nameOf(ref), ...designationsOf(ref)].join(" "),
      rank: rank + (likely ? 0.5 : 0.6),
    }));
}

/** What the trade calls it by, of what it is: `C93200` and `SAE 660`, for who types that. */
function designationsOf(ref: string): readonly string[] {
  return shippedWhat(ref)?.match(/\b[A-Z][A-Z-]*[ -]?\d+[A-Z]?\b/gu) ?? [];
}

const OF_BUSHES = new Set<Family>([
  "bronze",
  "sintered",
  "brass",
  "polymer",
  "lined",
  "white-metal",
]);

/** The references among the words before the caret: `press front of bush front in` has the bush. */
export function refsBefore(
  shop: Shop,
  words: readonly string[],
  rule: string,
): readonly string[] {
  const takes = FIRST_TAKES[rule] ?? ENTRY_KINDS;
  return words.flatMap((name, index) => {
    const kind = entrySpec(words[index - 1] ?? "")?.kind;
    const full =
      kind === undefined
        ? undefined
        : refOf(shop, { kind, name, takes: [kind] });
    return full ?? refOf(shop, { kind: undefined, name, takes }) ?? [];
  });
}

/** What the first place of a line takes. */
const FIRST_TAKES: Readonly<Record<string, readonly EntryKind[]>> = {
  PressEntry: ["bush"],
  FitEntry: ["journal"],
  AfterFact: ["step"],
  CutsFact: ["line"],
  PressesFact: ["press"],
};
