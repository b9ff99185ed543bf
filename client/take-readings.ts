// Takes the readings of a record one target after another, and puts the lines into it. Which reading is next, what it comes to and what the
// lines are is the server's; the box that readings are typed into is reading-box.ts's.
import * as vscode from "vscode";
import type { TakingPlan, TakingPrompt } from "../server/protocol/guide.ts";
import type { Connection } from "./connection.ts";
import { chooseAfter } from "./after-taking.ts";
import { askThrough, type Kept } from "./questions.ts";
import { sentenceOf, showBox } from "./reading-box.ts";
import { schemesServed } from "./schemes.ts";
import { keep, tellWritten, write, writeRest } from "./unwritten-readings.ts";

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
        "Open the record of a job first: it names what is read.",
      );
      return;
    }
    if (!(await writeRest(ask, memory))) return;
    await vscode.workspace.openTextDocument(uri);
    let ref = refIn(given);
    let target: string | undefined;
    for (;;) {
      const plan = await planFor(ask, uri, ref, kept, target);
      const written =
        plan === undefined ? undefined : await measure(ask, memory, uri, plan);
      if (written === undefined) return;
      target = await chooseAfter(written);
      if (target === undefined) return;
      ref = undefined;
    }
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

/** What stands in the record once all of the plan was read; undefined where it was left before. */
async function measure(
  ask: Ask,
  memory: vscode.Memento,
  uri: vscode.Uri,
  first: TakingPlan,
): Promise<TakingPrompt | undefined> {
  let plan = first;
  let inputs: readonly string[] = [];
  let isWhole = false;
  for (;;) {
    const outcome = await showBox(ask, uri, plan, inputs, {
      typed: (all) => keep(memory, { uri: uri.toString(), plan, inputs: all }),
    });
    inputs = outcome.inputs;
    isWhole = outcome.isWhole;
    if (!outcome.wantsOther) break;
    // the readings stay, whatever is said of how they were taken
    const other = await (plan.fact === "swing"
      ? planFor(ask, uri, undefined, new Map(), `${plan.ref} swing`)
      : planFor(ask, uri, plan.ref, new Map()));
    plan = other ?? plan;
  }
  let written: TakingPrompt | undefined;
  await write(ask, memory, { uri: uri.toString(), plan, inputs }, (prompt) => {
    if (isWhole) written = prompt;
    else tellWritten(prompt);
  });
  return written;
}

/** Asks what has to be known; undefined where the person leaves or there is nothing to read. */
async function planFor(
  ask: Ask,
  uri: vscode.Uri,
  ref: string | undefined,
  kept: Kept,
  target?: string,
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
    target === undefined ? [] : [{ key: "target", values: [target] }],
  );
  if (outcome === undefined) return undefined;
  if ("plan" in outcome) return outcome.plan;
  void vscode.window.showInformationMessage(outcome.sentence);
  return undefined;
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
