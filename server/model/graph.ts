// Remembers what was worked out from what, so that a change works out again only what depends on it. It knows nothing of jobs.
//
// A cell is an input or a query. Reading a cell while another is worked out makes the other depend on it. A changed input marks what
// depends on it as doubtful; a doubtful cell looks at what it depends on when it is next asked for, and is worked out again only if one
// of those has really changed. A result that comes out equal to the last counts as no change.
import equal from "fast-deep-equal";

/** A cell as whoever holds its value sees it: the value holds while it is clean. */
export interface Watched {
  readonly state: "clean" | "doubtful" | "stale";
}

interface Cell extends Watched {
  readonly key: string;
  value: unknown;
  /** Undefined for an input. */
  readonly compute: (() => unknown) | undefined;
  state: Watched["state"];
  /** The revision at which the value last changed. */
  changed: number;
  /** The revision at which it was last looked at. */
  checked: number;
  readonly needs: Set<Cell>;
  readonly usedBy: Set<Cell>;
}

export interface Graph {
  readonly cells: Map<string, Cell>;
  /** Cells being worked out, the innermost last. */
  readonly stack: Cell[];
  revision: number;
  /** Told the key of each cell as it is worked out. */
  trace: ((key: string) => void) | undefined;
}

/** Thrown where a query asks for itself; whoever can meet a loop catches it. */
export class Loop extends Error {
  readonly keys: readonly string[];
  constructor(keys: readonly string[]) {
    super(`asks for itself: ${keys.join(" → ")}`);
    this.keys = keys;
  }
}

export function createGraph(): Graph {
  return { cells: new Map(), stack: [], revision: 0, trace: undefined };
}

/** Sets an input. An equal value is no change; identical objects are equal without a look. */
export function setInput(graph: Graph, key: string, value: unknown): void {
  const cell = graph.cells.get(key);
  if (cell === undefined) {
    graph.cells.set(key, newCell(key, value, undefined, graph.revision));
    return;
  }
  if (cell.value === value) return;
  graph.revision++;
  cell.value = value;
  cell.changed = graph.revision;
  cell.checked = graph.revision;
  markUsers(cell);
}

/** Reads an input; undefined where it was never set, and later set ones count as a change. */
export function readInput(graph: Graph, key: string): unknown {
  let cell = graph.cells.get(key);
  if (cell === undefined) {
    cell = newCell(key, undefined, undefined, graph.revision);
    graph.cells.set(key, cell);
  }
  depend(graph, cell);
  return cell.value;
}

/** The value of a query, worked out if need be. */
export function readQuery(
  graph: Graph,
  key: string,
  compute: () => unknown,
): unknown {
  let cell = graph.cells.get(key);
  if (cell === undefined) {
    cell = newCell(key, undefined, compute, -1);
    cell.state = "stale";
    graph.cells.set(key, cell);
  }
  refresh(graph, cell);
  depend(graph, cell);
  return cell.value;
}

/**
 * Every input that the query being worked out rests on so far, however far, with its value. The query depends on each of them from then
 * on, so that what it says of them is never out of date.
 */
export function inputsBelow(graph: Graph): ReadonlyMap<string, unknown> {
  const user = graph.stack.at(-1);
  const found = new Map<string, unknown>();
  if (user === undefined) return found;
  const seen = new Set<Cell>();
  const waiting = [...user.needs];
  for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
    if (seen.has(cell)) continue;
    seen.add(cell);
    if (cell.compute === undefined) {
      found.set(cell.key, cell.value);
      depend(graph, cell);
    } else waiting.push(...cell.needs);
  }
  return found;
}

function newCell(
  key: string,
  value: unknown,
  compute: (() => unknown) | undefined,
  revision: number,
): Cell {
  return {
    key,
    value,
    compute,
    state: "clean",
    changed: revision,
    checked: revision,
    needs: new Set(),
    usedBy: new Set(),
  };
}

function depend(graph: Graph, cell: Cell): void {
  const user = graph.stack.at(-1);
  if (user === undefined) return;
  user.needs.add(cell);
  cell.usedBy.add(user);
}

function markUsers(cell: Cell): void {
  for (const user of cell.usedBy) {
    if (user.state !== "clean") continue;
    user.state = "doubtful";
    markUsers(user);
  }
}

function refresh(graph: Graph, cell: Cell): void {
  if (cell.state === "clean" || cell.compute === undefined) return;
  const at = graph.stack.indexOf(cell);
  if (at !== -1) throw new Loop(graph.stack.slice(at).map((each) => each.key));
  if (cell.state === "doubtful" && !needsChanged(graph, cell)) {
    cell.state = "clean";
    cell.checked = graph.revision;
    return;
  }
  workOut(graph, cell, cell.compute);
}

function needsChanged(graph: Graph, cell: Cell): boolean {
  graph.stack.push(cell);
  try {
    for (const need of cell.needs) {
      refresh(graph, need);
      if (cell.checked < need.changed) return true;
    }
    return false;
  } finally {
    graph.stack.pop();
  }
}

function workOut(graph: Graph, cell: Cell, compute: () => unknown): void {
  for (const need of cell.needs) need.usedBy.delete(cell);
  cell.needs.clear();
  graph.stack.push(cell);
  graph.trace?.(cell.key);
  try {
    const value = compute();
    if (cell.checked === -1 || !equal(value, cell.value)) {
      cell.value = value;
      cell.changed = graph.revision;
    }
    cell.state = "clean";
    cell.checked = graph.revision;
  } catch (error) {
    // asked again it is worked out again: a failure is not remembered
    cell.state = "stale";
    cell.checked = -1;
    throw error;
  } finally {
    graph.stack.pop();
  }
}
