// The entries of one file, read block by block; a block that an edit did not touch keeps its entry. A file of more lines than any record
// needs is read up to there, so that none takes the memory of the machine.
import { lineCount, type Block, type FileLines } from "../../grammar/lines.ts";
import { valueIn, type Entry } from "./entry.ts";
import type { FileContext } from "./line-reading.ts";
import { readEntry, unreadEntry } from "./read-entry.ts";

/** Lines of a file that are read. A record of a thousand fits has fewer than a tenth of them. */
export const MOST_LINES = 50_000;

export interface FileEntries {
  readonly path: string;
  readonly lines: FileLines;
  readonly context: FileContext;
  /** One a block, in order; of a file that is too long, the last stands for all that is not read. */
  readonly entries: readonly Entry[];
  /** Those that open a job or a shop: one, in a file as it should be. */
  readonly openings: readonly Entry[];
  /** No line of it was left out for its length. */
  readonly isWhole: boolean;
  /** The entries as they were before, where each that changed took another's place; `changedEntries` asks. */
  readonly since?:
    | {
        readonly entries: readonly Entry[];
        readonly changed: readonly number[];
      }
    | undefined;
}

/**
 * The numbers of the entries that are not the same objects as in another state of the file; undefined where they are not as many. After
 * an edit it costs nothing, however long the file is.
 */
export function changedEntries(
  before: FileEntries,
  { entries, since }: FileEntries,
): readonly number[] | undefined {
  const old = before.entries;
  // spares a look: of the same list none changed
  if (old === entries) return [];
  // spares a look: these are told as they were read
  if (since?.entries === old) return since.changed;
  if (old.length !== entries.length) return undefined;
  return entries.flatMap((entry, index) =>
    entry === old[index] ? [] : [index],
  );
}

export function readFile(
  path: string,
  lines: FileLines,
  before: FileEntries | undefined,
): FileEntries {
  return lineCount(lines) <= MOST_LINES
    ? readWhole(path, lines, before?.isWhole === true ? before : undefined)
    : readBeginning(path, lines);
}

/** Reads the blocks that end within the limit. The next block says that it and those after it are not read. */
function readBeginning(path: string, lines: FileLines): FileEntries {
  const { blocks, starts } = lines;
  const next = blocks.findIndex(
    (block, index) => MOST_LINES < (starts[index] ?? 0) + block.lines.length,
  );
  const context = contextOf(
    openingBlock({ ...lines, blocks: blocks.slice(0, next) }),
  );
  const entries = blocks
    .slice(0, next)
    .map((block) => readEntry(block, context))
    .concat(
      blocks
        .slice(next, next + 1)
        .map((block) =>
          unreadEntry(
            block,
            `This file has ${counted(lineCount(lines))} lines, and a file is read up to its line ${counted(MOST_LINES)}: nothing is known from this entry on. Take what stands from here into files of its own; a \`use\` under the job brings them together.`,
          ),
        ),
    );
  return {
    path,
    lines,
    context,
    entries,
    openings: entries.filter(isOpening),
    isWhole: false,
  };
}

function counted(number: number): string {
  return number.toLocaleString("en-US");
}

function readWhole(
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
    return {
      path,
      lines,
      context,
      isWhole: true,
      ...keepEntries(lines, before, context),
    };
  const entries = lines.blocks.map((block) => readEntry(block, context));
  const openings = entries.filter(isOpening);
  return { path, lines, context, entries, openings, isWhole: true };
}

/**
 * The entry of every block that is still there. An edit leaves the blocks before and after it, so most are found where they were, from
 * either end; the entries of those are not looked at.
 */
function keepEntries(
  { blocks }: FileLines,
  before: FileEntries,
  context: FileContext,
): Pick<FileEntries, "entries" | "openings" | "since"> {
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
    // spares a look: an edit of other entries leaves the openings as they are
    gone.some(isOpening) || fresh.some(isOpening)
      ? entries.filter(isOpening)
      : before.openings;
  const since =
    fresh.length === gone.length
      ? {
          entries: old,
          changed: fresh.flatMap((entry, index) =>
            entry === gone[index] ? [] : [head + index],
          ),
        }
      : undefined;
  return { entries, openings, since };
}

/** A job or a shop. */
export function isOpening({ kind }: Entry): boolean {
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
