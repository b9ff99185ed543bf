// The tree of a shape: that of any line of it, with the numbers of tokens in place of offsets.
import type { Shape } from "./shape.ts";
import { NO_NODES, type Node } from "./tree.ts";

/** The template of a tree; undefined where a node does not begin and end with a token. */
export function templateOf(node: Node, shape: Shape): Node | undefined {
  const start = shape.starts.indexOf(node.start);
  const end = shape.ends.indexOf(node.end);
  if (start === -1 || end === -1) return undefined;
  const below: Node[] = [];
  for (const each of node.children) {
    const made = templateOf(each, shape);
    if (made === undefined) return undefined;
    below.push(made);
  }
  return { type: node.type, start, end, children: below };
}

/** The tree of a line of the shape. */
export function fill(template: Node, shape: Shape): Node {
  return {
    type: template.type,
    start: shape.starts[template.start] ?? 0,
    end: shape.ends[template.end] ?? 0,
    children:
      template.children.length === 0
        ? NO_NODES
        : template.children.map((each) => fill(each, shape)),
  };
}

/** A template as JSON writes it: its type, its first and last token, then those below. */
type Packed = readonly [string, number, number, ...Packed[]];

export function packed(template: Node): string {
  const pack = ({ type, start, end, children }: Node): Packed => [
    type,
    start,
    end,
    ...children.map(pack),
  ];
  return JSON.stringify(pack(template));
}

/** @param text what `packed` made */
export function unpacked(text: string): Node {
  const unpack = ([type, start, end, ...below]: Packed): Node => ({
    type,
    start,
    end,
    children: below.length === 0 ? NO_NODES : below.map(unpack),
  });
  return unpack(JSON.parse(text) as Packed);
}
