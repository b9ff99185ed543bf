// What a click on the line above a fit, a press or a line of bores does. What the line says is the server's, which is told at the start
// that this editor has the commands.
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { COMMANDS_OFFERED, LENS_COMMANDS } from "../server/protocol.ts";

/** Has a client say that the commands are there. It has not started yet. */
export function offerLensCommands(client: BaseLanguageClient): void {
  client.registerFeature({
    fillClientCapabilities(capabilities) {
      const others: unknown = capabilities.experimental; // typed any
      capabilities.experimental = {
        ...(typeof others === "object" ? others : {}),
        [COMMANDS_OFFERED]: true,
      };
    },
    initialize: () => undefined,
    getState: () => ({ kind: "static" }),
    clear: () => undefined,
  });
}

export function registerLensCommands(): readonly vscode.Disposable[] {
  return [
    vscode.commands.registerCommand(LENS_COMMANDS.finding, at(showFinding)),
    vscode.commands.registerCommand(LENS_COMMANDS.uses, at(showUses)),
  ];
}

/** Runs with the place that the server names; with anything else, nothing. */
function at(
  show: (uri: vscode.Uri, position: vscode.Position) => Promise<void>,
): (uri: unknown, position: unknown) => Promise<void> {
  return async (uri, position) => {
    if (typeof uri !== "string" || !isPosition(position)) return;
    await show(
      vscode.Uri.parse(uri),
      new vscode.Position(position.line, position.character),
    );
  };
}

function isPosition(
  value: unknown,
): value is { readonly line: number; readonly character: number } {
  return (
    typeof value === "object" &&
    value !== null &&
    "line" in value &&
    "character" in value &&
    typeof value.line === "number" &&
    typeof value.character === "number"
  );
}

/** Goes to the finding and opens what is said of it. */
async function showFinding(
  uri: vscode.Uri,
  position: vscode.Position,
): Promise<void> {
  await vscode.window.showTextDocument(uri, {
    selection: new vscode.Range(position, position),
  });
  await vscode.commands.executeCommand("editor.action.showHover");
}

async function showUses(
  uri: vscode.Uri,
  position: vscode.Position,
): Promise<void> {
  const uses = await vscode.commands.executeCommand(
    "vscode.executeReferenceProvider",
    uri,
    position,
  );
  await vscode.commands.executeCommand(
    "editor.action.showReferences",
    uri,
    position,
    uses,
  );
}
