// The commands that make a sheet to print: they ask the server for the page, write it beside the record, and say where it is. It runs in a browser as well, so it knows files by their address alone.
import * as vscode from "vscode";
import type { SheetParams, SheetVersioned } from "../server/protocol/sheet.ts";
import { isRecordName, withoutEnding } from "../server/record-names.ts";
import type { ActiveRecord } from "./active-record.ts";
import { NO_ANSWER, recordOf } from "./record-command.ts";

/** Asks the server for a page; null where it does not know the record. */
export type AskForSheet = (
  params: SheetParams,
) => Promise<{ readonly html: string } | null>;

interface Kind {
  readonly blank: boolean;
  /** As a sentence says it. */
  readonly name: string;
  /** What the file's name ends with. */
  readonly ending: string;
}

const JOB: Kind = { blank: false, name: "Job sheet", ending: "-sheet.html" };
const MEASURING: Kind = {
  blank: true,
  name: "Measuring sheet",
  ending: "-measuring.html",
};

export function registerSheets(
  ask: AskForSheet,
  record: ActiveRecord,
): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand("thou.showSheet", (given?: unknown) =>
      showSheet(ask, JOB, recordOf(given, record)),
    ),
    vscode.commands.registerCommand(
      "thou.showMeasuringSheet",
      (given?: unknown) => showSheet(ask, MEASURING, recordOf(given, record)),
    ),
  );
}

/** Gives the address that the sheet was written to; undefined where it was not. */
async function showSheet(
  ask: AskForSheet,
  kind: Kind,
  record: vscode.Uri | undefined,
): Promise<vscode.Uri | undefined> {
  if (record === undefined) {
    void vscode.window.showInformationMessage(
      "Open a record first: a sheet is made of it.",
    );
    return undefined;
  }
  const versioned = versionedAt(record);
  const answer = await ask({
    uri: record.toString(),
    blank: kind.blank,
    ...(versioned === undefined ? {} : { versioned }),
  }).catch(() => undefined);
  if (!answer) {
    void vscode.window.showErrorMessage(
      answer === null
        ? "This record is not known to the language server: save it, and try again."
        : NO_ANSWER,
    );
    return undefined;
  }
  const target = await placeFor(record, kind);
  if (target === undefined) return undefined;
  try {
    await vscode.workspace.fs.writeFile(
      target,
      new TextEncoder().encode(answer.html),
    );
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    void vscode.window.showErrorMessage(
      `${kind.name} not written: ${why}. Run the command again from a folder that can be written to.`,
    );
    return undefined;
  }
  void show(target, kind);
  return target;
}

/** Beside the record, where that can be written and holds no file of someone else's; else where the user says. */
async function placeFor(
  record: vscode.Uri,
  kind: Kind,
): Promise<vscode.Uri | undefined> {
  const name = withoutEnding(lastPart(record)) + kind.ending;
  const isSaved =
    vscode.workspace.fs.isWritableFileSystem(record.scheme) === true;
  const folder = isSaved
    ? vscode.Uri.joinPath(record, "..")
    : vscode.workspace.workspaceFolders?.[0]?.uri;
  const beside =
    folder === undefined ? undefined : vscode.Uri.joinPath(folder, name);
  if (isSaved && beside !== undefined && (await isFree(beside))) return beside;
  return vscode.window.showSaveDialog({
    ...(beside === undefined ? {} : { defaultUri: beside }),
    filters: { "Web page": ["html"] },
    saveLabel: "Write Sheet",
    title: `Where to write the ${kind.name.toLowerCase()}`,
  });
}

function lastPart(uri: vscode.Uri): string {
  return uri.path.slice(uri.path.lastIndexOf("/") + 1);
}

/** Nothing is there, or a sheet that was made before. */
async function isFree(uri: vscode.Uri): Promise<boolean> {
  try {
    const bytes = await vscode.workspace.fs.readFile(uri);
    const start = new TextDecoder().decode(bytes.slice(0, 512));
    return start.includes('<meta name="generator" content="thou sheet');
  } catch {
    return true;
  }
}

/**
 * Says where it is and how it comes to paper. A browser prints it; the extension starts none, for it opens nothing outside the editor in any
 * folder. A browser reaches no file on another machine, nor one that lies on no disk: the editor hands that over.
 */
async function show(target: vscode.Uri, kind: Kind): Promise<void> {
  const isHere =
    target.scheme === "file" &&
    vscode.env.remoteName === undefined &&
    vscode.env.uiKind === vscode.UIKind.Desktop;
  const reveal = isHere ? "Show in Folder" : "Show in Explorer";
  const way = isHere
    ? "Open it in a browser to print it."
    : "To print it, choose Download in its menu in the Explorer, and open what you downloaded in a browser.";
  const chosen = await vscode.window.showInformationMessage(
    `${kind.name} written to ${lastPart(target)}. ${way}`,
    reveal,
  );
  if (chosen === reveal)
    await vscode.commands.executeCommand(
      isHere ? "revealFileInOS" : "revealInExplorer",
      target,
    );
}

/** What the editor's own git knows of the record's files, and which of them are not saved; undefined where it knows no repository there. */
function versionedAt(record: vscode.Uri): SheetVersioned | undefined {
  const state = member(repositoryAt(record), "state");
  if (state === undefined) return undefined;
  const revision = member(member(state, "HEAD"), "commit");
  const changed = [
    "mergeChanges",
    "indexChanges",
    "workingTreeChanges",
    "untrackedChanges",
  ]
    .flatMap((list) => {
      const changes = member(state, list);
      return Array.isArray(changes) ? (changes as readonly unknown[]) : [];
    })
    .flatMap((change) => {
      const uri = member(change, "uri");
      return uri instanceof vscode.Uri ? [uri.toString()] : [];
    });
  const unsaved = vscode.workspace.textDocuments
    .filter(({ isDirty, languageId }) => isDirty && languageId === "thou")
    .map(({ uri }) => uri.toString());
  return {
    revision: typeof revision === "string" ? revision.slice(0, 12) : null,
    changed: [...changed, ...unsaved].filter(isRecordName),
  };
}

/** By the interface that the editor's own git extension offers others; anything that is not as expected counts as not there. */
function repositoryAt(record: vscode.Uri): unknown {
  try {
    const git: unknown = vscode.extensions.getExtension("vscode.git")?.exports;
    const api = called(git, "getAPI", 1);
    return called(api, "getRepository", record) ?? undefined;
  } catch {
    // it is turned off
    return undefined;
  }
}

function called(of: unknown, name: string, argument: unknown): unknown {
  const method = member(of, name);
  return typeof method === "function"
    ? (Reflect.apply(method, of, [argument]) as unknown)
    : undefined;
}

function member(of: unknown, name: string): unknown {
  return typeof of === "object" && of !== null
    ? (Reflect.get(of, name) as unknown)
    : undefined;
}
