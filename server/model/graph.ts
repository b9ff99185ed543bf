// Remembers what was worked out from what, so that a change works out again only what depends on it. It knows nothing of jobs.
//
// A cell is an input or a query. Reading a cell while another is worked out makes the other depend on it. A changed input marks what
// depends on it as doubtful; a doubtful cell looks at what it depends on when it is next asked for, and is worked out again only if one
// of those has really changed. A result that comes out equal to the last counts as no change.
import { dequal as equal } from "dequal/lite";

interface Cell {
  readonly kind: Kind;
  readonly of: string;
  value: unknown;
  state: "clean" | "doubtful" | "stale" | "at work";
  /** The revision at which the value last changed. */
  changed: number;
  /** The revision at which it was last looked at. */
  checked: number;
  /** What it read, each once, in the order of its first reading. */
  needs: Links;
  usedBy: Links | Set<Cell>;
}

/** What all cells of one name have alike: there are dozens of names, and tens of thousands of cells. */
interface Kind {
  readonly name: string;
  /** What works a cell out, and of whom; undefined for inputs. */
  readonly compute: Compute | undefined;
  readonly owner: unknown;
  readonly cells: Map<string, Cell>;
}

type Compute = (owner: never, of: string) => unknown;

/**
 * Half of the cells have one user and a third one need, which stands by itself, without a list. A list that grows by itself would have room
 * for many more, and a set is many times as large; but an input that all look at has thousands of users.
 */
type Links = Cell | readonly Cell[];

function listOf(links: Links): readonly Cell[] {
  return isList(links) ? links : [links];
}

function isList(links: Links): links is readonly Cell[] {
  return Array.isArray(links);
}

function linksOf(list: readonly Cell[]): Links {
  const only = list[0];
  const another = list[1];
  // an array that has grown has room to spare
  return only !== undefined && another === undefined ? only : list.slice();
}

/**
 * A cell being worked out, or whose needs are being looked at, with what it has read so far. Most often that is what it read the last time,
 * in the same order, and then nothing is listed.
 */
interface Frame {
  readonly cell: Cell;
  /** What it read the last time. */
  readonly before: readonly Cell[];
  /** So many of those it has read again, from the first on. */
  again: number;
  /** What it has read, once that is not what it read the last time. */
  needs: Cell[] | undefined;
  /** What it has read as a set, once that is much. */
  among: Set<Cell> | undefined;
}

export interface Graph {
  /** The cells by the name of what they hold, then by what it is of. */
  readonly kinds: Map<string, Kind>;
  /** Cells being worked out, the innermost last. */
  readonly stack: Frame[];
  /** What queries that are watched are of, by their names, where a value may have changed since it was last taken note of. */
  readonly doubted: Map<string, Set<string>>;
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
  return {
    kinds: new Map(),
    stack: [],
    doubted: new Map(),
    revision: 0,
    trace: undefined,
  };
}

/** Sets an input. An equal value is no change; identical objects are equal without a look. */
export function setInput(
  graph: Graph,
  name: string,
  of: string,
  value: unknown,
): void {
  const cell = cellOf(graph, name, of);
  if (cell === undefined) {
    // one that was never set reads as undefined
    if (value !== undefined) addCell(graph, name, of, value, graph.revision);
    return;
  }
  if (cell.value === value) return;
  graph.revision++;
  cell.value = value;
  cell.changed = graph.revision;
  cell.checked = graph.revision;
  markUsers(graph, cell);
}

/** Reads an input; undefined where it was never set, and later set ones count as a change. */
export function readInput(graph: Graph, name: string, of: string): unknown {
  const cell =
    cellOf(graph, name, of) ??
    addCell(graph, name, of, undefined, graph.revision);
  depend(graph, cell);
  return cell.value;
}

/** The value of a query, worked out if need be. */
export function readQuery<Owner>(
  graph: Graph,
  name: string,
  of: string,
  owner: Owner,
  compute: (owner: Owner, of: string) => unknown,
): unknown {
  const cell =
    cellOf(graph, name, of) ??
    addCell(graph, name, of, undefined, -1, compute, owner);
  // spares a call: most that are asked for are
  if (cell.state !== "clean") refresh(graph, cell);
  depend(graph, cell);
  return cell.value;
}

/** An input's value as it is, for who is no query. */
export function inputNow(graph: Graph, name: string, of: string): unknown {
  return cellOf(graph, name, of)?.value;
}

/**
 * What any of these queries is of wherever its value may have changed since the list was last emptied, so that whoever holds the values need
 * not ask for each. From the first call on; what is taken note of is taken out by the caller.
 */
export function watch(
  graph: Graph,
  name: string,
  ...others: readonly string[]
): Set<string> {
  let doubted = graph.doubted.get(name);
  if (doubted === undefined) {
    doubted = new Set();
    for (const each of [name, ...others]) graph.doubted.set(each, doubted);
  }
  return doubted;
}

/**
 * Every input that the query being worked out rests on so far, however far. The query depends on each of them from then
 * on, so that what it says of them is never out of date.
 */
export function inputsBelow(
  graph: Graph,
): readonly { readonly name: string; readonly value: unknown }[] {
  const frame = graph.stack.at(-1);
  const found: Cell[] = [];
  if (frame === undefined) return [];
  const seen = new Set<Cell>();
  const waiting = readSoFar(frame);
  for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
    // spares a look: what it rests on is the same each time
    if (seen.has(cell)) continue;
    seen.add(cell);
    if (cell.kind.compute === undefined) {
      found.push(cell);
      depend(graph, cell);
    } else for (const need of listOf(cell.needs)) waiting.push(need);
  }
  return found.map(({ kind: { name }, value }) => ({ name, value }));
}

