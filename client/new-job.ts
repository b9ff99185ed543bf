// Begins a new job: asks what it is, and puts the files that the server writes into the folder, or into an unsaved record where there is
// none. No file that is there is ever written over.
import * as vscode from "vscode";
import type { NewJobFiles } from "../server/protocol/guide.ts";
import type { Connection } from "./connection.ts";
import { askThrough } from "./questions.ts";

type Ask = Connection["ask"];

export function registerNewJob(ask: Ask): vscode.Disposable {
  return vscode.commands.registerCommand("thou.newJob", () =>
    newJob(ask).catch((reason: unknown) => {
      void vscode.window.showErrorMessage(
        reason instanceof Error ? reason.message : String(reason),
      );
    }),
  );
}

async function newJob(ask: Ask): Promise<void> {
  const folder = await chooseFolder();
  if (folder === undefined) return;
  const names = folder === "none" ? null : await namesIn(folder);
  const cribName = names?.find((name) => name.toLowerCase() === "crib.thou");
  const crib =
    folder === "none" || cribName === undefined
      ? null
      : await textOf(vscode.Uri.joinPath(folder, cribName));
  const made = await askThrough((answers) =>
    ask("thou/newJob", { answers, names, crib }),
  );
  if (made === undefined) return;
  const document =
    folder === "none" ? await unsaved(made) : await saved(made, folder);
  if (document === undefined) return;
  const editor = await vscode.window.showTextDocument(document);
  const { line, character } = made.caret;
  const at = new vscode.Position(line, character);
  editor.selection = new vscode.Selection(at, at);
  editor.revealRange(new vscode.Range(at, at));
  const take = {
    label: "Take its readings",
    detail: "With a gauge that types, or typed by hand: the reamer follows",
  };
  const chosen = await vscode.window.showQuickPick(
    [
      take,
      {
        label: "Back to the record",
        detail: "Thou: Take Readings begins at any time",
      },
    ],
    {
      title: "New job: written",
      placeHolder: "What it lacks is its readings. What now?",
    },
  );
  if (chosen === take)
    await vscode.commands.executeCommand("thou.takeReadings");
}

/** The folder that the job goes into; "none" for an unsaved record, undefined where the person leaves. */
async function chooseFolder(): Promise<vscode.Uri | "none" | undefined> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  const [only, second] = folders;
  if (only !== undefined && second === undefined) return only.uri;
  const choose = "Choose a folder…";
  const none = "Without a folder";
  const picked = await vscode.window.showQuickPick(
    [
      ...folders.map(({ name, uri }) => ({ label: name, uri })),
      { label: choose, uri: undefined },
      {
        label: none,
        detail: "An unsaved record, with gauges and reamers in it",
        uri: undefined,
      },
    ],
    {
      title: "New job",
      placeHolder: "Where does the record go?",
      ignoreFocusOut: true,
    },
  );
  if (picked === undefined) return undefined;
  if (picked.uri !== undefined) return picked.uri;
  if (picked.label === none) return "none";
  const chosen = await vscode.window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    openLabel: "Begin the Job Here",
  });
  return chosen?.[0];
}

async function namesIn(folder: vscode.Uri): Promise<readonly string[]> {
  const entries = await vscode.workspace.fs.readDirectory(folder);
  return entries.map(([name]) => name);
}

/** The text of a file, what is typed in it and not saved included; null where it can't be read. */
function textOf(uri: vscode.Uri): Promise<string | null> {
  return Promise.resolve(vscode.workspace.openTextDocument(uri)).then(
    (document) => document.getText(),
    () => null,
  );
}

async function unsaved({ files }: NewJobFiles): Promise<vscode.TextDocument> {
  return vscode.workspace.openTextDocument({
    language: "thou",
    content: files[0]?.text ?? "",
  });
}

/** Writes the files; undefined, and said, where that can't be. */
async function saved(
  { files }: NewJobFiles,
  folder: vscode.Uri,
): Promise<vscode.TextDocument | undefined> {
  const [job] = files;
  if (job === undefined) return undefined;
  if (await written(files, folder))
    return vscode.workspace.openTextDocument(
      vscode.Uri.joinPath(folder, job.name),
    );
  void vscode.window.showWarningMessage(
    `${job.name} could not be made in ${vscode.workspace.asRelativePath(folder)}: the folder can't be written to, or a file of that name has come meanwhile. The job opens unsaved instead.`,
  );
  return unsaved({ files, caret: { line: 0, character: 0 } });
}

/** Not by an edit of the workspace: to undo that would remove the record, with all that was written in it since. */
async function written(
  files: NewJobFiles["files"],
  folder: vscode.Uri,
): Promise<boolean> {
  const { fs } = vscode.workspace;
  try {
    const names = await namesIn(folder);
    // a file that has come meanwhile keeps all of them from being made
    if (files.some(({ name }) => names.includes(name))) return false;
    for (const { name, text } of files)
      await fs.writeFile(
        vscode.Uri.joinPath(folder, name),
        new TextEncoder().encode(text),
      );
    return true;
  } catch {
    return false;
  }
}
