// Takes readings from whatever types them into a box, and puts the lines into the record. Which reading is next, what it comes to and what
// the lines are is the server's; what was typed is kept here until it stands in the record.
import * as vscode from "vscode";
import type { TakingPlan, TakingPrompt } from "../server/protocol/guide.ts";
import type { Connection } from "./connection.ts";
import { askThrough, type Kept } from "./questions.ts";
import { schemesServed } from "./schemes.ts";

/** What was typed and does not stand in the record yet. */
interface Unwritten {
  readonly uri: string;
  readonly plan: TakingPlan;
  readonly inputs: readonly string[];
}

const STORE = "thou.unwrittenReadings";
const TRIES = 10;

type Ask = Connection["ask"];

/** Registers the command, and the light bulb that leads to it. */
export function registerTaking(
  ask: Ask,
  memory: vscode.Memento,
): vscode.Disposable {
  const kept: Kept = new Map();

  async function take(given?: unknown): Promise<void> {
    const uri = recordOf(given);
    if (uri === undefined) {
      void vscode.window.showInformationMessage(
        "Open the record of a job first: readings are taken for what it names.",
      );
      return;
    }
    if (!(await writeRest(ask, memory))) return;
    await vscode.workspace.openTextDocument(uri);
    const ref = refIn(given);
    const plan = await planFor(ask, uri, ref, kept);
    if (plan === undefined) return;
    await measure(uri, plan);
  }

  async function measure(uri: vscode.Uri, first: TakingPlan): Promise<void> {
    let plan = first;
    let inputs: readonly string[] = [];
    for (;;) {
      const outcome = await showBox(ask, uri, plan, inputs, {
        typed: (all) =>
          memory.update(STORE, { uri: uri.toString(), plan, inputs: all }),
      });
      inputs = outcome.inputs;
      if (!outcome.wantsOther) break;
      // the readings stay, whatever is said of how they were taken
      const other = await planFor(ask, uri, plan.ref, new Map());
      plan = other ?? plan;
    }
    await write(ask, memory, { uri: uri.toString(), plan, inputs });
  }

  return vscode.Disposable.from(
    vscode.commands.registerCommand("thou.takeReadings", (given?: unknown) =>
      take(given).catch(said),
    ),
    vscode.languages.registerCodeActionsProvider(
      // a folder may come whose records lie elsewhere: which are served is asked each time
      { language: "thou", scheme: "*" },
      { provideCodeActions: actionsAt },
      { providedCodeActionKinds: [vscode.CodeActionKind.Refactor] },
    ),
  );
}

/** Asks what has to be known; undefined where the person leaves or there is nothing to read. */
async function planFor(
  ask: Ask,
  uri: vscode.Uri,
  ref: string | undefined,
  kept: Kept,
): Promise<TakingPlan | undefined> {
  const editor = vscode.window.activeTextEditor;
  const isHere = editor?.document.uri.toString() === uri.toString();
  const { line, character } =
    editor?.selection.active ?? new vscode.Position(0, 0);
  const outcome = await askThrough(
    (answers) =>
      ask("thou/takingSetup", {
        uri: uri.toString(),
        ref: ref ?? null,
        position: isHere ? { line, character } : null,
        answers,
      }),
    kept,
  );
  if (outcome === undefined) return undefined;
  if ("plan" in outcome) return outcome.plan;
  void vscode.window.showInformationMessage(outcome.sentence);
  return undefined;
}

interface Outcome {
  readonly inputs: readonly string[];
  /** The gauge, the temperature or the places are to be others. */
  readonly wantsOther: boolean;
}

const OTHER: vscode.QuickInputButton = {
  iconPath: new vscode.ThemeIcon("settings-gear"),
  tooltip: "Another gauge, temperature or place",
};

const ICONS: Readonly<Record<string, string>> = {
  u: "discard",
  s: "debug-step-over",
  k: "check",
  mm: "symbol-ruler",
  in: "symbol-ruler",
};

