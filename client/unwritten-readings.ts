// Readings on their way into the record: the lines that they make are put in once all is said, and what can't be put in is kept from one
// session to the next, until it is written, copied or dropped.
import * as vscode from "vscode";
import type { TakingPlan, TakingPrompt } from "../server/protocol/guide.ts";
import type { Connection } from "./connection.ts";

/** What was typed and does not stand in the record yet. */
export interface Unwritten {
  readonly uri: string;
  readonly plan: TakingPlan;
  readonly inputs: readonly string[];
}

const STORE = "thou.unwrittenReadings";
const TRIES = 10;

type Ask = Connection["ask"];

/** Keeps what was typed so far. */
export function keep(
  memory: vscode.Memento,
  unwritten: Unwritten,
): Thenable<void> {
  return memory.update(STORE, unwritten);
}

export function step(
  ask: Ask,
  uri: vscode.Uri,
  plan: TakingPlan,
  inputs: readonly string[],
): Promise<TakingPrompt | null> {
  return ask("thou/takingStep", { uri: uri.toString(), plan, inputs });
}

/** Puts what was taken into the record; where that can't be, says why and offers the lines. True where nothing is left to write. */
export async function write(
  ask: Ask,
  memory: vscode.Memento,
  { uri: written, plan, inputs }: Unwritten,
  tell: (prompt: TakingPrompt) => void = tellWritten,
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
        tell(prompt);
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

export function tellWritten({ summary }: TakingPrompt): void {
  void vscode.window.showInformationMessage(`Written. ${summary}`);
}

/** Readings that an earlier session left unwritten; false where the person leaves them so and does not go on. */
export async function writeRest(
  ask: Ask,
  memory: vscode.Memento,
): Promise<boolean> {
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
