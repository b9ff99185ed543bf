// What the editor is asked to tell of, once it has its first answer: files that change and settings.
import {
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  WatchKind,
  type Connection,
} from "vscode-languageserver";
import type { Client } from "./client.ts";
import { quietly, type Log } from "./guard.ts";

export function askToBeTold(
  { client: editor }: Pick<Connection, "client">,
  client: Pick<Client, "watches" | "configurationChanges">,
  log: Log,
): void {
  if (client.watches)
    quietly("asking to be told of changed files", log, async () => {
      await editor.register(DidChangeWatchedFilesNotification.type, {
        watchers: [
          { globPattern: "**/*.thou" },
          // a folder that comes or goes with what is in it is told of and its records are not
          { globPattern: "**/*", kind: WatchKind.Create | WatchKind.Delete },
        ],
      });
    });
  if (client.configurationChanges)
    quietly("asking to be told of settings", log, async () => {
      await editor.register(DidChangeConfigurationNotification.type, {
        section: "thou",
      });
    });
}
