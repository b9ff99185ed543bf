// Many records, in threads where it pays: each thread has a project of its own, and what they find comes out in the order of the files,
// whatever thread is done first. One record is evaluate-record.ts's.
import { openCache, type CacheOptions } from "./answer-cache.ts";
import {
  createCachedEvaluator,
  createEvaluator,
  type Evaluator,
} from "./evaluate-record.ts";
import {
  createQueue,
  type Batch,
  type BatchDone,
  type Evaluated,
} from "./batch-queue.ts";
import { createCrew, type Thread } from "./crew.ts";
import type { FoundFile, FoundFiles } from "./find-files.ts";
import type { CheckedProject } from "./io.ts";
import type { ReadBytes } from "./load-files.ts";
import { partOf, type ReportForm } from "./report-form.ts";
import { shown } from "./terminal-text.ts";

export interface Many {
  readonly createProject: () => CheckedProject;
  readonly form: ReportForm;
  readonly cwd: string;
  /** The state that files are read in; the disk where none is given. Only the disk is read in threads. */
  readonly read: ReadBytes | undefined;
  /** Undefined where there are none to start. */
  readonly startThread: (() => Thread) | undefined;
  /** How many threads may work at once. */
  readonly jobs: number;
  /** Where answers are kept; none where left off. */
  readonly cache?: CacheOptions | undefined;
}

/** Fewer files than these are done before a second thread has started. */
const LEAST_FOR_THREADS = 64;
/** So many batches a thread may be ahead of what was handed out: memory stays flat. */
const AHEAD = 3;

/** Each file in order, as soon as it is known. Ends with the files that others used, sorted. */
export async function* evaluateMany(
  files: FoundFiles,
  many: Many,
): AsyncGenerator<Evaluated, readonly string[]> {
  const { startThread, jobs, read } = many;
  const isMany =
    startThread !== undefined &&
    read === undefined &&
    1 < jobs &&
    LEAST_FOR_THREADS <= files.length;
  return isMany
    ? yield* inThreads(files, many, startThread)
    : yield* here(files, many);
}

/** One after another, in this thread. */
async function* here(
  files: FoundFiles,
  { createProject, form, cwd, read, cache }: Many,
): AsyncGenerator<Evaluated, readonly string[]> {
  const one = createOneByOne(createProject(), form, cwd, read, cache);
  for (const file of files) yield await one.evaluate(file);
  return [...one.newlyUsed()].sort();
}

interface OneByOne {
  evaluate(file: FoundFile): Promise<Evaluated>;
  newlyUsed(): readonly string[];
}

function createOneByOne(
  project: CheckedProject,
  form: ReportForm,
  cwd: string,
  read: ReadBytes | undefined,
  cache: CacheOptions | undefined,
): OneByOne {
  let sentences: string[] = [];
  let notes: string[] = [];
  const evaluator = evaluatorWith(
    project,
    cwd,
    { tell: (said) => sentences.push(said), note: (said) => notes.push(said) },
    read,
    cache,
  );
  return {
    async evaluate(file) {
      sentences = [];
      notes = [];
      const checked = await evaluator.evaluate(file);
      evaluator.release(file);
      if (checked?.isEmpty === true)
        notes.push(
          `${shown(file.name)} holds no entries: "thou explain job" says how a record begins.`,
        );
      const part = checked === undefined ? undefined : partOf(checked, form);
      return { part, sentences, notes };
    },
    newlyUsed: () => evaluator.newlyUsed(),
  };
}

/** With the cache where there is one. */
export function evaluatorWith(
  project: CheckedProject,
  cwd: string,
  { tell, note }: Readonly<Record<"tell" | "note", (said: string) => void>>,
  read: ReadBytes | undefined,
  cache: CacheOptions | undefined,
): Evaluator {
  return cache === undefined
    ? createEvaluator(project, cwd, tell, read)
    : createCachedEvaluator(project, cwd, tell, read, openCache(cache, note));
}

async function* inThreads(
  files: FoundFiles,
  { form, cwd, jobs, cache }: Many,
  startThread: () => Thread,
): AsyncGenerator<Evaluated, readonly string[]> {
  const queue = createQueue(
    files,
    (number, some) => ({ number, cwd, form, files: some, cache }),
    AHEAD * jobs,
  );
  let wake = (): void => undefined;
  const crew = createCrew(startThread, jobs, queue, () => {
    wake();
  });
  try {
    crew.feed();
    while (!queue.isOver()) {
      const records = queue.inOrder();
      if (records === undefined) {
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
        continue;
      }
      crew.feed();
      yield* records;
    }
    return queue.used();
  } finally {
    crew.stop();
  }
}

/** Runs in a thread: checks each batch that comes and answers with what was found. */
export function serveChecks(
  createProject: () => CheckedProject,
  port: {
    on(event: "message", listener: (batch: Batch) => void): unknown;
    postMessage(done: BatchDone): void;
  },
): void {
  let one: OneByOne | undefined;
  port.on("message", ({ number, cwd, form, files, cache }) => {
    void (async () => {
      one ??= createOneByOne(createProject(), form, cwd, undefined, cache);
      const records: Evaluated[] = [];
      for (const file of files) records.push(await one.evaluate(file));
      port.postMessage({ number, records, used: one.newlyUsed() });
    })();
  });
}
