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
  const { activeTextEditor, visibleTextEditors } = vscode.window;
  // at the start a panel may have the caret, and a record stand beside it
  let document = (
    activeTextEditor === undefined ? visibleTextEditors : [activeTextEditor]
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
    vscode.window.onDidChangeActiveTextEditor((editor) => {
      if (editor !== undefined) become(recordIn(editor));
    }),
    // an untitled record that is saved is closed and opened under its new address
    vscode.workspace.onDidCloseTextDocument((closed) => {
      if (closed === document) become(recordIn(vscode.window.activeTextEditor));
    }),
    // a text that is told to be a record, or no longer to be one
    vscode.workspace.onDidOpenTextDocument((opened) => {
      if (opened === vscode.window.activeTextEditor?.document)
        become(recordIn(vscode.window.activeTextEditor));
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

function recordIn(
  editor: vscode.TextEditor | undefined,
): vscode.TextDocument | undefined {
  return editor?.document.languageId === "thou" ? editor.document : undefined;
}
