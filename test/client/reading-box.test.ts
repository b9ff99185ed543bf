// The box that readings are typed into: what it shows, the order of what is typed, and how it ends. The editor's box is stood in for here; the
// real one is for the tests in the editor.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { showBox } from "../../client/reading-box.ts";
import type { TakingPlan, TakingPrompt } from "../../server/protocol/guide.ts";
import { Box, boxes } from "./box.ts";

vi.mock("vscode", () => ({
  InputBoxValidationSeverity: { Info: 1, Warning: 2 },
  ThemeIcon: class {
    readonly id: string;
    constructor(id: string) {
      this.id = id;
    }
  },
  window: { createInputBox: () => new Box() },
}));

beforeEach(() => {
  boxes.length = 0;
  vi.useFakeTimers({ toFake: ["Date"] });
});
afterEach(() => {
  vi.useRealTimers();
});

type Arguments = Parameters<typeof showBox>;

const PROMPT = {
  title: "Read journal front",
  step: 1,
  of: 3,
  text: "Read it near the shoulder.",
  placeholder: "0.8742",
  doubt: null,
  offers: [],
  isDone: false,
  gone: null,
};

/** A box whose answers the test gives: to what was typed, a prompt or a failure. */
function box(before: readonly string[] = []) {
  const asked: (readonly string[])[] = [];
  const kept: (readonly string[])[] = [];
  const answers: ((prompt: Partial<TakingPrompt> | Error) => void)[] = [];
  const ask = ((_: string, { inputs }: { inputs: readonly string[] }) => {
    asked.push(inputs);
    return new Promise((resolve, reject) => {
      answers.push((prompt) => {
        if (prompt instanceof Error) reject(prompt);
        else resolve({ ...PROMPT, ...prompt });
      });
    });
  }) as unknown as Arguments[0]; // the one request that a box asks
  const outcome = showBox(
    ask,
    { toString: () => "file:///winch.thou" } as unknown as Arguments[1],
    { ref: "journal front" } as TakingPlan,
    before,
    {
      typed: (inputs) => {
        kept.push(inputs);
        return Promise.resolve();
      },
    },
  );
  const [shown] = boxes;
  if (shown === undefined) throw new Error("no box is shown");
  const rest = () => new Promise(setImmediate);
  return {
    shown,
    asked,
    kept,
    outcome,
    answer: async (prompt: Partial<TakingPrompt> | Error = {}) => {
      answers.shift()?.(prompt);
      await rest();
    },
    type: async (text: string) => {
      shown.value = text;
      await shown.does("accept");
      await rest();
    },
  };
}

test("it shows what is read next, with a button for each word that may be typed", async () => {
  const { shown, answer, asked, type } = box();
  await answer({
    offers: [{ word: "s", label: "Skip" }],
    gone: "The entry is gone",
  });
  expect(shown).toMatchObject({
    title: "Read journal front",
    step: 1,
    totalSteps: 3,
    placeholder: "0.8742",
    validationMessage: {
      message: "The entry is gone. Read it near the shoulder.",
      severity: 1,
    },
  });
  expect(shown.buttons).toMatchObject([
    { iconPath: { id: "arrow-right" }, tooltip: "Skip (s)" },
    { tooltip: "Another gauge, temperature or place (g)" },
  ]);
  await shown.does("button", shown.buttons[0]);
  await type("");
  expect(asked).toEqual([[], ["s"]]);
  await answer({ doubt: "That is a thou off the others. Is it so?" });
  expect(shown.validationMessage).toEqual({
    message: "That is a thou off the others. Is it so?",
    severity: 2,
  });
});

test("what is typed while an answer is on its way is kept and asked in its order", async () => {
  const { shown, answer, asked, kept, type } = box(["0.8741"]);
  await type("0.8742");
  await type("0.8743");
  expect(shown.value).toBe("");
  expect(asked).toEqual([["0.8741"]]);
  await answer();
  expect(asked.at(-1)).toEqual(["0.8741", "0.8742"]);
  await answer(new Error("The Thou server is not running."));
  expect(shown.validationMessage?.message).toBe(
    "No answer (The Thou server is not running.). What was typed is kept: type on, or leave with Escape.",
  );
  expect(asked.at(-1)).toEqual(["0.8741", "0.8742", "0.8743"]);
  expect(kept).toEqual(asked.slice(1));
});

test("an Enter alone ends it once all is read, but not the second end of line of a gauge", async () => {
  const { shown, answer, type, outcome } = box();
  await answer();
  await type("0.8742");
  await type("");
  await answer({ isDone: true });
  await type("");
  expect(shown.isDisposed).toBe(false);
  vi.setSystemTime(Date.now() + 501);
  await type(" ");
  expect(shown.isDisposed).toBe(true);
  expect(await outcome).toEqual({
    inputs: ["0.8742"],
    wantsOther: false,
    isWhole: true,
  });
});

test("g does what the button for another gauge does, and is no reading", async () => {
  const { shown, answer, asked, type, outcome } = box(["0.8741"]);
  await answer();
  await type(" G");
  expect(shown.isDisposed).toBe(true);
  expect(asked).toEqual([["0.8741"]]);
  expect(await outcome).toEqual({
    inputs: ["0.8741"],
    wantsOther: true,
    isWhole: false,
  });
});

test("whoever wants another gauge, or leaves, has what was typed before, once it is taken", async () => {
  const other = box();
  await other.answer();
  await other.type("0.8742");
  await other.shown.does("button", other.shown.buttons.at(-1));
  let isOver = false;
  void other.outcome.then(() => {
    isOver = true;
  });
  await new Promise(setImmediate);
  expect(isOver).toBe(false);
  await other.answer({ title: "too late to be shown" });
  expect(await other.outcome).toEqual({
    inputs: ["0.8742"],
    wantsOther: true,
    isWhole: false,
  });
  expect(other.shown.title).toBe(PROMPT.title);

  boxes.length = 0;
  const left = box(["0.8741"]);
  await left.answer(new Error("no server"));
  expect(left.shown.validationMessage).toBe("no server");
  await left.shown.does("hide");
  expect(await left.outcome).toEqual({
    inputs: ["0.8741"],
    wantsOther: false,
    isWhole: false,
  });
});
