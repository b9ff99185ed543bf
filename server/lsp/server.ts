// The language server: one connection, its documents and settings. It knows no records: the part that does is loaded once the editor has
// had its first answer. Which request goes to which answer is requests.ts's.
import {
  CodeLensRefreshRequest,
  type Connection,
  type InitializeParams,
  type TextDocuments,
} from "vscode-languageserver";
import { capabilitiesFor } from "./capabilities.ts";
import { clientOf, type Client } from "./client.ts";
import type { Clock } from "./clock.ts";
import type { OpenLastCommit } from "./compare-answer.ts";
import type { OpenPastStates } from "./trend-answer.ts";
import { createDocuments, type Document } from "./documents.ts";
import { filesOf, type FileAccess } from "./files.ts";
import { answering, quietly, type Log } from "./guard.ts";
import { createLate, type Late } from "./late.ts";
import type { Subject } from "./refresh.ts";
import { askToBeTold } from "./registrations.ts";
import { answerRequests } from "./requests.ts";
import type { Host, Session } from "./session.ts";
import { createToldSettings, member, type ToldSettings } from "./settings.ts";

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

/** What the editor said of itself at the start, and the folders that it has open since. */
interface Editor {
  client: Client;
  folders: readonly string[];
  options: unknown;
}

/** What is there for as long as the connection is. */
interface Served {
  readonly connection: Connection;
  readonly log: Log;
  readonly editor: Editor;
  readonly settings: ToldSettings;
  readonly session: Late<Session>;
}

/** Serves a connection until it ends. */
export function serve(connection: Connection, parts: Parts): void {
  const documents = createDocuments();
  const log: Log = (sentence) => {
    connection.console.error(sentence);
  };
  const editor: Editor = {
    client: clientOf({}),
    folders: [],
    options: undefined,
  };
  const session = createLate(
    () => parts.load(editor.options),
    ({ createSession }) => {
      const made = createSession(hostFor(served, parts));
      for (const document of documents.all())
        made.changes.documentChanged(document);
      return made;
    },
    log,
  );
  const settings = createToldSettings(
    (problem) => {
      connection.console.warn(problem);
    },
    () => {
      session.tell("taking the settings", (to) => {
        to.changes.settingsChanged();
      });
    },
  );
  const served: Served = { connection, log, editor, settings, session };
  hearStart(served, parts.version);
  hearSettings(served);
  hearFiles(served, documents);
  answerRequests(connection, (name, handle) =>
    answering(name, log, async (params, token, ...rest) =>
      handle(session.now() ?? (await session.begun()), params, token, ...rest),
    ),
  );
  documents.listen(connection);
  connection.listen();
}

/** What the session is given, as the editor is when it begins. */
function hostFor(served: Served, parts: Parts): Host {
  const { connection, log, editor, settings } = served;
  const { client, folders } = editor;
  return {
    version: parts.version,
    lastCommit: parts.lastCommit,
    pastStates: parts.pastStates,
    client,
    files: filesOf(parts.files, client.readsFiles ? connection : undefined),
    clock: parts.clock,
    log,
    settings: settings.now,
    folders,
    refresh: (subject) => {
      refresh(subject, served);
    },
    publish: (params) => {
      quietly("sending findings", log, () =>
        connection.sendDiagnostics(params),
      );
    },
  };
}

/** Asks the editor to ask again, where it can be asked. */
function refresh(
  subject: Subject,
  { connection, log, editor: { client }, settings }: Served,
): void {
  quietly(`asking to ask for ${subject} again`, log, async () => {
    if (subject === "findings" && client.refreshesFindings)
      await connection.languages.diagnostics.refresh();
    if (subject === "hints" && client.refreshesHints)
      await connection.languages.inlayHint.refresh();
    if (subject === "lenses" && client.refreshesLenses && settings.now().lenses)
      await connection.sendRequest(CodeLensRefreshRequest.type);
  });
}

function hearStart(served: Served, version: string): void {
  const { connection, log, editor, settings, session } = served;
  connection.onInitialize((params) => {
    editor.client = clientOf(params.capabilities);
    editor.folders = foldersOf(params);
    // typed any
    editor.options = params.initializationOptions as unknown;
    settings.take(editor.options);
    return {
      capabilities: capabilitiesFor(editor.client),
      serverInfo: { name: "thou", version },
    };
  });
  // the editor has its answer
  connection.onInitialized(() => {
    quietly("starting", log, async () => {
      await session.begun();
    });
    readSettings(served);
    askToBeTold(connection, editor.client, log);
    if (editor.client.folders) hearFolders(served);
  });
}

function hearFolders({ connection, editor, session }: Served): void {
  connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
    const gone = new Set(removed.map(({ uri }) => uri));
    editor.folders = [
      ...editor.folders.filter((uri) => !gone.has(uri)),
      ...added.map(({ uri }) => uri),
    ];
    session.tell("changing folders", (to) => {
      to.changes.foldersChanged(editor.folders);
    });
  });
}

function hearSettings(served: Served): void {
  const { connection, editor, settings } = served;
  connection.onDidChangeConfiguration(({ settings: pushed }) => {
    if (editor.client.configuration) readSettings(served);
    else settings.take(member(pushed, "thou"));
  });
}

/** Asks the editor what is set, where it can be asked. */
function readSettings({ connection, log, editor, settings }: Served): void {
  quietly("reading the settings", log, async () => {
    if (editor.client.configuration)
      settings.take(await connection.workspace.getConfiguration("thou"));
  });
}

/** Open documents, and files of the disk as far as the editor tells of them. */
function hearFiles(
  { connection, editor, session }: Served,
  documents: TextDocuments<Document>,
): void {
  connection.onDidChangeWatchedFiles(({ changes }) => {
    session.tell("taking changed files", (to) => {
      to.changes.filesChanged(changes);
    });
  });
  documents.onDidChangeContent(({ document }) => {
    session.tell("taking a change", (to) => {
      to.changes.documentChanged(document);
    });
  });
  documents.onDidClose(({ document }) => {
    session.tell("closing", (to) => {
      to.changes.documentClosed(document.uri);
    });
  });
  documents.onDidSave(({ document }) => {
    session.tell("taking that it was saved", (to) => {
      to.changes.documentSaved(document.uri);
      // beside a lone file nothing is watched
      if (!editor.client.watches || editor.folders.length === 0)
        to.changes.diskUnsure();
    });
  });
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
