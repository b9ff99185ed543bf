// The tree of each example of the grammar, whole, in trees.txt: the readers of facts know its nodes by their names. A node is shown as
// `type(children)`, and one without any as `type "text"`.
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { examples } from "../../grammar/examples.ts";
import { parseAfresh } from "../../grammar/by-ohm.ts";
import type { Node } from "../../grammar/tree.ts";

function shown(body: string, node: Node): string {
  const { type, start, end, children } = node;
  return children.length === 0
    ? `${type} "${body.slice(start, end)}"`
    : `${type}(${children.map((each) => shown(body, each)).join(", ")})`;
}

const lines = readFileSync(path.join(import.meta.dirname, "trees.txt"), "utf8")
  .trimEnd()
  .split("\n");

test("each example has its tree on the page, in order", () => {
  const trees = Object.entries(examples).flatMap(([rule, bodies]) =>
    bodies.map((body) => shown(body, parseAfresh(body, rule).tree)),
  );
  expect(trees).toEqual(lines);
});
