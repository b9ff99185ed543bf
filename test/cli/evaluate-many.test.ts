// Many records in threads: the order they come out in, threads that end, and how far ahead they run. The threads here are of this process.
import { Readable } from "node:stream";
import { describe, expect, test } from "vitest";
import type {
  Batch,
  BatchDone,
  Evaluated,
} from "../../server/cli/batch-queue.ts";
import type { Thread } from "../../server/cli/crew.ts";
import { evaluateMany, serveChecks } from "../../server/cli/evaluate-many.ts";
import type { ReportForm } from "../../server/cli/report-form.ts";
import { createProgress } from "../../server/cli/progress.ts";
import { createFakeProject } from "./fake-project.ts";
import { folderWith } from "./in-process.ts";

const files = Array.from({ length: 200 }, (_, index) => ({
  path: `/${String(index).padStart(3, "0")}.thou`,
  name: `${String(index).padStart(3, "0")}.thou`,
}));

const form: ReportForm = {
  format: "json",
  isBrief: false,
  cwd: "/",
  columns: 100,
  hasColours: false,
};

/**
 * A thread that answers each batch after so many turns, with one sentence a file; it ends at the batch that `endsAt` names, or right after
 * its first answer.
 */
function thread(
  turns: (batch: Batch) => number,
  endsAt?: number | "once it has answered",
): Thread {
  let answer: (done: BatchDone) => void = () => undefined;
  let ended: (why: string) => void = () => undefined;
  return {
    post(batch) {
      if (batch.number === endsAt) {
        setTimeout(() => {
          ended("out of memory");
        });
        return;
      }
      const done: BatchDone = {
        number: batch.number,
        used: [`/crib-${String(batch.number % 2)}.thou`],
        records: batch.files.map(({ name }): Evaluated => ({
          part: undefined,
          sentences: [name],
        })),
      };
      setTimeout(() => {
        answer(done);
        if (endsAt === "once it has answered") ended("it was stopped");
      }, turns(batch));
    },
    listen(first, second) {
      answer = first;
      ended = second;
    },
    stop: () => undefined,
  };
}

async function all(
  startThread: () => Thread,
  jobs = 3,
): Promise<{ said: readonly string[]; used: readonly string[] }> {
  const many = evaluateMany(files, {
    createProject: () => createFakeProject({ checks: {} }),
    form,
    cwd: "/",
    read: undefined,
    startThread,
    jobs,
  });
  const said: string[] = [];
  for (;;) {
    const next = await many.next();
    if (next.done === true) return { said, used: next.value };
    said.push(...next.value.sentences);
  }
}

describe("threads", () => {
  test("whichever is done first, the files come in their order", async () => {
    const { said, used } = await all(() =>
      thread(({ number }) => (number * 7) % 5),
    );
    expect(said).toEqual(files.map(({ name }) => name));
    expect(used).toEqual(["/crib-0.thou", "/crib-1.thou"]);
  });

  test("one that ends leaves its files unchecked and says so; the rest is checked", async () => {
    const { said } = await all(() => thread(() => 0, 4));
    expect(said).toHaveLength(files.length);
    const missed = said.filter((each) => each.includes("could not be checked"));
    expect(missed).toHaveLength(16);
    expect(missed[0]).toBe(
      "064.thou could not be checked: the thread that was at it ended (out of memory). Check it by itself to see why.",
    );
  });

  test("those that end while they wait for work are made up for", async () => {
    let reading = 0;
    const many = evaluateMany(files, {
      createProject: () => createFakeProject({ checks: {} }),
      form,
      cwd: "/",
      read: undefined,
      startThread: () => thread(() => 0, "once it has answered"),
      jobs: 2,
    });
    const said: string[] = [];
    for await (const { sentences } of many) {
      said.push(...sentences);
      // whoever reads is slow: the threads have run as far ahead as they may, and ended
      if (reading++ % 50 === 0)
        await new Promise((resolve) => setTimeout(resolve, 5));
    }
    expect(said).toEqual(files.map(({ name }) => name));
  });

  test("none runs further ahead than a few batches", async () => {
    let posted = 0;
    const many = evaluateMany(files, {
      createProject: () => createFakeProject({ checks: {} }),
      form,
      cwd: "/",
      read: undefined,
      startThread: () =>
        thread(() => {
          posted++;
          return 0;
        }),
      jobs: 2,
    });
    await many.next();
    await new Promise((resolve) => setTimeout(resolve, 20));
    // of 13 batches: the one that is handed out, and three ahead for each thread
    expect(posted).toBeLessThanOrEqual(7);
    await many.return([]);
  });
});

