// What a parsed line is: nodes with a type and a span. It does not know what the nodes mean.

/** A piece of a line. Spans are UTF-16 offsets from the start of the line's body, so that a moved line keeps its tree. */
export interface Node {
  /** The rule of thou.ohm that read it; see `LEAVES` in by-ohm.ts for the few that are renamed. */
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly children: readonly Node[];
}

/** Most nodes have none below them, and they are many. */
export const NO_NODES: readonly Node[] = [];

/** The first node directly below that is of one of these types. */
export function child(
  node: Node,
  ...types: readonly string[]
): Node | undefined {
  return node.children.find((each) => types.includes(each.type));
}

/** All nodes directly below that are of one of these types. */
export function children(
  node: Node,
  ...types: readonly string[]
): readonly Node[] {
  return node.children.filter((each) => types.includes(each.type));
}

/** A node and every one below it, parents before their children. */
export function nodesIn(node: Node): readonly Node[] {
  const all: Node[] = [];
  const gather = (each: Node): void => {
    all.push(each);
    each.children.forEach(gather);
  };
  gather(node);
  return all;
}

/** The nodes from the root down to the innermost one that holds an offset; at a border, the later one. */
export function pathAt(node: Node, offset: number): readonly Node[] {
  if (offset < node.start || node.end < offset) return [];
  for (const each of [...node.children].reverse()) {
    const inner = pathAt(each, offset);
    if (0 < inner.length) return [node, ...inner];
  }
  return [node];
}
