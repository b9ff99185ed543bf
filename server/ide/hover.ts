// What the editor shows over a word of a record. This file finds what the word is; what is said of it is the other hover-*.ts's.
import type { Node } from "../../grammar/tree.ts";
import { entrySpec, factSpec } from "../../grammar/vocabulary.ts";
import { valueIn } from "../model/entry.ts";
import { lineOfBore } from "../model/evaluate/index-of.ts";
import { placesOf } from "../model/evaluate/size.ts";
import { settings } from "../model/evaluate/settings.ts";
import { showCount, showRange } from "../core/quantity/show.ts";
import type { OpenFile } from "../model/project.ts";
import { resolve, isFirstOfName } from "../model/shop.ts";
import type { RefSite } from "../model/values.ts";
import { wantedAdvice } from "./hover-advice.ts";
import { classHover } from "./hover-class.ts";
import { cutText, shippedWhat } from "./hover-crib.ts";
import { cautionHover, entryHover } from "./hover-entry.ts";
import { findingHover } from "./hover-findings.ts";
import { blocks, code, escaped, list } from "../markup/markdown.ts";
import {
  countHover,
  dayHover,
  memberHover,
  sizeHover,
  textHover,
  whoHover,
} from "./hover-marks.ts";
import { nearestClass } from "./hover-nearest.ts";
import { quantityHover, unitHover } from "./hover-quantity.ts";
import { choiceMeaning, clauseMeaning } from "./hover-words.ts";
import {
  nodesAt,
  rangeIn,
  rangeOfNode,
  refAt,
  spotAt,
  touches,
  type Position,
  type Range,
  type Spot,
} from "./position.ts";
import { kindOf } from "../model/reference.ts";

export interface Hover {
  readonly range: Range;
  /** Safe to render: nothing of the record's text is obeyed. */
  readonly markdown: string;
}

/** What is to be said at a position; undefined over blanks, comments, free texts and what nobody can read. */
export function hoverAt(open: OpenFile, position: Position): Hover | undefined {
  const spot = spotAt(open, position);
  if (spot?.where !== "body") return undefined;
  return ofHead(open, spot) ?? ofReference(open, spot) ?? ofWord(open, spot);
}

/** Over the kind or the name of an opening line: the entry. */
function ofHead(open: OpenFile, spot: Spot): Hover | undefined {
  const { entry, isHead, line } = spot;
  if (!isHead) return undefined;
  const onWord = spot.offset <= line.word.length;
  if (!onWord && !touches(entry.nameSpan, spot)) return undefined;
  if (entry.ref === "") {
    const spec = entrySpec(line.word);
    if (spec === undefined || !onWord) return undefined;
    return {
      range: rangeOfNode(spot, { start: 0, end: line.word.length }),
      markdown: blocks(`**${spec.kind}**: ${spec.means}`, code(spec.form)),
    };
  }
  return {
    range: rangeIn(open.file, spot.index, {
      ...entry.nameSpan,
      start: line.indent,
    }),
    markdown: blocks(
      entryHover(open.shop, entry.ref, false),
      isFirst(open, spot)
        ? ""
        : "Another entry has this name: the first of them counts.",
    ),
  };
}

function isFirst({ shop }: OpenFile, { entry, index }: Spot): boolean {
  return entry.kind === "step" || isFirstOfName(shop, entry.ref, index);
}

/** Over a reference: what it means. */
function ofReference(open: OpenFile, spot: Spot): Hover | undefined {
  const site = refAt(spot);
  if (site === undefined) return undefined;
  const markdown = targetText(open, spot, site);
  return markdown === undefined
    ? undefined
    : { range: rangeIn(open.file, spot.index, site.span), markdown };
}

function targetText(
  { shop }: OpenFile,
  spot: Spot,
  site: RefSite,
): string | undefined {
  const found = resolve(shop, site);
  switch (found.state) {
    case "found":
    case "shipped":
      return blocks(
        entryHover(shop, found.ref, true),
        found.state === "shipped" && shippedWhat(found.ref) !== undefined
          ? "Shipped with the tool; an entry of the crib with this name goes before it."
          : "",
        cutsHere(shop, spot, found.ref),
      );
    case "ambiguous":
      return `Several entries have this name: ${escaped(found.refs.join(", "))}. Write the kind before it.`;
    case "wrong-kind":
      return `${escaped(found.ref)} is no ${escaped(site.takes.join(" or "))}.`;
    case "missing":
      return `No ${escaped(site.takes.length < 5 ? site.takes.join(" or ") : "entry")} has this name.`;
    case "silent":
      return undefined;
  }
}

