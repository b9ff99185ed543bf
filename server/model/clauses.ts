// What facts of many sorts have in common at the end of their line: texts in quotes, who and when, and clauses that may stand once.
import { nodesIn, type Node } from "../../grammar/tree.ts";
import { dateOf } from "./dates.ts";
import { textOf, type LineReader } from "./quantities.ts";
import type { Signature } from "./values.ts";

export function quoted(
  line: LineReader,
  node: Node | undefined,
): string | undefined {
  return node === undefined ? undefined : textOf(line, node).slice(1, -1);
}

const UNSIGNED: Signature = { who: undefined, date: undefined };

/** Undefined where a date is written that does not exist. */
export function signature(node: Node, line: LineReader): Signature | undefined {
  let signed: Signature = UNSIGNED;
  for (const each of nodesIn(node)) {
    if (each.type === "who") {
      const name = each.children[0] ?? each;
      signed = {
        ...signed,
        who: name.type === "text" ? quoted(line, name) : textOf(line, name),
      };
    }
    if (each.type === "date") {
      const date = dateOf(textOf(line, each));
      if (date === undefined) {
        line.report("date-wrong", each, { date: textOf(line, each) });
        return undefined;
      }
      signed = { ...signed, date };
    }
  }
  return signed;
}

/** Whether one of the clauses stands twice, which is then reported. */
export function saysTwice(clauses: readonly Node[], line: LineReader): boolean {
  const repeated = clauses.find(
    (each, index) =>
      clauses.findIndex((other) => other.type === each.type) < index,
  );
  if (repeated === undefined) return false;
  line.report("line-damaged", repeated, {
    message: `This line says \`${textOf(line, repeated).replace(/\s.*/u, "")}\` twice: keep one.`,
  });
  return true;
}
