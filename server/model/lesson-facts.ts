// Readers of a lesson's facts: what was learned, as mean, spread and count, and what it is about. What follows from a lesson is
// evaluate/lessons.ts's.
import { child, children, type Node } from "../../grammar/tree.ts";
import { quoted } from "./clauses.ts";
import { dateOf } from "./dates.ts";
import { count, type FactReader } from "./fact-parts.ts";
import { lengthsOf, textOf, valuesOf } from "./quantities.ts";
import type { FactValues, Learned } from "./values.ts";

export function learnedLength(
  node: Node,
  line: FactReader,
): Learned | undefined {
  const [mean, spread] = lengthsOf(line, children(node, "length")) ?? [];
  return mean === undefined
    ? undefined
    : learned(node, line, mean.value, spread?.value, mean.step);
}

export function learnedShare(
  node: Node,
  line: FactReader,
): Learned | undefined {
  const [mean, spread] = valuesOf(line, children(node, "ratio"), "ratio") ?? [];
  if (mean === undefined) return undefined;
  if (0 < mean) return learned(node, line, mean, spread, undefined);
  report(node, line, "A bush closes by more than nothing.");
  return undefined;
}

function learned(
  node: Node,
  line: FactReader,
  mean: number,
  spread: number | undefined,
  step: number | undefined,
): Learned | undefined {
  const from = count(node, line) ?? 0;
  const fault = faultOf(spread, from);
  if (fault === undefined) return { mean, spread, count: from, step };
  report(node, line, fault);
  return undefined;
}

function faultOf(
  spread: number | undefined,
  count: number,
): string | undefined {
  if (count < 1) return "Nothing was learned from none.";
  if (spread !== undefined && spread < 0) return "A spread is not below zero.";
  if (spread !== undefined && count < 2)
    return "One alone has no spread: leave `spread` off, or write of how many it is.";
  return spread === undefined && 1 < count
    ? `The mean of ${String(count)} needs its spread: write \`spread\` with the standard deviation of one.`
    : undefined;
}

export function lessonBush(
  node: Node,
  line: FactReader,
): FactValues["LessonBushFact"] | undefined {
  const materialNode = child(node, "materialRef");
  const material =
    materialNode === undefined ? undefined : line.ref(materialNode);
  const construction = child(node, "construction");
  const [od, id] = lengthsOf(line, children(node, "length")) ?? [];
  if (
    material === undefined ||
    construction === undefined ||
    od === undefined ||
    id === undefined
  )
    return undefined;
  if (!(0 < id.value && id.value < od.value)) {
    report(
      node,
      line,
      "The outside diameter stands first, and is larger than the inside one.",
    );
    return undefined;
  }
  const plain = child(node, "serialWord");
  return {
    material,
    // the grammar admits only these
    construction: textOf(line, construction) as FactValues["ConstructionFact"],
    od: od.value,
    id: id.value,
    lot:
      quoted(line, child(node, "text")) ??
      (plain === undefined ? undefined : textOf(line, plain)),
  };
}

export function between(
  node: Node,
  line: FactReader,
): FactValues["BetweenFact"] | undefined {
  const dates = children(node, "date");
  const read = dates.map((each) => dateOf(textOf(line, each)));
  for (const [index, date] of read.entries()) {
    const at = dates[index];
    if (date === undefined && at !== undefined) {
      line.report("date-wrong", at, { date: textOf(line, at) });
      return undefined;
    }
  }
  const [first, last] = read;
  if (first === undefined || last === undefined) return undefined;
  if (first <= last) return { first, last };
  report(node, line, "The first day stands before the last.");
  return undefined;
}

function report(node: Node, line: FactReader, message: string): void {
  line.report("line-damaged", node, { message });
}