/** What a thread answers to each batch of these files. */
async function served(
  batches: readonly (readonly string[])[],
  uses: Readonly<Record<string, readonly string[]>>,
): Promise<readonly BatchDone[]> {
  const cwd = await folderWith(
    Object.fromEntries(
      [...Object.keys(uses), ...Object.values(uses).flat()].map((name) => [
        name,
        "job a\n",
      ]),
    ),
  );
  const answers: BatchDone[] = [];
  let give: (batch: Batch) => void = () => undefined;
  let answered = (): void => undefined;
  serveChecks(() => createFakeProject({ checks: {}, uses }), {
    on(_event, listener) {
      give = listener;
    },
    postMessage(done) {
      answers.push(done);
      answered();
    },
  });
  for (const [number, names] of batches.entries())
    await new Promise<void>((resolve) => {
      answered = resolve;
      const of = names.map((name) => ({ path: `${cwd}/${name}`, name }));
      give({ number, cwd, form, files: of, cache: undefined });
    });
  return answers;
}

describe("a thread", () => {
  test("names a file that others use in one answer alone", async () => {
    const answers = await served(
      [["a.thou", "b.thou"], ["c.thou"], ["d.thou"]],
      {
        "a.thou": ["one.thou"],
        "b.thou": ["one.thou"],
        "c.thou": ["one.thou", "two.thou"],
        "d.thou": ["two.thou"],
      },
    );
    expect(
      answers.map(({ used }) => used.map((each) => each.slice(-8))),
    ).toEqual([["one.thou"], ["two.thou"], []]);
  });

  test("gives of a record what the report shows, and a sentence of one that went in the meantime", async () => {
    const [done] = await served([["a.thou", "gone.thou", "b.thou"]], {
      "a.thou": [],
      "b.thou": [],
    });
    expect(done?.records.map(({ part }) => part?.text)).toEqual([
      '{"file":"a.thou","findings":[],"results":[]}',
      undefined,
      '{"file":"b.thou","findings":[],"results":[]}',
    ]);
    expect(done?.records.map(({ sentences }) => sentences)).toEqual([
      [],
      ["gone.thou cannot be read: there is no such file or folder."],
      [],
    ]);
  });
});

test("progress is one line on a terminal that shows nothing else", () => {
  const written: string[] = [];
  const output = (isTerminal: boolean) => ({
    write: (text: string) => {
      written.push(text);
    },
    drained: () => Promise.resolve(),
    isTerminal,
    columns: 80,
    isClosed: false,
  });
  const io = (out: boolean, err: boolean) => ({
    stdin: Readable.from([]),
    stdout: output(out),
    stderr: output(err),
    cwd: "/",
    env: {},
  });
  let time = 0;
  const shown = createProgress(io(false, true), 300, () => (time += 150));
  for (let step = 0; step < 4; step++) shown.step();
  shown.end();
  expect(written).toEqual([
    "\r1 of 300 files",
    "\r3 of 300 files",
    `\r${" ".repeat(40)}\r`,
  ]);
  written.length = 0;
  for (const [out, err, of] of [
    [true, true, 300],
    [false, false, 300],
    [false, true, 20],
  ] as const) {
    const silent = createProgress(io(out, err), of, () => (time += 500));
    silent.step();
    silent.end();
  }
  expect(written).toEqual([]);
  // a command that says nothing until its end shows it beside that
  createProgress(io(true, true), 300, () => (time += 500), true).step();
  expect(written).toEqual(["\r1 of 300 files"]);
});
