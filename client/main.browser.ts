// The extension where it runs in a browser: its server is a worker, from the bundle beside it.
import * as vscode from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { begin, type Thou } from "./extension.ts";

export { deactivate } from "./extension.ts";

/** What is used of a worker: the types of Node, which all else is checked with, have none. */
declare class Worker {
  constructor(address: string, options: { readonly name: string });
  addEventListener(
    type: "error",
    listener: (event: { readonly message?: string }) => void,
  ): void;
  terminate(): void;
}

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
        worker.addEventListener("error", ({ message }) => {
          reject(new Error(message ?? `${server} can't be loaded`));
        });
      }),
      kill: () => {
        worker.terminate();
      },
    };
  });
}
