// The entries of one file, read block by block; a block that an edit did not touch keeps its entry.
import type { FileLines } from "../../grammar/lines.ts";
import { readEntry, valueIn, type Entry, type FileContext } from "./entry.ts";

export interface FileEntries {
  readonly path: string;
  readonly lines: FileLines;
  readonly context: FileContext;
  /** One a block, in order. */
  readonly entries: readonly Entry[];
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
  const keep = new Map(
    same ? before.entries.map((entry) => [entry.block, entry] as const) : [],
  );
  const entries = lines.blocks.map(
    (block) => keep.get(block) ?? readEntry(block, context),
  );
  return { path, lines, context, entries };
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
