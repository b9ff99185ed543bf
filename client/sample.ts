// The sample record, as a copy that nobody has saved yet: whoever tries things on it spoils nothing.
import * as vscode from "vscode";

/** Opens the copy in an editor. */
export async function openSample(extension: vscode.Uri): Promise<void> {
  const file = vscode.Uri.joinPath(extension, "samples/first-job.thou");
  const content = new TextDecoder().decode(
    await vscode.workspace.fs.readFile(file),
  );
  const document = await vscode.workspace.openTextDocument({
    language: "thou",
    content,
  });
  await vscode.window.showTextDocument(document);
}
