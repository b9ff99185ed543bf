// Reads a `swing` line: how far a pointer went in one turn, how the part was turned under it, and how many lobes there are. What follows
// from it for the form is evaluate/roundness.ts's.
import { child, type Node } from "../../grammar/tree.ts";
import { faultOfForm, type RoundnessMethod } from "../core/readings/lobing.ts";
import { saysTwice, signature } from "./clauses.ts";
import { count, type FactReader } from "./fact-parts.ts";
import { lengthIn, textOf, valueOf } from "./quantities.ts";
import type { Swing } from "./values.ts";
import { capitalised } from "./sentences.ts";

export function swing(node: Node, line: FactReader): Swing | undefined {
  const clauses = node.children.filter(({ type }) =>
    type.startsWith("SwingClause_"),
  );
  if (saysTwice(clauses, line)) return undefined;
  const signed = signature({ ...node, children: clauses }, line);
  const at = child(node, "length");
  const length = at === undefined ? undefined : lengthIn(line, at);
  const turned = child(node, "Vee", "ThreePoints");
  const lobesNode = child(node, "Lobes");
  const method = turned === undefined ? undefined : methodOf(turned, line);
  const clause = (type: string): Node | undefined =>
    child(node, `SwingClause_${type}`);
  const gaugeNode = child(clause("with") ?? node, "gaugeRef");
  const gauge = gaugeNode === undefined ? undefined : line.ref(gaugeNode);
  if (
    at === undefined ||
    length === undefined ||
    signed === undefined ||
    turned === undefined ||
    lobesNode === undefined ||
    method === undefined
  )
    return undefined;
  const lobes = count(lobesNode, line) ?? 0;
  const fault = faultOfForm(method, lobes);
  if (fault !== undefined) {
    line.report("line-damaged", lobesNode, {
      message: `${capitalised(fault)}.`,
    });
    return undefined;
  }
  const place = child(node, "place");
  const stage = clause("as");
  const stageNode = stage === undefined ? undefined : child(stage, "stage");
  return {
    place: place === undefined ? undefined : textOf(line, place),
    swing: length,
    swingSpan: line.spanOf(at),
    method,
    lobes,
    methodSpan: { ...line.spanOf(turned), end: line.spanOf(lobesNode).end },
    gauge,
    // the grammar admits only the stages
    stage:
      stageNode === undefined
        ? undefined
        : (textOf(line, stageNode) as NonNullable<Swing["stage"]>),
    signature: signed,
  };
}

function methodOf(turned: Node, line: FactReader): RoundnessMethod | undefined {
  if (turned.type === "ThreePoints") return { kind: "three-contacts" };
  const at = child(turned, "angle");
  const angle = at === undefined ? undefined : valueOf(line, at, "angle");
  return angle === undefined
    ? undefined
    : {
        kind: "vee",
        angle: angle.value,
        indicator:
          child(turned, "indicator") === undefined ? "opposite" : "between",
      };
}