/** Shows the box until all is taken or it is left. What is typed while an answer is on its way waits for its turn. */
function showBox(
  ask: Ask,
  uri: vscode.Uri,
  plan: TakingPlan,
  before: readonly string[],
  {
    typed,
  }: {
    readonly typed: (inputs: readonly string[]) => Thenable<void>;
  },
): Promise<Outcome> {
  const box = vscode.window.createInputBox();
  box.ignoreFocusOut = true;
  let inputs = before;
  let queue = Promise.resolve();
  let isOpen = true;
  let isDone = false;
  /** A gauge may send two ends of line: the second is not a person's Enter. */
  let lastTyped = 0;
  const words = new Map<vscode.QuickInputButton, string>();

  return new Promise((resolve) => {
    function end(wantsOther: boolean): void {
      if (!isOpen) return;
      isOpen = false;
      box.dispose();
      void queue.then(() => {
        resolve({ inputs, wantsOther });
      });
    }

    function show(prompt: TakingPrompt | null): void {
      if (prompt === null || !isOpen) return;
      isDone = prompt.isDone;
      box.title = prompt.title;
      box.step = prompt.step;
      box.totalSteps = prompt.of;
      box.placeholder = prompt.placeholder;
      box.prompt =
        prompt.gone === null ? prompt.text : `${prompt.gone}. ${prompt.text}`;
      box.validationMessage =
        prompt.doubt === null
          ? undefined
          : {
              message: prompt.doubt,
              severity: vscode.InputBoxValidationSeverity.Warning,
            };
      words.clear();
      for (const { word, label } of prompt.offers)
        words.set(
          {
            iconPath: new vscode.ThemeIcon(ICONS[word] ?? "edit"),
            tooltip: `${label} (${word})`,
          },
          word,
        );
      box.buttons = [...words.keys(), OTHER];
    }

    function say(word: string): void {
      inputs = [...inputs, word];
      const all = inputs;
      queue = queue
        .then(async () => {
          await typed(all);
          show(await step(ask, uri, plan, all));
        })
        .catch((reason: unknown) => {
          if (!isOpen) return;
          box.validationMessage = {
            message: `No answer (${sentenceOf(reason)}). What was typed is kept: type on, or leave with Escape.`,
            severity: vscode.InputBoxValidationSeverity.Warning,
          };
        });
    }

    function enter(): void {
      const text = box.value;
      box.value = "";
      if (text.trim() !== "") {
        lastTyped = Date.now();
        say(text);
      } else if (isDone && lastTyped + 500 < Date.now()) end(false);
    }

    box.onDidAccept(enter);
    box.onDidTriggerButton((button) => {
      const word = words.get(button);
      if (word === undefined) end(true);
      else say(word);
    });
    box.onDidHide(() => {
      end(false);
    });
    queue = step(ask, uri, plan, inputs).then(show, (reason: unknown) => {
      box.validationMessage = sentenceOf(reason);
    });
    box.show();
  });
}

function step(
  ask: Ask,
  uri: vscode.Uri,
  plan: TakingPlan,
  inputs: readonly string[],
): Promise<TakingPrompt | null> {
  return ask("thou/takingStep", { uri: uri.toString(), plan, inputs });
}

