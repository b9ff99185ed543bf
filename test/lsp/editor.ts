// A small editor for tests of the server: speaks the protocol over streams, answers what an editor answers, and notes what it is told.
import type { Readable, Writable } from "node:stream";
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type MessageReader,
  type MessageWriter,
} from "vscode-jsonrpc/node";
import type {
  CodeAction,
  Diagnostic,
  DocumentDiagnosticReport,
  InlayHint,
  InitializeResult,
  PublishDiagnosticsParams,
  Range,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver";

/** What the editor says it can do, over what a full one can. */
export const FULL = {
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    diagnostics: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
    workspaceEdit: { documentChanges: true },
  },
  textDocument: {
    publishDiagnostics: {
      relatedInformation: true,
      codeDescriptionSupport: true,
      versionSupport: true,
    },
    diagnostic: { dynamicRegistration: true },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: [] } },
    },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    rename: { prepareSupport: true },
  },
};

export type Editor = ReturnType<typeof createEditor>;

export function createEditor(fromServer: Readable, toServer: Writable) {
  return createEditorOver(
    new StreamMessageReader(fromServer),
    new StreamMessageWriter(toServer),
  );
}

/** An editor over whatever carries messages. */
export function createEditorOver(reader: MessageReader, writer: MessageWriter) {
  const connection = createMessageConnection(reader, writer);
  const versions = new Map<string, number>();
  const settings: { thou: unknown } = { thou: null };
  const told = {
    published: [] as PublishDiagnosticsParams[],
    refreshed: [] as string[],
    registered: [] as string[],
    logged: [] as string[],
    /** How often the server asked for the settings. */
    asked: 0,
  };
  const waiting = new Set<() => void>();
  const note = (): void => {
    for (const wake of [...waiting]) wake();
  };

  connection.onRequest("workspace/configuration", () => {
    told.asked++;
    // once the answer is on its way
    setImmediate(note);
    return [settings.thou];
  });
  connection.onRequest(
    "client/registerCapability",
    ({ registrations }: { registrations: readonly { method: string }[] }) => {
      told.registered.push(...registrations.map(({ method }) => method));
      note();
      return null;
    },
  );
  for (const subject of ["diagnostic", "inlayHint", "codeLens"])
    connection.onRequest(`workspace/${subject}/refresh`, () => {
      told.refreshed.push(subject);
      note();
      return null;
    });
  connection.onRequest("window/workDoneProgress/create", () => null);
  connection.onNotification(
    "textDocument/publishDiagnostics",
    (params: PublishDiagnosticsParams) => {
      told.published.push(params);
      note();
    },
  );
  connection.onNotification(
    "window/logMessage",
    ({ message }: { message: string }) => {
      told.logged.push(message);
      note();
    },
  );
  connection.listen();

  const request = <R>(method: string, params: unknown): Promise<R> =>
    connection.sendRequest(method, params);
  const notify = (method: string, params: unknown): Promise<void> =>
    connection.sendNotification(method, params);

  return {
    connection,
    told,
    settings,
    request,
    notify,
    async start(
      folders: readonly string[],
      capabilities: object = FULL,
    ): Promise<InitializeResult> {
      const result = await request<InitializeResult>("initialize", {
        processId: null,
        rootUri: null,
        capabilities,
        workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
      });
      await notify("initialized", {});
      return result;
    },
    /** Waits until something that the server told is so. */
    until(what: string, isSo: () => boolean): Promise<void> {
      return new Promise((resolve, reject) => {
        const look = (): void => {
          if (!isSo()) return;
          waiting.delete(look);
          clearTimeout(timer);
          resolve();
        };
        const timer = setTimeout(() => {
          waiting.delete(look);
          reject(new Error(`waited in vain for ${what}`));
        }, 20_000);
        waiting.add(look);
        look();
      });
    },
    open(uri: string, text: string): Promise<void> {
      versions.set(uri, 1);
      return notify("textDocument/didOpen", {
        textDocument: { uri, languageId: "thou", version: 1, text },
      });
    },
    close(uri: string): Promise<void> {
      return notify("textDocument/didClose", { textDocument: { uri } });
    },
    change(
      uri: string,
      ...contentChanges: readonly { range?: Range; text: string }[]
    ): Promise<void> {
      const version = (versions.get(uri) ?? 0) + 1;
      versions.set(uri, version);
      return notify("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges,
      });
    },
    pull(
      uri: string,
      previousResultId?: string,
    ): Promise<DocumentDiagnosticReport> {
      return request("textDocument/diagnostic", {
        textDocument: { uri },
        ...(previousResultId === undefined ? {} : { previousResultId }),
      });
    },
    async findings(uri: string): Promise<readonly Diagnostic[]> {
      const report = await this.pull(uri);
      if (report.kind !== "full") throw new Error("the report is unchanged");
      return report.items;
    },
    async codes(uri: string): Promise<readonly string[]> {
      return (await this.findings(uri)).map(({ code }) => String(code));
    },
    hints(uri: string, first = 0, last = 10_000): Promise<InlayHint[]> {
      return request("textDocument/inlayHint", {
        textDocument: { uri },
        range: {
          start: { line: first, character: 0 },
          end: { line: last, character: 0 },
        },
      });
    },
    actions(
      uri: string,
      range: Range,
      only?: readonly string[],
      diagnostics: readonly Diagnostic[] = [],
    ): Promise<CodeAction[]> {
      return request("textDocument/codeAction", {
        textDocument: { uri },
        range,
        context: { diagnostics, ...(only === undefined ? {} : { only }) },
      });
    },
    format(uri: string): Promise<TextEdit[]> {
      return request("textDocument/formatting", {
        textDocument: { uri },
        options: { tabSize: 2, insertSpaces: true },
      });
    },
    async end(): Promise<void> {
      await request("shutdown", null);
      await notify("exit", null);
      connection.dispose();
    },
  };
}

export function labelOf({ label }: InlayHint): string {
  return typeof label === "string"
    ? label
    : label.map(({ value }) => value).join("");
}

/** The range of a piece of text where it first stands, at or after another piece. */
export function rangeOf(text: string, piece: string, after = ""): Range {
  const at = text.indexOf(piece, after === "" ? 0 : text.indexOf(after));
  if (at === -1) throw new Error(`no ${piece} in the text`);
  const place = (offset: number) => {
    const before = text.slice(0, offset).split("\n");
    return {
      line: before.length - 1,
      character: before.at(-1)?.length ?? 0,
    };
  };
  return { start: place(at), end: place(at + piece.length) };
}

interface VersionedEdits {
  readonly textDocument: {
    readonly uri: string;
    readonly version: number | null;
  };
  readonly edits: readonly TextEdit[];
}

/** The edits of the one document that a workspace edit changes. */
export function editsOf(
  edit: WorkspaceEdit | undefined,
): VersionedEdits | undefined {
  const [change, other] = edit?.documentChanges ?? [];
  if (other !== undefined) throw new Error("more than one document");
  // the server makes, renames and deletes no files, and its edits are plain ones
  return change as VersionedEdits | undefined;
}

/** A text after edits that do not overlap. */
export function withEdits(text: string, edits: readonly TextEdit[]): string {
  const lines = text.split("\n");
  const offset = ({ line, character }: Range["start"]): number =>
    lines.slice(0, line).reduce((sum, each) => sum + each.length + 1, 0) +
    character;
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (now, { range, newText }) =>
        now.slice(0, offset(range.start)) +
        newText +
        now.slice(offset(range.end)),
      text,
    );
}
