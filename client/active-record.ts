// Which record the person is at: the one in the editor that has the caret, or the last such one while none has (a panel or a list has it).
import * as vscode from "vscode";

export interface ActiveRecord {
  /** Undefined where no record is open, or another text has the caret. */
  readonly document: () => vscode.TextDocument | undefined;
  readonly onDidChange: vscode.Event<void>;
  dispose(): void;
}

export function followActiveRecord(): ActiveRecord {
  const changed = new vscode.EventEmitter<void>();
  const active = activeEditor();
  // at the start a panel may have the caret, and a record stand beside it
  let document = (
    active === undefined ? vscode.window.visibleTextEditors : [active]
  )
    .map(recordIn)
    .find((each) => each !== undefined);

  function become(next: vscode.TextDocument | undefined): void {
    if (next === document) return;
    document = next;
    changed.fire();
  }

  const following = vscode.Disposable.from(
    changed,
    vscode.window.onDidChangeActiveTextEditor(() => {
      const editor = activeEditor();
      if (editor !== undefined) become(recordIn(editor));
    }),
    // an untitled record that is saved is closed and opened under its new address
    vscode.workspace.onDidCloseTextDocument((closed) => {
      if (closed === document) become(recordIn(activeEditor()));
    }),
    // a text that is told to be a record, or no longer to be one
    vscode.workspace.onDidOpenTextDocument((opened) => {
      if (opened === activeEditor()?.document) become(recordIn(activeEditor()));
    }),
  );
  return {
    document: () => document,
    onDidChange: changed.event,
    dispose() {
      following.dispose();
    },
  };
}

/** The editor that has the caret. A log in the panel counts as none: the editor calls it active as long as it is shown and a page of ours has the caret. */
function activeEditor(): vscode.TextEditor | undefined {
  const { activeTextEditor } = vscode.window;
  return activeTextEditor?.document.uri.scheme === "output"
    ? undefined
    : activeTextEditor;
}

function recordIn(
  editor: vscode.TextEditor | undefined,
): vscode.TextDocument | undefined {
  return editor?.document.languageId === "thou" ? editor.document : undefined;
}
