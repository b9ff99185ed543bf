// Threads at work: each has a batch or waits for one; one that ends is taken the place of, and what it was at is said to be unchecked.
import type { Batch, BatchDone, BatchQueue } from "./batch-queue.ts";

/** A thread that checks records: `serveChecks` runs in it. */
export interface Thread {
  post(message: Batch): void;
  /** Called with each answer, or once with what ended the thread. */
  listen(answer: (done: BatchDone) => void, ended: (why: string) => void): void;
  stop(): void;
}

export interface Crew {
  /** Hands a batch to every thread that has none, as long as there is one to hand out; starts those that are not there yet, or no more. */
  feed(): void;
  stop(): void;
}

/**
 * @param most how many threads may work at once
 * @param came called whenever a batch is done, or will not be
 */
export function createCrew(
  startThread: () => Thread,
  most: number,
  queue: Pick<BatchQueue, "isReady" | "take" | "done" | "lost">,
  came: () => void,
): Crew {
  const idle = new Set<Thread>();
  const busy = new Map<Thread, Batch>();

  function feed(): void {
    while (queue.isReady()) {
      const [thread = idle.size + busy.size < most ? start() : undefined] =
        idle;
      if (thread === undefined) return;
      const batch = queue.take();
      idle.delete(thread);
      busy.set(thread, batch);
      thread.post(batch);
    }
  }

  function start(): Thread {
    const thread = startThread();
    thread.listen(
      (done) => {
        queue.done(done);
        busy.delete(thread);
        idle.add(thread);
        feed();
        came();
      },
      (why) => {
        const batch = busy.get(thread);
        busy.delete(thread);
        idle.delete(thread);
        if (batch !== undefined) queue.lost(batch, why);
        feed();
        came();
      },
    );
    return thread;
  }

  return {
    feed,
    stop() {
      for (const thread of [...idle, ...busy.keys()]) thread.stop();
    },
  };
}
