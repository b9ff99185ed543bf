// Which finding a person means: the one at the caret, or one chosen from a list where that does not settle it.
import * as vscode from "vscode";
import type { ActiveRecord } from "./active-record.ts";

/**
 * The code of the finding that is meant; undefined where there is none or none was chosen.
 *
 * @param record is asked where a page has the keys, as the walkthrough has that sends people here
 */
export async function chooseFinding(
  record: ActiveRecord,
): Promise<string | undefined> {
  const document = record.document();
  const findings = document === undefined ? [] : findingsOf(document.uri);
  if (findings.length === 0) {
    void vscode.window.showInformationMessage(
      document === undefined
        ? "Open a record and put the caret on a finding."
        : "This record has no findings.",
    );
    return undefined;
  }
  const editor = vscode.window.activeTextEditor;
  const caret =
    editor?.document === document ? editor?.selection.active : undefined;
  const here = findings.filter(
    ({ range }) => caret !== undefined && range.contains(caret),
  );
  const [only, ...others] = new Set(here.map(codeOf));
  if (only !== undefined && others.length === 0) return only;
  const offered = 0 < here.length ? here : findings;
  const chosen = await vscode.window.showQuickPick(offered.map(asChoice), {
    placeHolder: "Which finding?",
    matchOnDescription: true,
    matchOnDetail: true,
  });
  return chosen?.label;
}

function findingsOf(document: vscode.Uri): readonly vscode.Diagnostic[] {
  return vscode.languages
    .getDiagnostics(document)
    .filter(({ source }) => source === "thou")
    .sort((one, other) => one.range.start.compareTo(other.range.start));
}

/** A finding's code, whether or not it comes with the address of its page. */
function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === "object" ? code.value : code);
}

function asChoice(finding: vscode.Diagnostic): vscode.QuickPickItem {
  return {
    label: codeOf(finding),
    description: `line ${finding.range.start.line + 1}`,
    detail: finding.message,
  };
}