function cellOf(graph: Graph, name: string, of: string): Cell | undefined {
  return graph.kinds.get(name)?.cells.get(of);
}

const NONE: readonly Cell[] = [];

function addCell(
  graph: Graph,
  name: string,
  of: string,
  value: unknown,
  revision: number,
  compute?: Compute,
  owner?: unknown,
): Cell {
  let kind = graph.kinds.get(name);
  if (kind === undefined) {
    kind = { name, compute, owner, cells: new Map() };
    graph.kinds.set(name, kind);
  }
  const cell: Cell = {
    kind,
    of,
    value,
    state: compute === undefined ? "clean" : "stale",
    changed: revision,
    checked: revision,
    needs: NONE,
    usedBy: NONE,
  };
  kind.cells.set(of, cell);
  return cell;
}

function keyOf({ cell: { kind, of } }: Frame): string {
  return of === "" ? kind.name : `${kind.name} ${of}`;
}

/** Lists longer than this are looked through as sets. */
const FEW = 12;

function depend(graph: Graph, cell: Cell): void {
  const frame = graph.stack[graph.stack.length - 1];
  if (frame === undefined) return;
  if (frame.needs === undefined && frame.before[frame.again] === cell) {
    frame.again++;
    frame.among?.add(cell);
    return;
  }
  if (hasRead(frame, cell)) return;
  frame.needs ??= readSoFar(frame);
  frame.needs.push(cell);
  frame.among?.add(cell);
}

/** Whether a cell has read another, when it does not read what it read the last time next. */
function hasRead(frame: Frame, cell: Cell): boolean {
  const count = frame.needs?.length ?? frame.again;
  if (FEW < count) {
    frame.among ??= new Set(readSoFar(frame));
    return frame.among.has(cell);
  }
  const at = (frame.needs ?? frame.before).indexOf(cell);
  return at !== -1 && at < count;
}

/** What a cell has read, each once, in the order of its first reading; a list of the caller's own. */
function readSoFar({ before, again, needs }: Frame): Cell[] {
  return needs?.slice() ?? before.slice(0, again);
}

function addUser(cell: Cell, user: Cell): void {
  const { usedBy } = cell;
  if (usedBy instanceof Set) usedBy.add(user);
  else {
    const list = listOf(usedBy);
    cell.usedBy =
      list.length < FEW ? linksOf([...list, user]) : new Set([...list, user]);
  }
}

function removeUser(cell: Cell, user: Cell): void {
  const { usedBy } = cell;
  if (usedBy instanceof Set) usedBy.delete(user);
  else cell.usedBy = linksOf(listOf(usedBy).filter((each) => each !== user));
}

/** Takes what a cell has now read in place of what it had read the last time; most often it is the same. */
function takeNeeds(frame: Frame): void {
  const { cell, before } = frame;
  if (frame.needs === undefined && frame.again === before.length) return;
  const needs = frame.needs ?? before.slice(0, frame.again);
  cell.needs = linksOf(needs);
  // spares a look: most cells are worked out for the first time, and had none
  if (before.length === 0) {
    for (const need of needs) addUser(need, cell);
    return;
  }
  const old = new Set(before);
  for (const need of needs) if (!old.delete(need)) addUser(need, cell);
  for (const need of old) removeUser(need, cell);
}

function markUsers(graph: Graph, cell: Cell): void {
  const { usedBy } = cell;
  for (const user of usedBy instanceof Set ? usedBy : listOf(usedBy)) {
    if (user.state !== "clean") continue;
    user.state = "doubtful";
    graph.doubted.get(user.kind.name)?.add(user.of);
    markUsers(graph, user);
  }
}

/** Makes a cell clean that is not. */
function refresh(graph: Graph, cell: Cell): void {
  const { state, kind } = cell;
  if (state === "at work") {
    const at = graph.stack.findIndex((frame) => frame.cell === cell);
    throw new Loop(graph.stack.slice(at).map(keyOf));
  }
  const frame: Frame = {
    cell,
    before: listOf(cell.needs),
    again: 0,
    needs: undefined,
    among: undefined,
  };
  cell.state = "at work";
  graph.stack.push(frame);
  try {
    if (state === "stale" || needsChanged(graph, frame))
      workOut(graph, frame, kind.compute);
    cell.state = "clean";
    cell.checked = graph.revision;
  } catch (error) {
    // asked again it is worked out again: a failure is not remembered
    cell.state = "stale";
    graph.doubted.get(kind.name)?.add(cell.of);
    throw error;
  } finally {
    graph.stack.pop();
  }
}

function needsChanged(graph: Graph, { cell, before }: Frame): boolean {
  for (const need of before) {
    if (need.state !== "clean") refresh(graph, need);
    if (cell.checked < need.changed) return true;
  }
  return false;
}

function workOut(
  graph: Graph,
  frame: Frame,
  compute: Compute | undefined,
): void {
  const { cell } = frame;
  graph.trace?.(keyOf(frame));
  try {
    // a query is asked with the owner that its function takes
    const value = compute?.(cell.kind.owner as never, cell.of);
    if (!equal(value, cell.value)) {
      cell.value = value;
      cell.changed = graph.revision;
    }
  } finally {
    takeNeeds(frame);
  }
}
