// The command that shows how a record's sizes changed: it asks the server, lets the person choose where there are several, and shows the chart
// with its sentences in a panel; it says why where there is none. What is said is the server's. It runs in a browser as well.
import * as vscode from "vscode";
import type {
  TrendParams,
  TrendShown,
  Trended,
} from "../server/protocol/trend.ts";
import type { ActiveRecord } from "./active-record.ts";
import { nonceOf, withStyle } from "./policy.ts";
import { NO_ANSWER, recordOf, sayWhyNot } from "./record-command.ts";
import { tabIcon } from "./tab-icon.ts";

/** Asks the server for the trends of a record. */
export type AskForTrend = (
  params: TrendParams,
  token: vscode.CancellationToken,
) => Promise<Trended>;

/** Milliseconds that pass before a person is told what is waited for: thousands of records take longer. */
const UNTOLD = 500;

export function registerTrend(
  ask: AskForTrend,
  active: ActiveRecord,
  extension: vscode.Uri,
): vscode.Disposable {
  let panel: vscode.WebviewPanel | undefined;

  /** Gives the title of what is shown; undefined where nothing is. */
  async function showTrend(given: unknown): Promise<string | undefined> {
    const record = recordOf(given, active);
    if (record === undefined) {
      void vscode.window.showInformationMessage(
        "Open a record first: the trend is that of its sizes.",
      );
      return undefined;
    }
    const answer = await asked(record, ask);
    if (answer === undefined) return undefined;
    if (answer.state === "not") {
      void sayWhyNot(answer.because);
      return undefined;
    }
    const chosen = await choose(answer.series);
    if (chosen === undefined) return undefined;
    if (panel === undefined) {
      panel = vscode.window.createWebviewPanel(
        "thou.trend",
        "Thou Trend",
        vscode.ViewColumn.Beside,
        {
          enableScripts: false,
          localResourceRoots: [],
          enableFindWidget: true,
        },
      );
      panel.iconPath = tabIcon(extension);
      panel.onDidDispose(() => {
        panel = undefined;
      });
    } else panel.reveal();
    panel.title = `Trend: ${chosen.title}`;
    panel.webview.html = pageOf(chosen);
    return panel.title;
  }

  return vscode.Disposable.from(
    vscode.commands.registerCommand("thou.showTrend", showTrend),
    {
      dispose() {
        panel?.dispose();
      },
    },
  );
}

async function choose(
  series: readonly TrendShown[],
): Promise<TrendShown | undefined> {
  if (series.length === 1) return series[0];
  const picked = await vscode.window.showQuickPick(
    series.map((each) => ({
      label: each.title,
      description: each.along,
      detail: each.says,
      each,
    })),
    {
      title: "Show the trend of",
      matchOnDescription: true,
      matchOnDetail: true,
    },
  );
  return picked?.each;
}

/** The answer, with a word of what is read and a way to stop it where that takes long; undefined where it was stopped. */
async function asked(
  record: vscode.Uri,
  ask: AskForTrend,
): Promise<Trended | undefined> {
  const source = new vscode.CancellationTokenSource();
  const { token } = source;
  const answer = ask(
    { uri: record.toString(), isTrusted: vscode.workspace.isTrusted },
    token,
  ).catch((): Trended => ({ state: "not", because: NO_ANSWER }));
  const telling = setTimeout(() => {
    void vscode.window.withProgress(
      {
        location: vscode.ProgressLocation.Notification,
        title: "Reading the records that the trend is of",
        cancellable: true,
      },
      (_progress, stop) => {
        stop.onCancellationRequested(() => {
          source.cancel();
        });
        return answer;
      },
    );
  }, UNTOLD);
  const given = await answer;
  clearTimeout(telling);
  const wasStopped = token.isCancellationRequested;
  source.dispose();
  return wasStopped ? undefined : given;
}

const STYLE = `
body { max-width: 52rem; padding: 0.5rem 1rem 2rem; color: var(--vscode-editor-foreground); background: var(--vscode-editor-background); font-family: var(--vscode-font-family); }
h1 { font-size: 1.2rem; font-weight: 600; }
figure { margin: 1rem 0; }
svg { max-width: 100%; height: auto; }
table { border-collapse: collapse; }
caption { text-align: left; font-weight: 600; padding: 0.25rem 0; }
th, td { text-align: left; padding: 0.2rem 1rem 0.2rem 0; border-bottom: 1px solid var(--vscode-widget-border, #8888); white-space: nowrap; }
.wide { overflow-x: auto; }
.note { color: var(--vscode-descriptionForeground); }
`;

/** Nothing runs in it and nothing is fetched: one style of our own, by its nonce. */
function pageOf({ html }: TrendShown): string {
  const nonce = nonceOf();
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="UTF-8">
${withStyle(nonce)}
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Thou Trend</title>
<style nonce="${nonce}">${STYLE}</style>
</head>
<body>${html}</body>
</html>`;
}
