// One question after another in the editor's own boxes: what stands in them, what counts as an answer, the way back, what a session keeps.
// The boxes of the editor are stood in for here; the real ones are for the tests in the editor.
import { beforeEach, describe, expect, test, vi } from "vitest";
import { askThrough, type Kept } from "../../client/questions.ts";
import type {
  Answer,
  Choice,
  Next,
  PickQuestion,
  Question,
  TextQuestion,
} from "../../server/protocol/guide.ts";
import { Box, boxes } from "./box.ts";

vi.mock("vscode", () => ({
  InputBoxValidationSeverity: { Warning: 2 },
  QuickInputButtons: { Back: "back" },
  window: {
    createQuickPick: () => new Box(),
    createInputBox: () => new Box(),
  },
}));

beforeEach(() => {
  boxes.length = 0;
});

function choice(value: string, more: Partial<Choice> = {}): Choice {
  return {
    value,
    label: value.toUpperCase(),
    beside: "",
    below: "",
    picked: false,
    ...more,
  };
}

function pick(key: string, more: Partial<PickQuestion> = {}): PickQuestion {
  return {
    kind: "pick",
    key,
    title: "Take readings",
    step: 1,
    of: 3,
    about: `Which ${key}?`,
    isKept: false,
    choices: [choice("a"), choice("b", { picked: true }), choice("c")],
    many: false,
    ...more,
  };
}

function text(key: string, more: Partial<TextQuestion> = {}): TextQuestion {
  return {
    kind: "text",
    key,
    title: "New job",
    step: 2,
    of: 3,
    about: `What ${key}?`,
    isKept: false,
    value: "0.875",
    fault: null,
    ...more,
  };
}

interface Outcome {
  readonly done: readonly Answer[];
}

/** Asks these in order; an answer of "?" is refused, and the question asked again with its fault. */
function asker(...questions: readonly Question[]) {
  return (answers: readonly Answer[]): Promise<Next | Outcome> => {
    for (const [index, question] of questions.entries()) {
      const answer = answers[index];
      if (answer?.key !== question.key)
        return Promise.resolve({ question, accepted: index });
      if (answer.values[0] === "?")
        return Promise.resolve({
          question:
            question.kind === "text"
              ? { ...question, value: "?", fault: "That is no size." }
              : question,
          accepted: index,
        });
    }
    return Promise.resolve({ done: answers });
  };
}

/** The box that is shown now. */
async function box(number: number): Promise<Box> {
  return vi.waitFor(() => {
    const found = boxes[number - 1];
    if (found === undefined) throw new Error(`no box ${String(number)}`);
    return found;
  });
}

async function typed(number: number, value: string): Promise<void> {
  const shown = await box(number);
  shown.value = value;
  await shown.does("value");
  await shown.does("accept");
}

describe("a choice", () => {
  test("shows what it is about, and begins at what is offered", async () => {
    const asked = askThrough<Outcome>(
      asker(
        pick("gauge", {
          choices: [
            choice("mic-1", { beside: "0.00005 in", below: "set on a ring" }),
            choice("none", { picked: true }),
          ],
        }),
      ),
    );
    const shown = await box(1);
    expect(shown).toMatchObject({
      title: "Take readings",
      step: 1,
      totalSteps: 3,
      placeholder: "Which gauge?",
      // a drawing may have to be looked at in another window, and found by what stands beside and below
      ignoreFocusOut: true,
      matchOnDescription: true,
      matchOnDetail: true,
      canSelectMany: false,
      buttons: [],
    });
    expect(shown.items).toEqual([
      {
        value: "mic-1",
        label: "MIC-1",
        description: "0.00005 in",
        detail: "set on a ring",
      },
      { value: "none", label: "NONE", description: "" },
    ]);
    expect(shown.activeItems.map(({ value }) => value)).toEqual(["none"]);
    await shown.does("accept");
    expect(await asked).toEqual({ done: [{ key: "gauge", values: ["none"] }] });
    expect(shown.isDisposed).toBe(true);
  });

  test("of a filter that fits nothing is no answer: the filter goes, so that the question is seen again", async () => {
    const asked = askThrough<Outcome>(asker(pick("gauge")));
    const shown = await box(1);
    shown.value = "xyz";
    shown.activeItems = [];
    await shown.does("accept");
    expect(shown.value).toBe("");
    expect(shown.isDisposed).toBe(false);
    shown.activeItems = shown.items.slice(2);
    await shown.does("accept");
    expect(await asked).toEqual({ done: [{ key: "gauge", values: ["c"] }] });
  });

  test("of any number takes several, and none", async () => {
    const question = pick("gauges", { many: true });
    const asked = askThrough<Outcome>(
      asker(question, { ...question, key: "reamers" }),
    );
    const shown = await box(1);
    expect(shown.canSelectMany).toBe(true);
    expect(shown.selectedItems.map(({ value }) => value)).toEqual(["b"]);
    shown.selectedItems = shown.items.slice(0, 2);
    await shown.does("accept");
    const second = await box(2);
    second.selectedItems = [];
    second.value = "xyz";
    await second.does("accept");
    expect(second.value).toBe("xyz");
    expect(await asked).toEqual({
      done: [
        { key: "gauges", values: ["a", "b"] },
        { key: "reamers", values: [] },
      ],
    });
  });
});

