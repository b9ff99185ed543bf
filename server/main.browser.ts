// The language server in a worker of a browser: its messages are the worker's, and its files those that the editor reads for it.
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from "vscode-languageserver/browser";
import manifest from "../package.json" with { type: "json" };
import { systemClock } from "./lsp/clock.ts";
import { serve, type Parts } from "./lsp/server.ts";
import { member } from "./lsp/settings.ts";

/** What is used of the worker itself: the types of Node, which all else is checked with, have none. */
interface Self {
  readonly location: { readonly href: string };
  close(): void;
  addEventListener(
    type: "error" | "unhandledrejection",
    listener: (event: {
      readonly error?: unknown;
      readonly reason?: unknown;
      preventDefault(): void;
    }) => void,
  ): void;
}
declare const self: Self;

const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(self),
  new BrowserMessageWriter(self),
);

// every handler is guarded; this is for what none of them foresaw
for (const kind of ["error", "unhandledrejection"] as const)
  self.addEventListener(kind, (event) => {
    event.preventDefault();
    const error = event.error ?? event.reason;
    const told =
      error instanceof Error ? (error.stack ?? error.message) : error;
    connection.console.error(`Unforeseen: ${String(told)}`);
  });

connection.onExit(() => {
  self.close();
});

serve(connection, {
  clock: systemClock,
  load: (options) =>
    import(addressOfSession(options)) as ReturnType<Parts["load"]>, // the bundle beside this one
  version: manifest.version,
});

/** A worker that an editor made from a blob does not know where it came from, and is told. */
function addressOfSession(options: unknown): string {
  const told = member(options, "session");
  return typeof told === "string"
    ? told
    : new URL("session.js", self.location.href).href;
}
