// Finding one's way in the tree of a line, on trees that no grammar made.
import { describe, expect, test } from "vitest";
import {
  child,
  children,
  pathAt,
  nodesIn,
  type Node,
} from "../../grammar/tree.ts";

function node(
  type: string,
  start: number,
  end: number,
  ...below: readonly Node[]
): Node {
  return { type, start, end, children: below };
}

/** `near 0.87432in with` at the fourth character of a body. */
const READING = node(
  "Reading",
  4,
  24,
  node("place", 4, 8),
  node("values", 9, 18, node("decimal", 9, 16), node("unit", 16, 18)),
  node("Clause", 19, 24, node("unit", 20, 22)),
);

describe("the nodes from the root to the innermost one at an offset", () => {
  test.each([
    ["before the root", 3, []],
    ["where the root begins", 4, ["Reading", "place"]],
    ["where a node ends and none begins", 8, ["Reading", "place"]],
    ["where a node begins after a blank", 9, ["Reading", "values", "decimal"]],
    ["inside a leaf", 12, ["Reading", "values", "decimal"]],
    ["at a border, the later one", 16, ["Reading", "values", "unit"]],
    ["between a node and its first child", 19, ["Reading", "Clause"]],
    ["after its last child", 23, ["Reading", "Clause"]],
    ["where the root ends", 24, ["Reading", "Clause"]],
    ["past the root", 25, []],
  ])("%s", (_, offset, types) => {
    expect(pathAt(READING, offset).map(({ type }) => type)).toEqual(types);
  });

  test("is the root alone where none of its nodes is", () => {
    const apart = node("line", 0, 9, node("word", 0, 2), node("name", 5, 9));
    expect(pathAt(apart, 3)).toEqual([apart]);
  });
});

describe("nodes of a type", () => {
  test("are looked for directly below, by any of several types, the first one first", () => {
    expect(child(READING, "unit")).toBeUndefined();
    expect(child(READING, "values", "place")?.type).toBe("place");
    expect(
      children(READING, "Clause", "place").map(({ type }) => type),
    ).toEqual(["place", "Clause"]);
    expect(children(READING, "unit")).toEqual([]);
  });

  test("come parents before their children, in order", () => {
    expect(nodesIn(READING).map(({ type }) => type)).toEqual([
      ...["Reading", "place", "values", "decimal", "unit", "Clause", "unit"],
    ]);
  });
});
