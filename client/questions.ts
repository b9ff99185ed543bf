// Asks a person one thing after another in the editor's own boxes, with the way back to the one before. What is asked, and what follows
// from an answer, is the server's.
import * as vscode from "vscode";
import type {
  Answer,
  Next,
  PickQuestion,
  Question,
  TextQuestion,
} from "../server/protocol/guide.ts";

/** Answers that hold for the rest of the session, by the key of their question. */
export type Kept = Map<string, readonly string[]>;

/**
 * Asks until there is an outcome; undefined where the person leaves. Questions that the session has an answer to are not asked
 * again, unless someone goes back to them.
 * @param given answers that are known before anything is asked
 */
export async function askThrough<T extends object>(
  ask: (answers: readonly Answer[]) => Promise<Next | T>,
  kept: Kept = new Map(),
  given: readonly Answer[] = [],
): Promise<T | undefined> {
  let answers = given;
  /** Keys of the questions that were shown, in order. */
  let shown: readonly string[] = [];
  let former: readonly string[] | undefined;
  for (;;) {
    const next = await ask(answers);
    if (!("question" in next)) return next;
    const { question } = next;
    answers = answers.slice(0, next.accepted);
    const known = question.isKept ? kept.get(question.key) : undefined;
    if (
      known !== undefined &&
      former === undefined &&
      canAnswer(question, known)
    ) {
      answers = [...answers, { key: question.key, values: known }];
      continue;
    }
    const before = shown.filter((key) =>
      answers.some((answer) => answer.key === key),
    );
    const answer = await show(question, former, 0 < before.length);
    former = undefined;
    if (answer === undefined) return undefined;
    if (answer === "back") {
      const last = answers.findIndex(({ key }) => key === before.at(-1));
      former = answers[last]?.values;
      answers = answers.slice(0, last);
      continue;
    }
    shown = [...before, question.key];
    answers = [...answers, { key: question.key, values: answer }];
    if (question.isKept) kept.set(question.key, answer);
  }
}

function canAnswer(question: Question, values: readonly string[]): boolean {
  if (question.kind === "text") return question.fault === null;
  return values.every((value) =>
    question.choices.some((choice) => choice.value === value),
  );
}

function show(
  question: Question,
  former: readonly string[] | undefined,
  canGoBack: boolean,
): Promise<readonly string[] | "back" | undefined> {
  return question.kind === "pick"
    ? showPick(question, former, canGoBack)
    : showText(question, former, canGoBack);
}

interface ChoiceItem extends vscode.QuickPickItem {
  readonly value: string;
}

function showPick(
  { title, step, of, about, choices, many }: PickQuestion,
  former: readonly string[] | undefined,
  canGoBack: boolean,
): Promise<readonly string[] | "back" | undefined> {
  const pick = vscode.window.createQuickPick<ChoiceItem>();
  pick.items = choices.map(({ value, label, beside, below }) => ({
    value,
    label,
    description: beside,
    ...(below === "" ? {} : { detail: below }),
  }));
  pick.placeholder = about;
  pick.canSelectMany = many;
  pick.matchOnDescription = true;
  pick.matchOnDetail = true;
  const first = pick.items.filter(({ value }) =>
    former === undefined
      ? choices.some((each) => each.value === value && each.picked)
      : former.includes(value),
  );
  if (many) pick.selectedItems = first;
  else pick.activeItems = first;
  return settled(pick, { title, step, of }, canGoBack, () => {
    const taken = many ? pick.selectedItems : pick.activeItems.slice(0, 1);
    if (!many && taken.length === 0) {
      // a filter that fits nothing is no answer, and hides the question
      pick.value = "";
      return undefined;
    }
    return taken.map(({ value }) => value);
  });
}

function showText(
  { title, step, of, about, value, fault }: TextQuestion,
  former: readonly string[] | undefined,
  canGoBack: boolean,
): Promise<readonly string[] | "back" | undefined> {
  const box = vscode.window.createInputBox();
  box.value = former?.[0] ?? value;
  box.prompt = about;
  if (fault !== null)
    box.validationMessage = {
      // it stands in place of the question
      message: `${fault} ${about}`,
      severity: vscode.InputBoxValidationSeverity.Warning,
    };
  const typing = box.onDidChangeValue(() => {
    box.validationMessage = undefined;
  });
  return settled(box, { title, step, of }, canGoBack, () => [
    box.value,
  ]).finally(() => {
    typing.dispose();
  });
}

/** Shows a box until it is answered, left, or the way back is taken. */
function settled(
  box: vscode.QuickPick<ChoiceItem> | vscode.InputBox,
  { title, step, of }: Pick<Question, "title" | "step" | "of">,
  canGoBack: boolean,
  read: () => readonly string[] | undefined,
): Promise<readonly string[] | "back" | undefined> {
  box.title = title;
  box.step = step;
  box.totalSteps = of;
  // someone may have to look at a drawing in another window
  box.ignoreFocusOut = true;
  if (canGoBack) box.buttons = [vscode.QuickInputButtons.Back];
  return new Promise((resolve) => {
    box.onDidTriggerButton(() => {
      resolve("back");
      box.dispose();
    });
    box.onDidAccept(() => {
      const given = read();
      if (given === undefined) return;
      resolve(given);
      box.dispose();
    });
    box.onDidHide(() => {
      resolve(undefined);
      box.dispose();
    });
    box.show();
  });
}
