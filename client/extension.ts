// Begins and ends the extension: brings up the connection to the language server and registers the commands and the pages of
// findings. What a record means is the server's; this folder only carries questions and answers. It runs in a browser as well as under
// Node: what differs is passed in by main.*.ts.
import * as vscode from "vscode";
import { followActiveRecord, type ActiveRecord } from "./active-record.ts";
import { registerBench } from "./bench.ts";
import { registerComparing } from "./comparing.ts";
import { connect, type Connection, type Launch } from "./connection.ts";
import { chooseFinding } from "./finding-at-caret.ts";
import { registerLensCommands } from "./lenses.ts";
import { registerNewJob } from "./new-job.ts";
import { registerOverview } from "./overview.ts";
import { isFindingCode, pageAddress, registerPages } from "./pages.ts";
import { openSample } from "./sample.ts";
import { registerTaking } from "./take-readings.ts";
import { registerSheets } from "./sheets.ts";
import { registerTrend } from "./trend.ts";

let connection: Connection | undefined;

/** What the extension offers to others, tests among them: whether the server came up. It answers once that is known. */
export interface Thou {
  readonly ready: Promise<boolean>;
}

/** @param launch makes the server where this extension runs */
export function begin(context: vscode.ExtensionContext, launch: Launch): Thou {
  const log = vscode.window.createOutputChannel("Thou", { log: true });
  const server = connect(launch, log);
  connection = server;
  const record = followActiveRecord();
  context.subscriptions.push(
    log,
    server,
    record,
    registerPages(
      async (code) => (await server.ask("thou/page", { code }))?.markdown,
    ),
    registerNewJob(server.ask),
    registerTaking(server.ask, context.workspaceState),
    registerSheets((params) => server.ask("thou/sheet", params), record),
    registerComparing((params) => server.ask("thou/compare", params), record),
    registerTrend(
      (params, token) => server.ask("thou/trend", params, token),
      record,
      context.extensionUri,
    ),
    registerBench(context, server, record),
    vscode.commands.registerCommand("thou.restartServer", () =>
      server.restart(),
    ),
    vscode.commands.registerCommand("thou.showLog", () => {
      log.show();
    }),
    vscode.commands.registerCommand("thou.explainFinding", (given) =>
      explainFinding(record, given),
    ),
    registerOverview(server, record),
    vscode.commands.registerCommand("thou.openSample", () =>
      openSample(context.extensionUri),
    ),
    vscode.commands.registerCommand("thou.gettingStarted", () =>
      vscode.commands.executeCommand(
        "workbench.action.openWalkthrough",
        `${context.extension.id}#start`,
      ),
    ),
    ...registerLensCommands(),
  );
  return { ready: server.ready };
}

export function deactivate(): Promise<void> | undefined {
  return connection?.stop();
}

/** Opens the page of a finding: of the code given, or else of the finding at the caret. */
async function explainFinding(
  record: ActiveRecord,
  given: unknown,
): Promise<void> {
  const code = isFindingCode(given) ? given : await chooseFinding(record);
  if (code === undefined) return;
  // The manifest associates the address with the Markdown preview; someone who prefers the text can say so in the settings.
  await vscode.commands.executeCommand("vscode.open", pageAddress(code), {
    viewColumn: vscode.ViewColumn.Beside,
  });
}
