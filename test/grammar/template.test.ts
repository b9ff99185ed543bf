// The tree of a shape, made from a tree that no grammar made and filled in for another line.
import { expect, test } from "vitest";
import { shapeOf } from "../../grammar/shape.ts";
import { fill, packed, templateOf, unpacked } from "../../grammar/template.ts";
import { NO_NODES, type Node } from "../../grammar/tree.ts";

function node(
  type: string,
  start: number,
  end: number,
  children: readonly Node[] = NO_NODES,
): Node {
  return { type, start, end, children };
}

const BODY = "read near  0.5in";
const TREE = node("line", 0, 16, [
  node("word", 0, 4),
  node("values", 11, 16, [node("number", 11, 14), node("unit", 14, 16)]),
]);

test("offsets become numbers of tokens, and those the offsets of another line", () => {
  const template = templateOf(TREE, shapeOf(BODY));
  expect(template).toEqual(
    node("line", 0, 3, [
      node("word", 0, 0),
      node("values", 2, 3, [node("number", 2, 2), node("unit", 3, 3)]),
    ]),
  );
  const other = template && fill(template, shapeOf("read far-1 12.75in"));
  expect(other).toEqual(
    node("line", 0, 18, [
      node("word", 0, 4),
      node("values", 11, 18, [node("number", 11, 16), node("unit", 16, 18)]),
    ]),
  );
});

test.each([
  ["begins", node("number", 12, 14)],
  ["ends", node("number", 11, 13)],
])("a tree with a node that %s within a token has none", (_, inner) => {
  const shape = shapeOf(BODY);
  expect(templateOf(inner, shape)).toBeUndefined();
  expect(templateOf(node("line", 0, 16, [inner]), shape)).toBeUndefined();
});

test("nodes with none below them share one list", () => {
  const template = unpacked(packed(node("line", 0, 1, [node("word", 0, 0)])));
  expect(template.children[0]?.children).toBe(NO_NODES);
  const filled = fill(template, shapeOf("read near"));
  expect(filled.children[0]?.children).toBe(NO_NODES);
});
