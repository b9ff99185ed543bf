// Owns the connection to the language server: starts it, starts it again when it has crashed, leaves it when that does not
// help, and says so in one place. What passes over the connection is none of its business, and where the server runs is that of
// main.*.ts.
import * as vscode from "vscode";
import {
  CloseAction,
  ErrorAction,
  RevealOutputChannelOn,
  State,
  type BaseLanguageClient,
  type InlayHintsMiddleware,
  type LanguageClientOptions,
} from "vscode-languageclient";
import type { OwnRequest, ParamsOf, ResultOf } from "../server/protocol.ts";
import { createCrashes } from "./crashes.ts";
import { offerFiles } from "./files.ts";
import { withBreaks } from "./hint-breaks.ts";
import { offerLensCommands } from "./lenses.ts";
import { recordsOf, schemesServed } from "./schemes.ts";
import { createServerStatus } from "./server-status.ts";

export interface Connection {
  /** Whether the first start succeeded. */
  readonly ready: Promise<boolean>;
  /** Asks the server one of our own requests. Rejects while no server answers. */
  readonly ask: <N extends OwnRequest>(
    name: N,
    params: ParamsOf<N>,
    token?: vscode.CancellationToken,
  ) => Promise<ResultOf<N>>;
  /** Ends the server, whatever state it is in, and starts another. */
  restart(): Promise<boolean>;
  stop(): Promise<void>;
  /** Takes the signs of the connection away; `stop` comes first. */
  dispose(): void;
}

/** A server that is about to start, and the client that speaks with it. */
export interface Launched {
  readonly client: BaseLanguageClient;
  /** Rejects where the server can't so much as begin, and no one else would say so. */
  readonly failed?: Promise<never>;
  /** Ends a server that can't be asked to. */
  readonly kill: () => void;
}

/** Makes a server and its client; the client's start is the connection's. */
export type Launch = (options: LanguageClientOptions) => Launched;

const notStarted =
  "The Thou server did not start, so no findings and no clearances are shown. The log says why.";

export function connect(
  launch: Launch,
  log: vscode.LogOutputChannel,
): Connection {
  const status = createServerStatus();
  const crashes = createCrashes();
  let current: Launched | undefined;
  let served = schemesServed();
  let started = start();
  const folders = vscode.workspace.onDidChangeWorkspaceFolders(() => {
    // what a client serves is settled when it starts
    const isNew = [...schemesServed()].some((each) => !served.has(each));
    if (isNew) void restart();
  });

  async function start(): Promise<boolean> {
    served = schemesServed();
    const records = recordsOf(served);
    status.starting(records);
    try {
      return await startWith(
        launchFor(records, launch, log, (attempt) => {
          if (attempt === current && attempt.client.state === State.Running)
            crashed();
        }),
      );
    } catch (error) {
      log.error(`The server can't be made: ${String(error)}`);
      giveUp(notStarted);
      return false;
    }
  }

  async function startWith(attempt: Launched): Promise<boolean> {
    current = attempt;
    const came = await comes(attempt, log);
    if (attempt !== current) {
      await end(attempt, log); // it came too late: another was started meanwhile
      return false;
    }
    if (came) {
      status.running();
      log.info("The server is running."); // who opens the log while all is well isn't left before an empty page
    } else giveUp(notStarted);
    return came;
  }

  function crashed(): void {
    const { isBorne, sentence } = crashes.happened();
    if (isBorne) {
      log.warn(sentence);
      started = start();
    } else giveUp(sentence);
  }

  function giveUp(sentence: string): void {
    status.failed();
    const restartIt = "Restart Server";
    const showLog = "Show Log";
    void vscode.window
      .showErrorMessage(sentence, restartIt, showLog)
      .then((choice) => {
        if (choice === restartIt) void restart();
        if (choice === showLog) log.show();
      });
  }

  function restart(): Promise<boolean> {
    crashes.forgive();
    const former = current;
    current = undefined;
    if (former !== undefined) started = end(former, log).then(start); // else it is being restarted already
    return started;
  }

  return {
    ready: started,
    async ask(name, params, token) {
      const client = (await started) ? current?.client : undefined;
      return askClient(client, name, params, token);
    },
    restart,
    async stop() {
      const former = current;
      current = undefined;
      if (former !== undefined) await end(former, log);
    },
    dispose() {
      status.dispose();
      folders.dispose();
    },
  };
}

/** A server for these records, not started yet, with a client that tells when it is closed. */
function launchFor(
  records: vscode.DocumentSelector & LanguageClientOptions["documentSelector"],
  launch: Launch,
  log: vscode.LogOutputChannel,
  closed: (attempt: Launched) => void,
): Launched {
  const attempt = launch({
    documentSelector: records,
    outputChannel: log,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    middleware: { provideInlayHints: breakableHints },
    initializationFailedHandler: () => false,
    errorHandler: {
      error: (_error, _message, count) => ({
        action: (count ?? 0) <= 3 ? ErrorAction.Continue : ErrorAction.Shutdown,
        handled: true,
      }),
      closed: () => {
        closed(attempt);
        return { action: CloseAction.DoNotRestart, handled: true };
      },
    },
  });
  quieten(attempt.client);
  offerFiles(attempt.client);
  offerLensCommands(attempt.client);
  return attempt;
}

/** Starts a client, and waits until its server answers; where it never will, it is in the log why. */
function comes(
  { client, failed }: Launched,
  log: vscode.LogOutputChannel,
): Promise<boolean> {
  failed?.catch((reason: unknown) => {
    log.error(`The server failed: ${String(reason)}`);
  });
  const begun = client.start();
  return Promise.race(failed === undefined ? [begun] : [begun, failed]).then(
    () => true,
    () => false,
  );
}

async function end(
  { client, kill }: Launched,
  log: vscode.LogOutputChannel,
): Promise<void> {
  // Only a running client can be asked to stop; one that hangs in its start is ended with its server.
  if (client.state === State.Running)
    await client.stop().catch((reason: unknown) => {
      log.warn(`The server did not stop as asked: ${String(reason)}`);
      kill();
    });
  else kill();
}

async function askClient<N extends OwnRequest>(
  client: BaseLanguageClient | undefined,
  name: N,
  params: ParamsOf<N>,
  token: vscode.CancellationToken | undefined,
): Promise<ResultOf<N>> {
  if (client?.state !== State.Running)
    throw new Error("The Thou server is not running.");
  // a token that is not there would go out as a second parameter
  return token === undefined
    ? client.sendRequest<ResultOf<N>>(name, params)
    : client.sendRequest<ResultOf<N>>(name, params, token);
}

const breakableHints: NonNullable<
  InlayHintsMiddleware["provideInlayHints"]
> = async (document, range, token, next) => {
  const hints = await next(document, range, token);
  for (const hint of hints ?? []) {
    if (typeof hint.label !== "string")
      hint.label = withBreaks(hint.label, (part, value) =>
        Object.assign(new vscode.InlayHintLabelPart(value), {
          tooltip: part.tooltip,
          location: part.location,
          command: part.command,
        }),
      );
  }
  return hints;
};

/** Has a client log its failures and leave it to the connection to tell the user. */
function quieten(client: BaseLanguageClient): void {
  const tell = client.error.bind(client);
  client.error = (message, data) => {
    tell(message, data, false);
  };
}
