// What the commands over one record share: which record is meant, and what is said where the server gives nothing of it.
import * as vscode from "vscode";
import type { ActiveRecord } from "./active-record.ts";

export const NO_ANSWER =
  'The language server does not answer: run "Thou: Restart Server", and try again.';

/** The record that a menu gives, else the one that the person is at, be it that a panel beside it has the keys; undefined where that is none. */
export function recordOf(
  given: unknown,
  record: ActiveRecord,
): vscode.Uri | undefined {
  return given instanceof vscode.Uri ? given : record.document()?.uri;
}

/** Says why there is nothing to show, with the way to trust the folder where nobody has. */
export async function sayWhyNot(because: string): Promise<void> {
  const manage = "Manage Trust";
  const choices = vscode.workspace.isTrusted ? [] : [manage];
  const chosen = await vscode.window.showWarningMessage(because, ...choices);
  if (chosen === manage)
    await vscode.commands.executeCommand("workbench.trust.manage");
}
