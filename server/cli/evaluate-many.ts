// Many records, in threads where it pays: each thread has a project of its own, and what they find comes out in the order of the files,
// whatever thread is done first. One record is evaluate-record.ts's.
import { openCache, type CacheOptions } from "./answer-cache.ts";
import {
  createCachedEvaluator,
  createEvaluator,
  type Evaluator,
} from "./evaluate-record.ts";
import type { FoundFile, FoundFiles } from "./find-files.ts";
import type { CheckedProject } from "./io.ts";
import type { ReadBytes } from "./load-files.ts";
import { partOf, type ReportForm } from "./report-form.ts";
import type { ReportPart } from "./report.ts";
import { shown } from "./terminal-text.ts";

/** A thread that checks records: `serveChecks` runs in it. */
export interface Thread {
  post(message: Batch): void;
  /** Called with each answer, or once with what ended the thread. */
  listen(answer: (done: BatchDone) => void, ended: (why: string) => void): void;
  stop(): void;
}

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
const BATCH = 16;
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
      if (checked?.isEmpty === true && !form.isBrief)
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
  const batches = Math.ceil(files.length / BATCH);
  const batchOf = (number: number): Batch => ({
    number,
    cwd,
    form,
    files: files.slice(number * BATCH, (number + 1) * BATCH),
    cache,
  });
  const threads = new Set<Thread>();
  const done = new Map<number, readonly Evaluated[]>();
  const used = new Set<string>();
  let next = 0;
  let out = 0;
  let wake = (): void => undefined;
  const idle = new Set<Thread>();
  const busy = new Map<Thread, Batch>();
  /** Hands a batch to every thread that has none, as long as none runs too far ahead; starts those that are not there yet, or no more. */
  const feed = (): void => {
    for (;;) {
      if (next === batches || out + AHEAD * jobs <= next) return;
      const [thread = idle.size + busy.size < jobs ? start() : undefined] =
        idle;
      if (thread === undefined) return;
      const batch = batchOf(next++);
      idle.delete(thread);
      busy.set(thread, batch);
      thread.post(batch);
    }
  };
  const start = (): Thread => {
    const thread = startThread();
    threads.add(thread);
    thread.listen(
      ({ number, records, used: more }) => {
        done.set(number, records);
        for (const each of more) used.add(each);
        busy.delete(thread);
        idle.add(thread);
        feed();
        wake();
      },
      (why) => {
        // what it was at is said to be unchecked; the others go on, and another takes its place
        const batch = busy.get(thread);
        threads.delete(thread);
        busy.delete(thread);
        idle.delete(thread);
        if (batch !== undefined)
          done.set(
            batch.number,
            batch.files.map(({ name }) => ({
              part: undefined,
              sentences: [
                `${shown(name)} could not be checked: the thread that was at it ended (${shown(why)}). Check it by itself to see why.`,
              ],
            })),
          );
        feed();
        wake();
      },
    );
    return thread;
  };
  try {
    feed();
    while (out < batches) {
      const records = done.get(out);
      if (records === undefined) {
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
        continue;
      }
      done.delete(out);
      out++;
      feed();
      yield* records;
    }
    return [...used].sort();
  } finally {
    for (const thread of threads) thread.stop();
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
