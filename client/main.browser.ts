// The extension where it runs in a browser: its server is a worker, from the bundle beside it.
/// <reference lib="dom" />
import * as vscode from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { begin, type Thou } from "./extension.ts";

export { deactivate } from "./extension.ts";

export function activate(context: vscode.ExtensionContext): Thou {
  const address = (file: string): string =>
    vscode.Uri.joinPath(context.extensionUri, "dist", file).toString(true);
  const server = address("server.browser.js");
  const initializationOptions = { session: address("session.js") };
  return begin(context, (options) => {
    const worker = new Worker(server, { name: "Thou server" });
    return {
      client: new LanguageClient("thou", "Thou", worker, {
        ...options,
        initializationOptions,
      }),
      // the server keeps its own errors: one that comes up here is that the worker was not there or could not be read
      failed: new Promise((_, reject) => {
        // an event of a file that is not there carries no message
        worker.addEventListener(
          "error",
          (event: { readonly message?: string }) => {
            const { message } = event;
            reject(new Error(message ?? `${server} can't be loaded`));
          },
        );
      }),
      kill: () => {
        worker.terminate();
      },
    };
  });
}
