// The extension where it runs on Node: its server is a process of its own, from the bundle beside it.
import type * as vscode from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { begin, type Thou } from "./extension.ts";

export { deactivate } from "./extension.ts";

export function activate(context: vscode.ExtensionContext): Thou {
  const module = context.asAbsolutePath("dist/server.cjs");
  return begin(context, (options) => {
    const client = new LanguageClient(
      "thou",
      "Thou",
      { module, transport: TransportKind.ipc },
      options,
    );
    return {
      client,
      kill: () => {
        client.serverProcess?.kill();
      },
    };
  });
}
