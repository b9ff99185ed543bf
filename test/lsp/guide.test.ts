// The requests of guided work over the wire: questions answered one by one, readings typed, and the edit made by the editor.
import { expect, test } from "vitest";
import type {
  Answer,
  NewJobAnswer,
  TakingPlan,
  TakingPrompt,
  TakingSetup,
} from "../../server/protocol/guide.ts";
import { asOffered } from "../../server/ide/interview.ts";
import { serveHere } from "./in-process.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/job.thou`;
const JOB = `job lever
  units inch
  use "crib.thou"

part shaft
journal front on shaft
  limits 0.8740 to 0.8745
`;
const CRIB = `shop crib
  units inch

gauge mic-1
  kind micrometer
  resolution 0.0001
`;

function start() {
  const { editor } = serveHere(new Map([[`${FOLDER}/crib.thou`, CRIB]]));
  const setup = (answers: readonly Answer[], position: unknown = null) =>
    editor.request<TakingSetup>("thou/takingSetup", {
      uri: URI,
      ref: null,
      position,
      answers,
    });
  const step = (plan: TakingPlan, inputs: readonly string[]) =>
    editor.request<TakingPrompt | null>("thou/takingStep", {
      uri: URI,
      plan,
      inputs,
    });
  return { editor, setup, step };
}

/** Answers everything as it is offered. */
async function planOf(
  setup: (
    answers: readonly Answer[],
    position?: unknown,
  ) => Promise<TakingSetup>,
): Promise<TakingPlan> {
  let answers: readonly Answer[] = [];
  for (;;) {
    const next = await setup(answers, { line: 6, character: 0 });
    if ("plan" in next) return next.plan;
    if ("sentence" in next) throw new Error(next.sentence);
    const { question, accepted } = next;
    expect(accepted).toBe(answers.length);
    answers = [...answers, { key: question.key, values: asOffered(question) }];
  }
}

test("readings are taken and stand in the record", async () => {
  const { editor, setup, step } = start();
  await editor.start([FOLDER]);
  await editor.open(URI, JOB);
  const plan = await planOf(setup);
  expect(plan).toMatchObject({
    ref: "journal front",
    gauge: "mic-1",
    places: ["near", "far"],
    date: "2026-11-05",
  });
  const after = await step(plan, ["0.8742", "0.8744"]);
  expect(after?.text).toContain("Mean 0.8743 in, out-of-round 0.0002 in.");
  const edit = after?.edit;
  if (edit === null || edit === undefined) throw new Error("there is an edit");
  expect(edit.version).toBe(1);
  const at = { line: edit.line, character: edit.character };
  await editor.change(URI, { range: { start: at, end: at }, text: edit.text });
  const hints = await editor.hints(URI);
  expect(hints.map(({ position }) => position.line)).toContain(7);
  expect(await editor.codes(URI)).not.toContain("line-damaged");
});

test("the record changes meanwhile: the lines go to the entry wherever it is, or a sentence says that it is gone", async () => {
  const { editor, setup, step } = start();
  await editor.start([FOLDER]);
  await editor.open(URI, JOB);
  const plan = await planOf(setup);
  const before = await step(plan, ["0.8742"]);
  const top = { line: 0, character: 0 };
  await editor.change(URI, {
    range: { start: top, end: top },
    text: "# a remark\n",
  });
  const moved = await step(plan, ["0.8742"]);
  expect(moved?.edit?.version).toBe(2);
  expect(moved?.edit?.line).toBe((before?.edit?.line ?? 0) + 1);
  await editor.change(URI, { text: "job lever\n  units inch\n" });
  const gone = await step(plan, ["0.8742"]);
  expect(gone?.edit).toBeNull();
  expect(gone?.gone).toContain("journal front is no longer in this record");
  expect(gone?.lines).toEqual(["read near 0.8742 with mic-1 on 2026-11-05"]);
  await editor.close(URI);
  expect((await step(plan, ["0.8742"]))?.gone).toContain("no longer there");
});

test("a new job is asked for and written", async () => {
  const { editor } = start();
  await editor.start([FOLDER]);
  let answers: readonly Answer[] = [];
  for (;;) {
    const next = await editor.request<NewJobAnswer>("thou/newJob", {
      answers,
      names: ["crib.thou", "new-job.thou"],
      crib: CRIB,
    });
    if ("files" in next) {
      expect(next.files.map(({ name }) => name)).toEqual(["new-job-2.thou"]);
      const uri = `${FOLDER}/new-job-2.thou`;
      await editor.open(uri, next.files[0]?.text ?? "");
      expect(await editor.codes(uri)).toEqual(["cut-unchecked"]);
      break;
    }
    const { question } = next;
    answers = [...answers, { key: question.key, values: asOffered(question) }];
  }
});

test("whatever comes in, an answer goes out", async () => {
  const { editor } = start();
  await editor.start([FOLDER]);
  for (const params of [null, {}, [], { uri: 7, answers: 8, inputs: {} }]) {
    expect(await editor.request("thou/takingSetup", params)).toHaveProperty(
      "sentence",
    );
    expect(await editor.request("thou/takingStep", params)).toBeNull();
  }
  expect(editor.told.logged).toEqual([]);
});
