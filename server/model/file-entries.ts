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
  const context = contextOf(lines);
  const same =
    before !== undefined &&
    before.context.system === context.system &&
    before.context.isJob === context.isJob;
  const entries = same
    ? keepEntries(lines.blocks, before, context)
    : lines.blocks.map((block) => readEntry(block, context));
  const openings = entries.filter(
    ({ kind }) => kind === "job" || kind === "shop",
  );
  return { path, lines, context, entries, openings };
}

/** The entry of every block that is still there. An edit leaves the blocks before and after it, so most are found where they were, from either end. */
function keepEntries(
  blocks: readonly Block[],
  { entries: old }: FileEntries,
  context: FileContext,
): readonly Entry[] {
  const most = Math.min(blocks.length, old.length);
  let head = 0;
  while (head < most && old[head]?.block === blocks[head]) head++;
  let tail = 0;
  while (
    tail < most - head &&
    old.at(-1 - tail)?.block === blocks.at(-1 - tail)
  )
    tail++;
  const between = new Map(
    old
      .slice(head, old.length - tail)
      .map((entry) => [entry.block, entry] as const),
  );
  return [
    ...old.slice(0, head),
    ...blocks
      .slice(head, blocks.length - tail)
      .map((block) => between.get(block) ?? readEntry(block, context)),
    ...old.slice(old.length - tail),
  ];
}

/** The first job or shop of a file says the unit of its bare lengths. */
function contextOf(lines: FileLines): FileContext {
  const opening =
    lines.blocks.find((block) => block.kind === "job") ??
    lines.blocks.find((block) => block.kind === "shop");
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
