// The entry behind the braces in the status bar, which comes forward only when something is wrong.
import * as vscode from "vscode";

export interface ServerStatus {
  /** @param records where it is shown */
  starting(records: vscode.DocumentSelector): void;
  running(): void;
  failed(): void;
  dispose(): void;
}

export function createServerStatus(): ServerStatus {
  const item = vscode.languages.createLanguageStatusItem("thou.server", []);
  item.name = "Thou server";
  const restart = { title: "Restart Server", command: "thou.restartServer" };
  return {
    starting(records) {
      item.selector = records;
      item.text = "Server is starting";
      item.detail = "";
      item.busy = true;
      item.severity = vscode.LanguageStatusSeverity.Information;
    },
    running() {
      item.text = "Server is running";
      item.detail = "";
      item.busy = false;
      item.command = restart;
    },
    failed() {
      item.text = "Server has stopped";
      item.detail = "Findings and clearances are missing";
      item.busy = false;
      item.severity = vscode.LanguageStatusSeverity.Error;
      item.command = restart;
    },
    dispose() {
      item.dispose();
    },
  };
}
