// Keeps a view of a record up to date: when what it shows may have changed, it is asked for again, once typing rests, one question at a time.
// What is asked, and who shows the answer, is the view's.
import * as vscode from "vscode";
import { isRecordName } from "../server/record-names.ts";

export interface Refresh {
  /** Once nothing has changed for a moment. */
  readonly soon: () => void;
  readonly now: () => void;
  dispose(): void;
}

/** Of the time that an answer took, the share of waiting before the next question: a long record must not keep the server busy. */
const BREATH = 2;

/**
 * @param settled how long to wait at least, in milliseconds: long enough for a few keystrokes
 * @param ask asks and shows; where the token is cancelled, a later question has been asked and its answer counts
 */
export function refreshing(
  settled: number,
  ask: (token: vscode.CancellationToken) => Promise<void>,
): Refresh {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asking: vscode.CancellationTokenSource | undefined;
  let took = 0;

  function soon(): void {
    clearTimeout(timer);
    timer = setTimeout(now, Math.max(settled, BREATH * took));
  }

  function now(): void {
    clearTimeout(timer);
    asking?.cancel();
    const source = new vscode.CancellationTokenSource();
    asking = source;
    const began = Date.now();
    void ask(source.token).finally(() => {
      if (!source.token.isCancellationRequested) took = Date.now() - began;
    });
  }

  return {
    soon,
    now,
    dispose() {
      clearTimeout(timer);
      asking?.cancel();
    },
  };
}

/** Tells of all that may change what is to be said of a record. */
export function onRecordsMayChange(tell: () => void): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher("**/*.thou");
  return vscode.Disposable.from(
    watcher,
    watcher.onDidChange(tell),
    watcher.onDidCreate(tell),
    watcher.onDidDelete(tell),
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      // a crib that the job uses counts as well
      if (document.languageId === "thou") tell();
    }),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration("thou")) tell();
    }),
    // a server that is started again tells its findings again; a record that was never saved has no name by which to know it
    vscode.languages.onDidChangeDiagnostics(({ uris }) => {
      if (
        uris.some(
          ({ scheme, path }) => isRecordName(path) || scheme === "untitled",
        )
      )
        tell();
    }),
  );
}