/** Puts what was taken into the record; where that can't be, says why and offers the lines. True where nothing is left to write. */
async function write(
  ask: Ask,
  memory: vscode.Memento,
  { uri: written, plan, inputs }: Unwritten,
): Promise<boolean> {
  const uri = vscode.Uri.parse(written, true);
  let why = "the record kept changing";
  let lines: readonly string[] = [];
  for (let tries = 0; tries < TRIES; tries++) {
    const document = await vscode.workspace.openTextDocument(uri).then(
      (found) => found,
      () => undefined,
    );
    const prompt = await step(ask, uri, plan, inputs);
    if (prompt === null || prompt.taken === 0) {
      await memory.update(STORE, undefined);
      return true;
    }
    lines = prompt.lines;
    if (document === undefined || prompt.gone !== null) {
      why = prompt.gone ?? "the record is no longer there";
      break;
    }
    const { edit } = prompt;
    if (edit !== null && edit.version === document.version) {
      const change = new vscode.WorkspaceEdit();
      const at = new vscode.Position(edit.line, edit.character);
      change.insert(uri, at, edit.text);
      if (await vscode.workspace.applyEdit(change)) {
        await memory.update(STORE, undefined);
        reveal(document, edit.line + prompt.lines.length);
        void vscode.window.showInformationMessage(`Written. ${prompt.summary}`);
        return true;
      }
      why = "the record can't be edited";
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  const copy = "Copy the Lines";
  const drop = "Drop Them";
  const chosen = await vscode.window.showWarningMessage(
    `The readings were not written: ${why}. They are kept until they are written, copied or dropped.`,
    copy,
    drop,
  );
  if (chosen === undefined) return false;
  if (chosen === copy)
    await vscode.env.clipboard.writeText(
      lines.map((line) => `  ${line}\n`).join(""),
    );
  await memory.update(STORE, undefined);
  return true;
}

/** Readings that an earlier session left unwritten; false where the person leaves them so and does not go on. */
async function writeRest(ask: Ask, memory: vscode.Memento): Promise<boolean> {
  const rest = memory.get<Unwritten>(STORE);
  if (rest === undefined || rest.inputs.length === 0) return true;
  const write_ = "Write Them";
  const drop = "Drop Them";
  const chosen = await vscode.window.showWarningMessage(
    `Readings of ${rest.plan.ref} were taken before and do not stand in the record yet.`,
    write_,
    drop,
  );
  if (chosen === undefined) return false;
  if (chosen === write_) return write(ask, memory, rest);
  await memory.update(STORE, undefined);
  return true;
}

/** Puts the caret at the end of a line, where the record is shown. */
function reveal(document: vscode.TextDocument, line: number): void {
  const editor = vscode.window.visibleTextEditors.find(
    (each) => each.document === document,
  );
  if (editor === undefined) return;
  const end = document.lineAt(Math.min(line, document.lineCount - 1)).range.end;
  editor.selection = new vscode.Selection(end, end);
  editor.revealRange(
    new vscode.Range(end, end),
    vscode.TextEditorRevealType.InCenterIfOutsideViewport,
  );
}

/** The record that a command is about: the one it names, else the one that is open. */
function recordOf(given: unknown): vscode.Uri | undefined {
  if (isNamed(given)) return vscode.Uri.parse(given.uri, true);
  const [editor] = [
    vscode.window.activeTextEditor,
    ...vscode.window.visibleTextEditors,
  ].filter((each) => each?.document.languageId === "thou");
  return editor?.document.uri;
}

function refIn(given: unknown): string | undefined {
  return isNamed(given) ? given.ref : undefined;
}

/** What a link or a light bulb hands to the command: other callers, such as a menu, hand over something else. */
function isNamed(
  given: unknown,
): given is { readonly uri: string; readonly ref: string } {
  return (
    typeof given === "object" &&
    given !== null &&
    "uri" in given &&
    typeof given.uri === "string" &&
    "ref" in given &&
    typeof given.ref === "string"
  );
}

const READABLE =
  /^(?:journal|hole|bush|bore|reamer|pilot)[ \t\u{A0}]+(?:\p{L}[\p{L}\d-]*)/u;

/** The entry at the caret takes readings: its opening line is the nearest one above that begins at the margin. */
function actionsAt(
  document: vscode.TextDocument,
  range: vscode.Range,
): vscode.CodeAction[] {
  if (!schemesServed().has(document.uri.scheme)) return [];
  let line = range.start.line;
  while (0 < line && !/^[^\s#]/u.test(document.lineAt(line).text)) line--;
  const ref = READABLE.exec(document.lineAt(line).text)?.[0].replaceAll(
    /[ \t\u{A0}]+/gu,
    " ",
  );
  if (ref === undefined) return [];
  const action = new vscode.CodeAction(
    `Take readings of ${ref}…`,
    vscode.CodeActionKind.Refactor,
  );
  action.command = {
    command: "thou.takeReadings",
    title: "Take Readings",
    arguments: [{ uri: document.uri.toString(), ref }],
  };
  return [action];
}

function said(reason: unknown): void {
  void vscode.window.showErrorMessage(sentenceOf(reason));
}

function sentenceOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
