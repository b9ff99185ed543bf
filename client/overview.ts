// The overview of the record that the person is at: asks for it when something may have changed, and gives it to the tree and to the status
// bar. Both show the one answer.
import * as vscode from "vscode";
import type { Overview } from "../server/protocol/overview.ts";
import type { ActiveRecord } from "./active-record.ts";
import type { Connection } from "./connection.ts";
import { overviewStatus } from "./overview-status.ts";
import { overviewTree } from "./overview-tree.ts";
import { onRecordsMayChange, refreshing } from "./refresh.ts";

/** What there is to show. The name is also that of a context key, by which the manifest chooses what an empty view says. */
export type Shown =
  | { readonly state: "none" | "failed" }
  | { readonly state: "empty" | "record"; readonly overview: Overview };

/** Short enough to seem to follow what is typed; milliseconds. */
const SETTLED = 200;

export function registerOverview(
  server: Connection,
  record: ActiveRecord,
): vscode.Disposable {
  const tree = overviewTree(async (ref, token) => {
    const { uri } = record.document() ?? {};
    if (uri === undefined) return [];
    const found = await server.ask(
      "thou/overviewMore",
      { uri: uri.toString(), ref },
      token,
    );
    return found?.lines ?? [];
  });
  const status = overviewStatus();
  const refresh = refreshing(SETTLED, ask);

  async function ask(token: vscode.CancellationToken): Promise<void> {
    const { uri } = record.document() ?? {};
    if (uri === undefined) {
      show({ state: "none" });
      return;
    }
    let shown: Shown;
    try {
      const overview = await server.ask(
        "thou/overview",
        { uri: uri.toString() },
        token,
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
    if (!token.isCancellationRequested) show(shown);
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

  show({ state: "none" });
  refresh.soon();
  return vscode.Disposable.from(
    tree,
    status,
    refresh,
    record.onDidChange(refresh.now),
    onRecordsMayChange(refresh.soon),
    vscode.commands.registerCommand("thou.showOverview", () =>
      vscode.commands.executeCommand("thou.overview.focus"),
    ),
  );
}
