// The bench view: a panel beside the text that shows the job in pictures, live. It asks the server for what to show and hands it to the page
// (bench-page/), takes clicks to their lines, and says so when nobody answers. It knows nothing of what is drawn.
import * as vscode from "vscode";
import type { ActiveRecord } from "./active-record.ts";
import type { Connection } from "./connection.ts";
import { nonceOf, withScript } from "./policy.ts";
import { onRecordsMayChange, refreshing } from "./refresh.ts";
import { tabIcon } from "./tab-icon.ts";
import type { BenchView } from "../server/protocol/bench.ts";
import type { FromPage } from "./bench-page/messages.ts";
import { createSaid } from "./bench-said.ts";

const BENCH = "thou.bench";

/** Short enough to seem to follow what is typed; milliseconds. */
const SETTLED = 150;

export function registerBench(
  context: vscode.ExtensionContext,
  server: Connection,
  record: ActiveRecord,
): vscode.Disposable {
  const folder = vscode.Uri.joinPath(context.extensionUri, "dist");
  const options = { enableScripts: true, localResourceRoots: [folder] };
  let bench: Bench | undefined;

  function adopt(panel: vscode.WebviewPanel, uri: string | undefined): void {
    bench?.close();
    panel.webview.options = options;
    panel.iconPath = tabIcon(context.extensionUri);
    const mine = openBench(panel, folder, server, record, uri);
    bench = mine;
    panel.onDidDispose(() => {
      mine.end();
      if (bench === mine) bench = undefined;
    });
  }

  return vscode.Disposable.from(
    vscode.commands.registerCommand("thou.showBench", () => {
      if (bench !== undefined) {
        bench.reveal();
        return;
      }
      const panel = vscode.window.createWebviewPanel(
        BENCH,
        "Thou Bench",
        { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
        { ...options, enableFindWidget: true },
      );
      adopt(panel, undefined);
    }),
    vscode.window.registerWebviewPanelSerializer(BENCH, {
      deserializeWebviewPanel(panel, state: unknown) {
        const uri =
          typeof state === "object" && state !== null && "uri" in state
            ? state.uri
            : undefined;
        adopt(panel, typeof uri === "string" ? uri : undefined);
        return Promise.resolve();
      },
    }),
    { dispose: () => bench?.close() },
  );
}

interface Bench {
  /** Stops listening; its panel is gone. */
  end(): void;
  reveal(): void;
  close(): void;
}

function openBench(
  panel: vscode.WebviewPanel,
  folder: vscode.Uri,
  server: Connection,
  record: ActiveRecord,
  restored: string | undefined,
): Bench {
  /** The last record that the person was at. */
  let uri = restored;
  let line = 0;
  let width = 0;
  const said = createSaid((message) => {
    void panel.webview.postMessage(message);
  });
  const refresh = refreshing(SETTLED, show);
  const { soon } = refresh;

  function follow(editor: vscode.TextEditor | undefined): void {
    const document = record.document();
    if (document === undefined) return;
    uri = document.uri.toString();
    if (editor?.document === document) line = editor.selection.active.line;
    soon();
  }

  async function show(token: vscode.CancellationToken): Promise<void> {
    // a page that is hidden is gone, and tells its width when it is there again
    if (width === 0 || !panel.visible) return;
    if (uri === undefined) {
      said.nothing();
      return;
    }
    try {
      const found = await server.ask("thou/bench", { uri, line, width }, token);
      if (token.isCancellationRequested) return;
      if (found === null) said.old("The record is not there any more.", false);
      else said.view(uri, fileName(uri), found);
    } catch (error) {
      if (token.isCancellationRequested) return;
      said.old(
        error instanceof Error
          ? error.message
          : "The Thou server gave no answer.",
        true,
      );
    }
  }

  async function heard(message: FromPage): Promise<void> {
    if (message.type === "width") {
      const isFirst = width === 0;
      width = Math.max(0, Math.round(message.width));
      // what was shown before stands at once, and the new follows
      if (isFirst || message.fresh) {
        said.again();
        refresh.now();
      } else soon();
    } else if (message.type === "go") {
      const place = said.placeOf(message.ref);
      if (place !== undefined) await goTo(place);
    } else {
      await server.restart();
      soon();
    }
  }

  const listening = vscode.Disposable.from(
    panel.webview.onDidReceiveMessage(heard),
    panel.onDidChangeViewState(soon),
    refresh,
    record.onDidChange(() => {
      follow(vscode.window.activeTextEditor);
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (textEditor === vscode.window.activeTextEditor) follow(textEditor);
    }),
    onRecordsMayChange(soon),
  );
  panel.webview.html = pageHtml(panel.webview, folder);
  follow(
    vscode.window.visibleTextEditors.find(
      ({ document }) => document === record.document(),
    ),
  );
  return {
    reveal() {
      panel.reveal(undefined, true);
    },
    close() {
      panel.dispose();
    },
    end() {
      listening.dispose();
    },
  };
}

async function goTo(place: BenchView["places"][string]): Promise<void> {
  const address = vscode.Uri.parse(place.uri);
  const shown = vscode.window.visibleTextEditors.find(
    ({ document }) => document.uri.toString() === address.toString(),
  );
  await vscode.window.showTextDocument(address, {
    viewColumn: shown?.viewColumn ?? vscode.ViewColumn.One,
    selection: new vscode.Range(place.line, place.start, place.line, place.end),
  });
}

function fileName(uri: string): string {
  const { path } = vscode.Uri.parse(uri);
  return path.slice(path.lastIndexOf("/") + 1);
}

/** The page is empty until its script hears what to show: nothing but our own script and style may run in it. */
function pageHtml(webview: vscode.Webview, folder: vscode.Uri): string {
  const nonce = nonceOf();
  const at = (name: string): string =>
    webview.asWebviewUri(vscode.Uri.joinPath(folder, name)).toString();
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="UTF-8">
${withScript(nonce, webview.cspSource)}
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${at("bench-style.css")}">
<title>Thou Bench</title>
</head>
<body>
<header>
<h1 id="title">Thou Bench</h1>
<p id="file"></p>
<p id="notice" role="status">Waiting for the Thou server.</p>
<nav id="jump" aria-label="Parts of this view"></nav>
</header>
<main id="sections"></main>
<script nonce="${nonce}" src="${at("bench.js")}"></script>
</body>
</html>`;
}
