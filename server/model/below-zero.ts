// Facts that say how large something is: a number below zero is a slip of the hand in them, and nothing is worked out from it.
import type { Node } from "../../grammar/tree.ts";
import { textOf, type LineReader } from "./quantities.ts";
import type { FactRule } from "./values.ts";

const NEVER_BELOW: ReadonlySet<FactRule> = new Set<FactRule>([
  "BoltsFact",
  "BossFact",
  "BushReadFact",
  "ChamferFact",
  "CutFact",
  "DensityFact",
  "DepthFact",
  "ExpandsFact",
  "FilletFact",
  "FinishFact",
  "FrictionFact",
  "IdFact",
  "JointFact",
  "LengthFact",
  "LimitsFact",
  "LoadFact",
  "ModulusFact",
  "MpeFact",
  "NominalFact",
  "OdFact",
  "PointFact",
  "PvFact",
  "ReachesFact",
  "ReadFact",
  "RepeatFact",
  "ResolutionFact",
  "RoundFact",
  "RunoutFact",
  "ServiceLimitFact",
  "SetFact",
  "SizeFact",
  "SmoothingFact",
  "SpecificLoadFact",
  "StockFact",
  "SwingFact",
  "BoreSwingFact",
  "TaperFact",
  "UncertaintyFact",
  "YieldFact",
]);

/** Parts of such a line that may be below zero all the same. */
const MAY_BE_BELOW: ReadonlySet<string> = new Set([
  "deviation",
  "temperature",
  "Clause_station",
]);

const SIGNED = /(?:^|\s)[-\u{2212}][\d.]/u;

/** Reports the first number of a line that is below zero and can't be. */
export function reportBelowZero(
  line: LineReader,
  tree: Node,
  rule: FactRule,
  word: string,
): void {
  // most lines have no sign: they are not gone through
  if (!NEVER_BELOW.has(rule) || !SIGNED.test(line.body)) return;
  const number = signedIn(line, tree);
  if (number === undefined) return;
  const written = textOf(line, number);
  const meant = written.slice(1);
  line.report("line-damaged", number, {
    message: `\`${word}\` takes nothing below zero, and this is \`${written}\`: write \`${meant}\`, if that was meant.`,
    mended: meant,
  });
}

function signedIn(line: LineReader, node: Node): Node | undefined {
  if (MAY_BE_BELOW.has(node.type)) return undefined;
  if (node.type === "number" || node.type === "decimal")
    return /^[-\u{2212}].*[1-9]/u.test(textOf(line, node)) ? node : undefined;
  for (const each of node.children) {
    const found = signedIn(line, each);
    if (found !== undefined) return found;
  }
  return undefined;
}
