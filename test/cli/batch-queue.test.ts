// Files by the batch: out in order and not too far ahead, done in any order, back in order; and what becomes of a batch that nobody did.
import { expect, test } from "vitest";
import { createQueue, type Batch } from "../../server/cli/batch-queue.ts";
import { createCrew, type Thread } from "../../server/cli/crew.ts";

const files = Array.from({ length: 40 }, (_, index) => ({
  path: `/${String(index)}.thou`,
  name: `${String(index)}.thou`,
}));

function queue(ahead: number) {
  return createQueue(
    files,
    (number, some) => ({
      number,
      cwd: "/",
      form: {
        format: "json",
        isBrief: false,
        cwd: "/",
        columns: 100,
        hasColours: false,
      },
      files: some,
      cache: undefined,
    }),
    ahead,
  );
}

const done = (
  { number, files: some }: Batch,
  used: readonly string[] = [],
) => ({
  number,
  records: some.map(({ name }) => ({ part: undefined, sentences: [name] })),
  used,
});

test("batches go out as far ahead as they may, and come back in order whichever is done first", () => {
  const batches = queue(2);
  const [first, second] = [batches.take(), batches.take()];
  expect([first.number, second.number]).toEqual([0, 1]);
  expect(batches.isReady()).toBe(false);
  batches.done(done(second, ["/b", "/a"]));
  expect(batches.inOrder()).toBeUndefined();
  batches.done(done(first, ["/a"]));
  expect(batches.inOrder()).toHaveLength(16);
  expect(batches.isReady()).toBe(true);
  const third = batches.take();
  expect(third.files.map(({ name }) => name).at(-1)).toBe("39.thou");
  expect(batches.isReady()).toBe(false);
  batches.done(done(third));
  expect(batches.inOrder()?.[0]?.sentences).toEqual(["16.thou"]);
  expect(batches.isOver()).toBe(false);
  expect(batches.inOrder()).toHaveLength(8);
  expect(batches.isOver()).toBe(true);
  expect(batches.used()).toEqual(["/a", "/b"]);
});

test("the files of a lost one are unchecked, each with why", () => {
  const batches = queue(2);
  batches.lost(batches.take(), "out of memory");
  expect(batches.inOrder()?.[15]).toEqual({
    part: undefined,
    sentences: [
      "15.thou could not be checked: the thread that was at it ended (out of memory). Check it by itself to see why.",
    ],
  });
});

test("no more threads than may work at once; one that ends is made up for, and those that live are stopped", () => {
  const batches = queue(3);
  const posted: number[] = [];
  const threads: { done: (batch: Batch) => void; ends: () => void }[] = [];
  let [stopped, came, last] = [0, 0, undefined as Batch | undefined];
  const crew = createCrew(
    (): Thread => {
      let [answer, end]: Parameters<Thread["listen"]> = [
        () => undefined,
        () => undefined,
      ];
      threads.push({
        done: (batch) => {
          answer(done(batch));
        },
        ends: () => {
          end("it was stopped");
        },
      });
      return {
        post(batch) {
          posted.push(batch.number);
          last = batch;
        },
        listen(first, second) {
          [answer, end] = [first, second];
        },
        stop() {
          stopped++;
        },
      };
    },
    2,
    batches,
    () => came++,
  );
  crew.feed();
  expect(threads).toHaveLength(2);
  expect(posted).toEqual([0, 1]);
  threads[0]?.ends();
  expect(threads).toHaveLength(3);
  expect(posted).toEqual([0, 1, 2]);
  if (last !== undefined) threads[2]?.done(last);
  expect(came).toBe(2);
  expect(batches.inOrder()?.[0]?.sentences[0]).toContain("0.thou could not");
  crew.stop();
  expect(stopped).toBe(2);
});
