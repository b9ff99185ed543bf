// Numbers that a fact can't have: below zero, or zero, where it says how large something is. Such a number is a slip of the hand, and nothing
// is worked out from it. What a fact's least is, the vocabulary says.
import type { Node } from "../../grammar/tree.ts";
import type { FactSpec } from "../../grammar/vocabulary.ts";
import { textOf, type LineReader } from "./quantities.ts";

/** Parts of such a line that may be below zero all the same, and those that may be zero: `+/- 0` is a size and no more. */
const MAY_BE_BELOW: ReadonlySet<string> = new Set([
  "deviation",
  "temperature",
  "Clause_station",
]);
const MAY_BE_ZERO: ReadonlySet<string> = new Set([
  ...MAY_BE_BELOW,
  "LengthRange_plusMinus",
]);

const NUMBERS: ReadonlySet<string> = new Set(["number", "decimal", "count"]);

// an exponent and what stands under a fraction's bar make no zero of a number, and none of a zero: `0e6`, `0/8`, `0-0/8`
const BELOW = /^[-\u{2212}][^e/]*[1-9]/iu;
const ZERO = /^[-+\u{2212}]?(?:0+(?: +|-))?[0.]+(?:\/\d+)?(?:e[-+]?\d+)?$/iu;
const MAY_HOLD_BELOW = /(?:^|\s)[-\u{2212}][\d.]/u;
const MAY_HOLD_ZERO = /(?:^|\s)[-+\u{2212}]?(?:0+\.?0*|\.0+)(?![\d.])/u;

/** Reports the first number of a line that is less than the fact's least. */
export function reportLess(
  line: LineReader,
  tree: Node,
  { word, least }: Pick<FactSpec, "word" | "least">,
): void {
  if (least === "anything") return;
  const isPositive = least === "above-zero";
  // most lines have neither sign nor zero: they are not gone through
  if (
    !MAY_HOLD_BELOW.test(line.body) &&
    !(isPositive && MAY_HOLD_ZERO.test(line.body))
  )
    return;
  const number =
    numberIn(line, tree, BELOW, MAY_BE_BELOW) ??
    (isPositive ? numberIn(line, tree, ZERO, MAY_BE_ZERO) : undefined);
  if (number === undefined) return;
  const written = textOf(line, number);
  const meant = written.slice(1);
  line.report(
    "line-damaged",
    number,
    ZERO.test(written)
      ? {
          message: `\`${word}\` takes what is above zero, and this is \`${written}\`: write what it is, or leave the line out until it is known.`,
        }
      : {
          message: `\`${word}\` takes nothing below zero, and this is \`${written}\`: write \`${meant}\`, if that was meant.`,
          mended: meant,
        },
  );
}

function numberIn(
  line: LineReader,
  node: Node,
  written: RegExp,
  leaving: ReadonlySet<string>,
): Node | undefined {
  if (leaving.has(node.type)) return undefined;
  if (NUMBERS.has(node.type))
    return written.test(textOf(line, node)) ? node : undefined;
  for (const each of node.children) {
    const found = numberIn(line, each, written, leaving);
    if (found !== undefined) return found;
  }
  return undefined;
}
