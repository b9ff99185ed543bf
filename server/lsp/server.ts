// The language server: one connection, its documents and settings. It knows no records: the part that does is loaded once the editor has
// had its first answer. Which request goes to which answer is requests.ts's.
import {
  CodeLensRefreshRequest,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  WatchKind,
} from "vscode-languageserver";
import type { Connection, InitializeParams } from "vscode-languageserver";
import { capabilitiesFor } from "./capabilities.ts";
import { clientOf, type Client } from "./client.ts";
import type { Clock } from "./clock.ts";
import type { OpenLastCommit } from "./compare-answer.ts";
import type { OpenPastStates } from "./trend-answer.ts";
import { createDocuments } from "./documents.ts";
import { filesOf, type FileAccess } from "./files.ts";
import { answering, quietly, type Log } from "./guard.ts";
import type { Subject } from "./refresh.ts";
import { answerRequests, type Answer } from "./requests.ts";
import type { Host, Session } from "./session.ts";
import { DEFAULTS, member, settingsFrom, type Settings } from "./settings.ts";

export interface Parts {
  /** The disk; none in a browser. */
  readonly files?: FileAccess;
  readonly clock: Clock;
  /** The part that knows records. @param options what the editor gave at the start, `initializationOptions` of the protocol */
  readonly load: (options: unknown) => Promise<{
    readonly createSession: (host: Host) => Session;
  }>;
  readonly version: string;
  /** Reads the last commit of a file's repository; none where there is no git to run. */
  readonly lastCommit?: OpenLastCommit;
  /** Reads the versions of a file in its repository; none where there is no git to run. */
  readonly pastStates?: OpenPastStates;
}

/** Serves a connection until it ends. */
export function serve(connection: Connection, parts: Parts): void {
  const { files, clock } = parts;
  const documents = createDocuments();
  const log: Log = (sentence) => {
    connection.console.error(sentence);
  };
  let client: Client = clientOf({});
  let settings: Settings = DEFAULTS;
  let folders: readonly string[] = [];
  let options: unknown;
  let session: Session | undefined;
  let loading: Promise<Session> | undefined;

  async function begin(): Promise<Session> {
    const { createSession } = await parts.load(options);
    const made = createSession({
      version: parts.version,
      lastCommit: parts.lastCommit,
      pastStates: parts.pastStates,
      client,
      files: filesOf(files, client.readsFiles ? connection : undefined),
      clock,
      log,
      settings: () => settings,
      folders,
      refresh,
      publish: (params) => {
        quietly("sending findings", log, () =>
          connection.sendDiagnostics(params),
        );
      },
    });
    for (const document of documents.all()) made.documentChanged(document);
    session = made;
    return made;
  }

  function loaded(): Promise<Session> {
    loading ??= begin().catch((error: unknown) => {
      // tried again when it is next needed
      loading = undefined;
      throw error;
    });
    return loading;
  }

  function refresh(subject: Subject): void {
    quietly(`asking to ask for ${subject} again`, log, async () => {
      if (subject === "findings" && client.refreshesFindings)
        await connection.languages.diagnostics.refresh();
      if (subject === "hints" && client.refreshesHints)
        await connection.languages.inlayHint.refresh();
      if (subject === "lenses" && client.refreshesLenses && settings.lenses)
        await connection.sendRequest(CodeLensRefreshRequest.type);
    });
  }

  const answer: Answer = (name, handle) =>
    answering(name, log, async (params, token, ...rest) =>
      handle(session ?? (await loaded()), params, token, ...rest),
    );

  /** Tells the session, if it has begun: when it begins it takes everything as it then is. */
  function tell(name: string, act: (to: Session) => void): void {
    const to = session;
    if (to !== undefined)
      quietly(name, log, () => {
        act(to);
      });
  }

  async function readSettings(): Promise<void> {
    if (!client.configuration) return;
    take(await connection.workspace.getConfiguration("thou"));
  }

  function take(section: unknown): void {
    const before = settings;
    settings = settingsFrom(section);
    for (const problem of settings.problems) {
      if (!before.problems.includes(problem)) connection.console.warn(problem);
    }
    if (JSON.stringify(before) !== JSON.stringify(settings))
      tell("taking the settings", (to) => {
        to.settingsChanged();
      });
  }

  connection.onInitialize((params) => {
    client = clientOf(params.capabilities);
    folders = foldersOf(params);
    // typed any
    options = params.initializationOptions as unknown;
    take(options);
    return {
      capabilities: capabilitiesFor(client),
      serverInfo: { name: "thou", version: parts.version },
    };
  });

  // the editor has its answer
  connection.onInitialized(() => {
    quietly("starting", log, async () => {
      await loaded();
    });
    quietly("reading the settings", log, readSettings);
    if (client.watches)
      quietly("asking to be told of changed files", log, async () => {
        await connection.client.register(
          DidChangeWatchedFilesNotification.type,
          {
            watchers: [
              { globPattern: "**/*.thou" },
              // a folder that comes or goes with what is in it is told of and its records are not
              {
                globPattern: "**/*",
                kind: WatchKind.Create | WatchKind.Delete,
              },
            ],
          },
        );
      });
    if (client.configurationChanges)
      quietly("asking to be told of settings", log, async () => {
        await connection.client.register(
          DidChangeConfigurationNotification.type,
          { section: "thou" },
        );
      });
    if (client.folders)
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(({ uri }) => uri));
        folders = [
          ...folders.filter((uri) => !gone.has(uri)),
          ...added.map(({ uri }) => uri),
        ];
        tell("changing folders", (to) => {
          to.foldersChanged(folders);
        });
      });
  });

  connection.onDidChangeConfiguration(({ settings: pushed }) => {
    if (client.configuration)
      quietly("reading the settings", log, readSettings);
    else take(member(pushed, "thou"));
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    tell("taking changed files", (to) => {
      to.filesChanged(changes);
    });
  });

  documents.onDidChangeContent(({ document }) => {
    tell("taking a change", (to) => {
      to.documentChanged(document);
    });
  });
  documents.onDidClose(({ document }) => {
    tell("closing", (to) => {
      to.documentClosed(document.uri);
    });
  });
  documents.onDidSave(({ document }) => {
    tell("taking that it was saved", (to) => {
      to.documentSaved(document.uri);
      // beside a lone file nothing is watched
      if (!client.watches || folders.length === 0) to.diskUnsure();
    });
  });

  answerRequests(connection, answer);

  documents.listen(connection);
  connection.listen();
}

function foldersOf(params: InitializeParams): readonly string[] {
  const folders: unknown = member(params, "workspaceFolders");
  if (Array.isArray(folders))
    return folders.flatMap((folder) => {
      const uri = member(folder, "uri");
      return typeof uri === "string" ? [uri] : [];
    });
  // what editors said before there were folders
  const root = member(params, "rootUri");
  return typeof root === "string" ? [root] : [];
}
