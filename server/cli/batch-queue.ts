// Files by the batch: handed out in order but not too far ahead, done in any order, and given back in order.
import type { CacheOptions } from "./answer-cache.ts";
import type { FoundFile, FoundFiles } from "./find-files.ts";
import type { ReportForm } from "./report-form.ts";
import type { ReportPart } from "./report.ts";
import { shown } from "./terminal-text.ts";

/** Files to check, one after another. */
export interface Batch {
  readonly number: number;
  readonly cwd: string;
  readonly form: ReportForm;
  readonly files: readonly FoundFile[];
  readonly cache: CacheOptions | undefined;
}

export interface BatchDone {
  readonly number: number;
  readonly records: readonly Evaluated[];
  /** Files that others used, those left out that another answer of the thread named. */
  readonly used: readonly string[];
}

export interface Evaluated {
  /** What the report takes of it; undefined where it could not be checked: the sentences say why. */
  readonly part: ReportPart | undefined;
  readonly sentences: readonly string[];
  /** What is worth a word though nothing is the matter with the check. */
  readonly notes?: readonly string[];
}

export interface BatchQueue {
  /** Whether there is a batch to hand out now. */
  isReady(): boolean;
  take(): Batch;
  done(done: BatchDone): void;
  /** It will not be done: its files are said to be unchecked. */
  lost(batch: Batch, why: string): void;
  /** The records of the next batch in order; undefined where it is not done yet. */
  inOrder(): readonly Evaluated[] | undefined;
  /** Every batch was given back. */
  isOver(): boolean;
  /** Files that others used, sorted. */
  used(): readonly string[];
}

const BATCH = 16;

/** @param ahead how many batches may be handed out and not given back: memory stays flat */
export function createQueue(
  files: FoundFiles,
  batchOf: (number: number, files: Batch["files"]) => Batch,
  ahead: number,
): BatchQueue {
  const batches = Math.ceil(files.length / BATCH);
  const found = new Map<number, readonly Evaluated[]>();
  const used = new Set<string>();
  let next = 0;
  let out = 0;
  return {
    isReady: () => next < batches && next < out + ahead,
    take() {
      const number = next++;
      return batchOf(number, files.slice(number * BATCH, next * BATCH));
    },
    done({ number, records, used: more }) {
      found.set(number, records);
      for (const each of more) used.add(each);
    },
    lost({ number, files: unchecked }, why) {
      found.set(
        number,
        unchecked.map(({ name }) => ({
          part: undefined,
          sentences: [
            `${shown(name)} could not be checked: the thread that was at it ended (${shown(why)}). Check it by itself to see why.`,
          ],
        })),
      );
    },
    inOrder() {
      const records = found.get(out);
      if (records !== undefined) found.delete(out++);
      return records;
    },
    isOver: () => out === batches,
    used: () => [...used].sort(),
  };
}
