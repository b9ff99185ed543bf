// Reads ranges of lengths in all the trade's forms, classes among them.
import { gluedFigures } from "../../grammar/explain-numbers.ts";
import { mendDashed } from "../../grammar/range-forms.ts";
import { child, children, type Node } from "../../grammar/tree.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import { metresToTenths, tenthsToMetres } from "../core/quantity/exact.ts";
import { stepTaken } from "../core/quantity/show.ts";
import { classRange, type Side } from "./classes.ts";
import {
  deviationsOf,
  lengthIn,
  lengthsOf,
  reportReversed,
  textOf,
  type LineReader,
} from "./quantities.ts";
import type { Length, LengthRange } from "./values.ts";

/** The finer of two steps. */
export function finer(
  a: number | undefined,
  b: number | undefined,
): number | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return Math.min(a, b);
}

/** The finest of all steps; undefined where there is none. */
export function finest(
  all: readonly { readonly step: number | undefined }[],
): number | undefined {
  return all.reduce<number | undefined>(
    (step, each) => finer(step, each.step),
    undefined,
  );
}

const SIDES: Readonly<Partial<Record<EntryKind, Side>>> = {
  journal: "shaft",
  hole: "hole",
  bore: "hole",
  fit: "fit",
  // a reamer is named for the hole that it makes
  reamer: "hole",
  pilot: "shaft",
};

/** Which side of a fit a class of size belongs to in this fact; undefined where no class can stand. */
export function sideOf(kind: EntryKind, word: string): Side | undefined {
  if (kind === "bush")
    return word === "od" ? "shaft" : word === "id" ? "hole" : undefined;
  if (kind === "line") return word === "cut" ? "hole" : undefined;
  if (
    word === "limits" ||
    word === "service-limit" ||
    word === "size" ||
    word === "od"
  )
    return SIDES[kind];
  return kind === "fit" && word === "want" ? "fit" : undefined;
}

/** The range that a line writes, or a single length as a range of one. */
export function lengthRangeOf(
  line: LineReader,
  root: Node,
  side: Side | undefined,
): LengthRange | undefined {
  for (const node of root.children) {
    switch (node.type) {
      case "LengthRange_to":
      case "SignedRange_to":
        return toRange(line, node);
      case "LengthRange_deviations":
        return deviationRange(line, node);
      case "LengthRange_plusMinus":
        return plusMinusRange(line, node);
      case "LengthRange_class":
        return classSize(line, node, side);
      case "dashed":
        line.report(
          "line-damaged",
          node,
          damageData(textOf(line, node), mendDashed(textOf(line, node))),
        );
        return undefined;
      case "SignedRange_one":
        return single(lengthsOf(line, children(node, "length"))?.[0]);
      case "length":
        return single(lengthIn(line, node));
    }
  }
  return undefined;
}

/** What a text that thou.ohm reads is no range for. */
function damageData(
  written: string,
  { message, mended, safe }: ReturnType<typeof mendDashed>,
): Record<string, string> {
  return {
    message,
    written,
    ...(mended === undefined ? {} : { mended }),
    ...(safe === true ? { safe: "yes" } : {}),
  };
}

function single(length: Length | undefined): LengthRange | undefined {
  return length === undefined
    ? undefined
    : {
        low: length.value,
        high: length.value,
        step: length.step,
        className: undefined,
      };
}

function ordered(
  line: LineReader,
  node: Node,
  low: Length,
  high: Length,
): LengthRange | undefined {
  if (metresToTenths(high.value) < metresToTenths(low.value)) {
    reportReversed(line, node, children(node, "length"));
    return undefined;
  }
  return ranged(low.value, high.value, [low, high]);
}

/**
 * A range with the step of the last digit that was written. Where a fraction or a class gives an end, none was: then the step is what both
 * ends take, so that no limit is shown rounded.
 */
function ranged(
  low: number,
  high: number,
  written: readonly Length[],
  className?: string,
): LengthRange {
  const isWhole =
    className === undefined && written.every(({ step }) => step !== undefined);
  const step = finest(written);
  return {
    low,
    high,
    step: isWhole ? step : finer(step, stepTaken([low, high])),
    className,
  };
}

function toRange(line: LineReader, node: Node): LengthRange | undefined {
  const [low, high] = lengthsOf(line, children(node, "length")) ?? [];
  return low === undefined || high === undefined
    ? undefined
    : ordered(line, node, low, high);
}

function deviationRange(line: LineReader, node: Node): LengthRange | undefined {
  const main = child(node, "length");
  if (main === undefined) return undefined;
  const size = lengthIn(line, main);
  const [one, other] =
    deviationsOf(line, main, children(node, "deviation")) ?? [];
  if (size === undefined || one === undefined || other === undefined)
    return undefined;
  // the trade writes either first: +0 -0.0005 and -0.0005 +0 mean the same
  const [low, high] = one.value < other.value ? [one, other] : [other, one];
  return ranged(sum(size.value, low.value), sum(size.value, high.value), [
    size,
    low,
    high,
  ]);
}

/** Lengths are whole tenths of a nanometre, and so is what they come to. */
function sum(a: number, b: number): number {
  return tenthsToMetres(metresToTenths(a) + metresToTenths(b));
}

function plusMinusRange(line: LineReader, node: Node): LengthRange | undefined {
  const [main, tolerance] = children(node, "length");
  if (main === undefined || tolerance === undefined) return undefined;
  const size = lengthIn(line, main);
  const by = deviationsOf(line, main, [tolerance])?.[0];
  if (size === undefined || by === undefined) return undefined;
  if (by.value < 0) {
    line.report("range-reversed", tolerance, {
      tolerance: textOf(line, tolerance),
    });
    return undefined;
  }
  return ranged(sum(size.value, 0 - by.value), sum(size.value, by.value), [
    size,
    by,
  ]);
}

function classSize(
  line: LineReader,
  node: Node,
  side: Side | undefined,
): LengthRange | undefined {
  const sizeNode = child(node, "length");
  const classNode = child(node, "class");
  if (sizeNode === undefined || classNode === undefined) return undefined;
  const className = textOf(line, classNode);
  // where no class can stand it is none
  const times =
    side === undefined ? gluedFigures(textOf(line, node)) : undefined;
  if (times !== undefined) {
    line.report("line-damaged", node, damageData(textOf(line, node), times));
    return undefined;
  }
  const size = lengthIn(line, sizeNode);
  if (size === undefined) return undefined;
  const bare = child(sizeNode, "unit") === undefined;
  const found = classRange(
    size.value,
    className,
    side,
    bare ? line.system : undefined,
  );
  if (found.problem !== undefined) {
    const at = found.problem.code === "unit-missing" ? sizeNode : classNode;
    line.report(found.problem.code, at, {
      class: className,
      number: textOf(line, sizeNode),
      wanted: ["length"],
      ...found.problem.data,
    });
    return undefined;
  }
  return ranged(found.low, found.high, [], className);
}
