// What readers of facts share: the reader of a line, and readers of the parts that many facts have, a length, a range, a reference.
import { child, children, type Node } from "../../grammar/tree.ts";
import { REFERENCE_PLACES, type EntryKind } from "../../grammar/vocabulary.ts";
import { readNumber, toNumber } from "../core/quantity/exact.ts";
import type { Dimension } from "../core/quantity/units.ts";
import { quoted } from "./clauses.ts";
import {
  lengthIn,
  reportReversed,
  textOf,
  valueOf,
  valuesOf,
  type LineReader,
} from "./quantities.ts";
import { lengthRangeOf, sideOf } from "./ranges.ts";
import type {
  Bodies,
  FactRule,
  FactValues,
  Length,
  LengthRange,
  NumberRange,
  RefSite,
} from "./values.ts";

export interface FactReader extends LineReader {
  readonly kind: EntryKind;
  readonly word: string;
  readonly ref: (node: Node) => RefSite;
  /** The diameter in m of `no 7` or `letter F`. */
  readonly namedSize: (words: readonly string[]) => number | undefined;
}

export type Read<K extends FactRule> = (
  node: Node,
  line: FactReader,
) => FactValues[K] | undefined;

export function wordAfter(node: Node, line: FactReader): string {
  const choice = node.children[1];
  return choice === undefined ? "" : textOf(line, choice);
}

/** A reader of a fact that is one of a few words, which the grammar has already checked. */
export function choice<K extends FactRule>(): Read<K> {
  // the rule admits only the words of its type
  return (node, line) => wordAfter(node, line) as FactValues[K];
}

export const text = (node: Node, line: FactReader): string | undefined =>
  quoted(line, child(node, "text"));
export const length = (node: Node, line: FactReader): Length | undefined => {
  const at = child(node, "length");
  return at === undefined ? undefined : lengthIn(line, at);
};
export const range = (node: Node, line: FactReader): LengthRange | undefined =>
  lengthRangeOf(line, node, sideOf(line.kind, line.word));
export const ref = (node: Node, line: FactReader): RefSite | undefined =>
  refs(node, line)[0];

export function refs(node: Node, line: FactReader): readonly RefSite[] {
  return node.children
    .filter((each) => each.type in REFERENCE_PLACES)
    .map((each) => line.ref(each));
}

export function si(
  type: string,
  ...dimensions: readonly Dimension[]
): (node: Node, line: FactReader) => number | undefined {
  return (node, line) => {
    const at = child(node, type);
    return at === undefined
      ? undefined
      : valueOf(line, at, ...dimensions)?.value;
  };
}

export function count(node: Node, line: FactReader): number | undefined {
  const at = child(node, "count");
  const written = at === undefined ? undefined : readNumber(textOf(line, at));
  return written === undefined ? undefined : toNumber(written);
}

export function numberRange(
  type: string,
  ...dimensions: readonly Dimension[]
): (node: Node, line: FactReader) => NumberRange | undefined {
  return (node, line) => {
    const at = child(node, "Range_to", "Range_one");
    if (at === undefined) return undefined;
    const [low, high] = valuesOf(line, children(at, type), ...dimensions) ?? [];
    if (low === undefined) return undefined;
    if (high !== undefined && high < low) {
      reportReversed(line, at, children(at, type));
      return undefined;
    }
    return { low, high: high ?? low };
  };
}

export function bodies(node: Node, line: FactReader): Bodies | undefined {
  const at = namedTemperatures(node, line, "Body", "body");
  return at === undefined
    ? undefined
    : { shaft: at.get("shaft"), bush: at.get("bush"), case: at.get("case") };
}

export function namedTemperatures(
  node: Node,
  line: FactReader,
  type: string,
  name: string,
): ReadonlyMap<string, number> | undefined {
  const parts = children(node, type);
  const temperatures = parts
    .map((part) => child(part, "temperature"))
    .filter((each) => each !== undefined);
  const values = valuesOf(line, temperatures, "temperature");
  if (values === undefined) return undefined;
  const found = new Map<string, number>();
  for (const [index, part] of parts.entries()) {
    const word = textOf(line, child(part, name) ?? part);
    if (found.has(word)) {
      line.report("line-damaged", part, {
        message: `\`${word}\` stands twice on this line: keep one.`,
      });
      return undefined;
    }
    found.set(word, values[index] ?? 0);
  }
  return found;
}