describe("a text", () => {
  test("shows what is offered, and why an answer was not taken together with the question that it hides", async () => {
    const asked = askThrough<Outcome>(asker(text("size")));
    const first = await box(1);
    expect(first).toMatchObject({ value: "0.875", prompt: "What size?" });
    expect(first.validationMessage).toBeUndefined();
    await typed(1, "?");
    const again = await box(2);
    expect(again.validationMessage).toEqual({
      message: "That is no size. What size?",
      severity: 2,
    });
    // it goes with the first letter
    again.value = "1";
    await again.does("value");
    expect(again.validationMessage).toBeUndefined();
    await again.does("accept");
    expect(await asked).toEqual({ done: [{ key: "size", values: ["1"] }] });
    expect(again.listens("value")).toBe(false);
  });
});

describe("the way", () => {
  test("out gives nothing", async () => {
    const asked = askThrough<Outcome>(asker(text("size"), text("depth")));
    await typed(1, "1");
    await (await box(2)).does("hide");
    expect(await asked).toBeUndefined();
    expect(boxes).toHaveLength(2);
  });

  test("back leads to the one before, as it was answered, and not beyond the first", async () => {
    const asked = askThrough<Outcome>(
      asker(pick("gauge"), text("size"), text("depth")),
    );
    const first = await box(1);
    first.activeItems = first.items.slice(2);
    await first.does("accept");
    expect((await box(2)).buttons).toEqual(["back"]);
    await typed(2, "1.5");
    await (await box(3)).does("button");
    expect((await box(4)).value).toBe("1.5");
    await (await box(4)).does("button");
    const gauge = await box(5);
    expect(gauge.buttons).toEqual([]);
    expect(gauge.activeItems.map(({ value }) => value)).toEqual(["c"]);
    await gauge.does("accept");
    // the one after it is asked afresh, since another answer may ask otherwise
    expect((await box(6)).value).toBe("0.875");
    await typed(6, "2");
    await typed(7, "3");
    expect(await asked).toEqual({
      done: [
        { key: "gauge", values: ["c"] },
        { key: "size", values: ["2"] },
        { key: "depth", values: ["3"] },
      ],
    });
  });

  test("back to a choice of any number has those picked that were", async () => {
    const asked = askThrough<Outcome>(
      asker(pick("gauges", { many: true }), text("size")),
    );
    const first = await box(1);
    first.selectedItems = [];
    await first.does("accept");
    await (await box(2)).does("button");
    expect((await box(3)).selectedItems).toEqual([]);
    await (await box(3)).does("hide");
    expect(await asked).toBeUndefined();
  });
});

describe("what is known before", () => {
  test("is not asked, and there is no way back to it", async () => {
    const asked = askThrough<Outcome>(
      asker(text("target"), text("size")),
      new Map(),
      [{ key: "target", values: ["journal rear"] }],
    );
    expect((await box(1)).prompt).toBe("What size?");
    expect((await box(1)).buttons).toEqual([]);
    await typed(1, "1");
    expect(await asked).toEqual({
      done: [
        { key: "target", values: ["journal rear"] },
        { key: "size", values: ["1"] },
      ],
    });
  });

  test("is asked again where it does not hold", async () => {
    const asked = askThrough<Outcome>(asker(text("target")), new Map(), [
      { key: "target", values: ["?"] },
    ]);
    await typed(1, "journal front");
    expect(await asked).toEqual({
      done: [{ key: "target", values: ["journal front"] }],
    });
  });
});

describe("what a session keeps", () => {
  const gauge = pick("gauge", { isKept: true });

  test("is the answers to questions that are kept, and those are not asked again", async () => {
    const kept: Kept = new Map();
    const first = askThrough<Outcome>(asker(gauge, text("size")), kept);
    await (await box(1)).does("accept");
    await typed(2, "1");
    await first;
    expect([...kept]).toEqual([["gauge", ["b"]]]);
    const again = askThrough<Outcome>(asker(gauge, text("size")), kept);
    expect((await box(3)).prompt).toBe("What size?");
    // it was not shown, so that there is no way back to it
    expect((await box(3)).buttons).toEqual([]);
    await typed(3, "2");
    expect(await again).toEqual({
      done: [
        { key: "gauge", values: ["b"] },
        { key: "size", values: ["2"] },
      ],
    });
  });

  test("is asked again by whoever goes back to it, and the new answer is kept", async () => {
    const kept: Kept = new Map();
    const asked = askThrough<Outcome>(asker(gauge, text("size")), kept);
    await (await box(1)).does("accept");
    await (await box(2)).does("button");
    const back = await box(3);
    expect(back.placeholder).toBe("Which gauge?");
    back.activeItems = back.items.slice(0, 1);
    await back.does("accept");
    await typed(4, "1");
    await asked;
    expect(kept.get("gauge")).toEqual(["a"]);
  });

  test("is given to no question that is asked each time", async () => {
    const kept: Kept = new Map([["size", ["1"]]]);
    const asked = askThrough<Outcome>(asker(text("size")), kept);
    await typed(1, "2");
    expect(await asked).toEqual({ done: [{ key: "size", values: ["2"] }] });
    expect(kept.get("size")).toEqual(["1"]);
  });

  test("counts for nothing where it is none of the choices, or was refused", async () => {
    const kept: Kept = new Map([
      ["gauge", ["mic-9"]],
      ["temperature", ["?"]],
    ]);
    const asked = askThrough<Outcome>(
      asker(gauge, text("temperature", { isKept: true })),
      kept,
    );
    expect((await box(1)).placeholder).toBe("Which gauge?");
    await (await box(1)).does("accept");
    // the kept answer was given once, and refused
    expect((await box(2)).validationMessage?.message).toContain(
      "That is no size.",
    );
    await typed(2, "68 F");
    expect(await asked).toEqual({
      done: [
        { key: "gauge", values: ["b"] },
        { key: "temperature", values: ["68 F"] },
      ],
    });
  });
});
