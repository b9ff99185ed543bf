// The entries of one file, read block by block; a block that an edit did not touch keeps its entry.
import type { Block, FileLines } from "../../grammar/lines.ts";
import { readEntry, valueIn, type Entry, type FileContext } from "./entry.ts";

export interface FileEntries {
  readonly path: string;
  readonly lines: FileLines;
  readonly context: FileContext;
  /** One a block, in order. */
  readonly entries: readonly Entry[];
  /** Those that open a job or a shop: one, in a file as it should be. */
  readonly openings: readonly Entry[];
}

export function readFile(
  path: string,
  lines: FileLines,
  before: FileEntries | undefined,
): FileEntries {
  const opening = openingBlock(lines);
  const context =
    before !== undefined && openingBlock(before.lines) === opening
      ? before.context
      : contextOf(opening);
  if (
    before !== undefined &&
    before.context.system === context.system &&
    before.context.isJob === context.isJob
  )
    return { path, lines, context, ...keepEntries(lines, before, context) };
  const entries = lines.blocks.map((block) => readEntry(block, context));
  return { path, lines, context, entries, openings: entries.filter(isOpening) };
}

/**
 * The entry of every block that is still there. An edit leaves the blocks before and after it, so most are found where they were, from
 * either end; the entries of those are not looked at.
 */
function keepEntries(
  { blocks }: FileLines,
  before: FileEntries,
  context: FileContext,
): Pick<FileEntries, "entries" | "openings"> {
  const {
    entries: old,
    lines: { blocks: oldBlocks },
  } = before;
  const most = Math.min(blocks.length, old.length);
  let head = 0;
  while (head < most && oldBlocks[head] === blocks[head]) head++;
  let tail = 0;
  while (
    tail < most - head &&
    oldBlocks[old.length - 1 - tail] === blocks[blocks.length - 1 - tail]
  )
    tail++;
  const gone = old.slice(head, old.length - tail);
  const between = new Map(gone.map((entry) => [entry.block, entry] as const));
  const fresh = blocks
    .slice(head, blocks.length - tail)
    .map((block) => between.get(block) ?? readEntry(block, context));
  const entries = old
    .slice(0, head)
    .concat(fresh, old.slice(old.length - tail));
  const openings =
    gone.some(isOpening) || fresh.some(isOpening)
      ? entries.filter(isOpening)
      : before.openings;
  return { entries, openings };
}

function isOpening({ kind }: Entry): boolean {
  return kind === "job" || kind === "shop";
}

/** The first job or shop of a file, a job before a shop. */
function openingBlock({ blocks }: FileLines): Block | undefined {
  return (
    blocks.find((block) => block.kind === "job") ??
    blocks.find((block) => block.kind === "shop")
  );
}

/** The opening of a file says the unit of its bare lengths. */
function contextOf(opening: Block | undefined): FileContext {
  const isJob = opening?.kind === "job";
  if (opening === undefined) return { system: undefined, isJob };
  return {
    system: valueIn(
      readEntry(opening, { system: undefined, isJob }),
      "UnitsFact",
    ),
    isJob,
  };
}