/** A reamer named in a line: what it would leave there. */
function cutsHere(
  shop: OpenFile["shop"],
  { entry }: Spot,
  ref: string,
): string {
  if (kindOf(ref) !== "reamer" || entry.kind !== "line") return "";
  const cuts = entry.facts.flatMap((fact) => {
    if (fact.rule !== "LineBoreFact" || fact.value === undefined) return [];
    const { bore } = fact.value as { readonly bore: RefSite }; // LineBoreFact's value
    const found = resolve(shop, bore);
    if (found.state !== "found" || lineOfBore(shop, found.ref) !== entry.ref)
      return [];
    const text = cutText(shop, ref, entry.ref, found.ref);
    return text === undefined ? [] : [`${found.ref}: ${text}, predicted`];
  });
  return cuts.length === 0
    ? ""
    : `It would leave:\n\n${list(cuts.map(escaped))}`;
}

/** Over anything else of a line: the innermost node that has something to say. */
function ofWord(open: OpenFile, spot: Spot): Hover | undefined {
  const path = nodesAt(spot);
  const { line } = spot;
  const inner = path.at(-1);
  if (spot.offset <= line.word.length && !spot.isHead) {
    const markdown = factText(open, spot);
    return markdown === undefined
      ? undefined
      : {
          range: rangeOfNode(spot, { start: 0, end: line.word.length }),
          markdown,
        };
  }
  if (inner === undefined) return undefined;
  const markdown = nodeText(open, spot, path, inner);
  return markdown === undefined
    ? undefined
    : { range: rangeOfNode(spot, inner), markdown };
}

/** A fact's word: what it says and how it is written; over a fit's `want`, what might be wanted. */
function factText(
  { shop }: OpenFile,
  { entry, kind, line }: Spot,
): string | undefined {
  const spec = kind === undefined ? undefined : factSpec(kind, line.word);
  if (spec === undefined) return undefined;
  const isWant = kind === "fit" && spec.rule === "WantFact";
  return blocks(
    `**${spec.word}**: ${spec.means}`,
    code(spec.form),
    isWant ? wantedAdvice(shop, entry.ref) : "",
    spec.rule === "LimitsFact" ? nearestClass(shop, entry) : "",
  );
}

function nodeText(
  open: OpenFile,
  spot: Spot,
  path: readonly Node[],
  node: Node,
): string | undefined {
  const text = spot.line.body.slice(node.start, node.end);
  switch (node.type) {
    case "number":
    case "decimal":
      return quantityHover(open, spot, path);
    case "unit":
      return unitHover(text);
    case "class":
      return classHover(open, spot, path);
    case "caution":
      return cautionHover(text);
    case "code":
      return findingHover(text);
    case "stepName":
      return entryHover(open.shop, `step ${text}`, true);
    case "place":
      return placeText(open, spot, text);
    case "text":
      return useText(open, spot) ?? whoHover(path, text) ?? textHover(path);
    case "name":
      return whoHover(path, text);
    case "date":
      return dayHover(open, spot, text);
    case "count":
      return countHover(open, spot, text);
    case "letterSize":
      return sizeHover(open, spot);
    case "member":
      return memberHover(open, spot, text);
    default:
      return wordText(text);
  }
}

function wordText(text: string): string | undefined {
  const means = choiceMeaning(text) ?? clauseMeaning(text);
  return means === undefined ? undefined : `**${escaped(text)}**: ${means}`;
}

/** What was read at one place of a journal, hole or bore. */
function placeText(
  { shop }: OpenFile,
  { entry }: Spot,
  place: string,
): string | undefined {
  if (entry.ref === "") return undefined;
  const places = placesOf(shop, entry.ref);
  const found = places.known
    ? places.value.find((each) => each.place === place)
    : undefined;
  if (found === undefined) return undefined;
  const { system } = settings(shop);
  const values = found.readings.flatMap((each) => each.values);
  const steps = found.readings.flatMap((each) => each.step ?? []);
  return `**${escaped(place)}**: ${showRange(Math.min(...values), Math.max(...values), system, steps.length === 0 ? undefined : Math.min(...steps))} measured, ${showCount(values.length, "reading")} at 20 °C`;
}

/** Over the file of a `use`: whether it is there, and what it holds. */
function useText(open: OpenFile, spot: Spot): string | undefined {
  const use = open.uses.find(
    (each) => each.entry === spot.index && touches(each.span, spot),
  );
  if (use === undefined) return undefined;
  const file = open.shop.files.find((each) => each.path === use.path);
  const named = file?.entries.filter((each) => each.ref !== "") ?? [];
  const opening = named.find(
    (each) => each.kind === "shop" || each.kind === "job",
  );
  const units = valueIn(opening, "UnitsFact");
  switch (use.state) {
    case "there":
      return `**${escaped(use.written)}**: ${opening === undefined ? "" : `${escaped(opening.ref)}, `}${String(named.length)} entries${units === undefined ? "" : `, units ${units}`}`;
    case "missing":
      return `**${escaped(use.written)}** is not there.`;
    case "outside":
      return `**${escaped(use.written)}** leads out of the folder.`;
    case "loop":
      return `**${escaped(use.written)}** uses this file in its turn.`;
    case "beyond":
      return `**${escaped(use.written)}** leads to more files or lines than a record is read with.`;
  }
}
