// The overview of the record that the person is at: asks for it when something may have changed, and gives it to the tree and to the status
// bar. Both show the one answer.
import * as vscode from "vscode";
import type { Overview } from "../server/protocol/overview.ts";
import { followActiveRecord } from "./active-record.ts";
import type { Connection } from "./connection.ts";
import { overviewStatus } from "./overview-status.ts";
import { overviewTree } from "./overview-tree.ts";

/** What there is to show. The name is also that of a context key, by which the manifest chooses what an empty view says. */
export type Shown =
  | { readonly state: "none" | "failed" }
  | { readonly state: "empty" | "record"; readonly overview: Overview };

/** Long enough for a few keystrokes, short enough to seem to follow them; milliseconds. */
const SETTLED = 200;

export function registerOverview(server: Connection): vscode.Disposable {
  const record = followActiveRecord();
  const tree = overviewTree();
  const status = overviewStatus();
  const watcher = vscode.workspace.createFileSystemWatcher("**/*.thou");
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asking: vscode.CancellationTokenSource | undefined;

  function soon(): void {
    clearTimeout(timer);
    timer = setTimeout(() => void ask(), SETTLED);
  }

  async function ask(): Promise<void> {
    asking?.cancel();
    const { uri } = record.document() ?? {};
    if (uri === undefined) {
      show({ state: "none" });
      return;
    }
    const source = new vscode.CancellationTokenSource();
    asking = source;
    let shown: Shown;
    try {
      const overview = await server.ask(
        "thou/overview",
        { uri: uri.toString() },
        source.token,
      );
      shown =
        overview === null
          ? { state: "none" }
          : {
              state: overview.groups.length === 0 ? "empty" : "record",
              overview,
            };
    } catch {
      shown = { state: "failed" }; // the connection has logged why
    }
    // a later question's answer counts
    if (!source.token.isCancellationRequested) show(shown);
  }

  function show(shown: Shown): void {
    void vscode.commands.executeCommand(
      "setContext",
      "thou.overview",
      shown.state,
    );
    tree.show(shown);
    status.show(shown);
  }

  const isRecord = ({ path }: vscode.Uri): boolean => path.endsWith(".thou");
  show({ state: "none" });
  soon();
  return vscode.Disposable.from(
    record,
    tree,
    status,
    watcher,
    watcher.onDidChange(soon),
    watcher.onDidCreate(soon),
    watcher.onDidDelete(soon),
    record.onDidChange(() => void ask()),
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      // its crib may be what is typed
      if (document.languageId === "thou") soon();
    }),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration("thou")) soon();
    }),
    // a server that is started again tells its findings again
    vscode.languages.onDidChangeDiagnostics(({ uris }) => {
      const at = record.document()?.uri;
      if (
        at !== undefined &&
        uris.some((uri) => isRecord(uri) || same(uri, at))
      )
        soon();
    }),
    vscode.commands.registerCommand("thou.showOverview", () =>
      vscode.commands.executeCommand("thou.overview.focus"),
    ),
    {
      dispose() {
        clearTimeout(timer);
        asking?.cancel();
      },
    },
  );
}

function same(one: vscode.Uri, other: vscode.Uri): boolean {
  return one.toString() === other.toString();
}
