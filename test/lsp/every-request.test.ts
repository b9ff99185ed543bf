// Every handler that the server registers, made to throw: a request is answered by an error and logged, a notification is logged, and the
// next of each is served. The list is what the server itself registers, so that a handler which is added has to be added here.
import { PassThrough } from "node:stream";
import { beforeAll, describe, expect, test } from "vitest";
import { StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import { ErrorCodes, type Connection } from "vscode-languageserver";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { OWN_REQUESTS } from "../../server/protocol.ts";
import { serve } from "../../server/lsp/server.ts";
import { createSession, type Host } from "../../server/lsp/session.ts";
import { randomFrom } from "../fuzz/random.ts";
import { requestsFor } from "../fuzz/requests.ts";
import { createEditor, FULL } from "./editor.ts";
import { createClock, filesIn } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;

/** Each place where the server takes a request, and the method that comes in there. */
const REQUESTS: Readonly<Record<string, string>> = {
  "languages.diagnostics.on": "textDocument/diagnostic",
  "languages.diagnostics.onWorkspace": "workspace/diagnostic",
  "languages.inlayHint.on": "textDocument/inlayHint",
  "languages.inlayHint.resolve": "inlayHint/resolve",
  "languages.semanticTokens.on": "textDocument/semanticTokens/full",
  "languages.semanticTokens.onDelta": "textDocument/semanticTokens/full/delta",
  "languages.semanticTokens.onRange": "textDocument/semanticTokens/range",
  onCompletion: "textDocument/completion",
  onHover: "textDocument/hover",
  onDefinition: "textDocument/definition",
  onReferences: "textDocument/references",
  onDocumentHighlight: "textDocument/documentHighlight",
  onDocumentLinks: "textDocument/documentLink",
  onPrepareRename: "textDocument/prepareRename",
  onRenameRequest: "textDocument/rename",
  onDocumentSymbol: "textDocument/documentSymbol",
  onFoldingRanges: "textDocument/foldingRange",
  onDocumentFormatting: "textDocument/formatting",
  onDocumentRangeFormatting: "textDocument/rangeFormatting",
  onCodeAction: "textDocument/codeAction",
  onSignatureHelp: "textDocument/signatureHelp",
  onDocumentOnTypeFormatting: "textDocument/onTypeFormatting",
  onSelectionRanges: "textDocument/selectionRange",
  onWorkspaceSymbol: "workspace/symbol",
  onCodeLens: "textDocument/codeLens",
  onCodeLensResolve: "codeLens/resolve",
  ...Object.fromEntries(
    OWN_REQUESTS.map((name) => [`onRequest ${name}`, name]),
  ),
};

/** What the server is told, with what the session throws at it; those without anything never reach the session, or have no session yet. */
const NOTIFICATIONS: Readonly<
  Record<string, { readonly method: string; readonly params: object } | null>
> = {
  onInitialize: null,
  onInitialized: null,
  onDidOpenTextDocument: null, // a change of content, to the session
  onWillSaveTextDocument: null,
  onWillSaveTextDocumentWaitUntil: null, // answered by the library, with no edits
  onDidChangeTextDocument: {
    method: "textDocument/didChange",
    params: {
      textDocument: { uri: URI, version: 2 },
      contentChanges: [{ text: `${JOB}\n` }],
    },
  },
  onDidSaveTextDocument: {
    method: "textDocument/didSave",
    params: { textDocument: { uri: URI } },
  },
  onDidCloseTextDocument: {
    method: "textDocument/didClose",
    params: { textDocument: { uri: URI } },
  },
  onDidChangeConfiguration: {
    method: "workspace/didChangeConfiguration",
    params: { settings: null },
  },
  onDidChangeWatchedFiles: {
    method: "workspace/didChangeWatchedFiles",
    params: { changes: [{ uri: `${FOLDER}/crib.thou`, type: 2 }] },
  },
  "workspace.onDidChangeWorkspaceFolders": {
    method: "workspace/didChangeWorkspaceFolders",
    params: {
      event: { added: [{ uri: "file:///b", name: "b" }], removed: [] },
    },
  },
};

/** The same object, in which every call of a function that takes a handler is noted. */
function noting<T extends object>(
  target: T,
  note: (place: string) => void,
  path = "",
): T {
  return new Proxy(target, {
    get(_, key) {
      const value: unknown = Reflect.get(target, key);
      const place = path + String(key);
      if (typeof value === "function")
        return (...rest: readonly unknown[]) => {
          const [first] = rest;
          if (rest.some((each) => typeof each === "function"))
            note(typeof first === "string" ? `${place} ${first}` : place);
          return (value as (...rest: readonly unknown[]) => unknown).apply(
            target,
            [...rest],
          );
        };
      return typeof value === "object" && value !== null
        ? noting(value, note, `${place}.`)
        : value;
    },
  });
}

/** The same object, every function of which throws, however deep it lies, while `isBroken` says so. */
function breaking<T extends object>(target: T, isBroken: () => boolean): T {
  return new Proxy(target, {
    get(_, key) {
      const value: unknown = Reflect.get(target, key);
      if (typeof value === "function")
        return (...rest: readonly unknown[]) => {
          if (isBroken()) throw new Error("injected");
          return (value as (...rest: readonly unknown[]) => unknown).apply(
            target,
            [...rest],
          );
        };
      return typeof value === "object" && value !== null
        ? breaking(value, isBroken)
        : value;
    },
  });
}

/** A server that notes what it registers, and whose session throws when it is told to. */
function serveBroken() {
  const registered: string[] = [];
  let isBroken = false;
  const [toServer, fromServer] = [new PassThrough(), new PassThrough()];
  const connection: Connection = createConnection(
    ProposedFeatures.all,
    new StreamMessageReader(toServer),
    new StreamMessageWriter(fromServer),
  );
  serve(
    noting(connection, (place) => registered.push(place)),
    {
      files: filesIn(new Map([[`${FOLDER}/crib.thou`, CRIB]])),
      clock: createClock(),
      load: () =>
        Promise.resolve({
          createSession: (host: Host) =>
            breaking(createSession(host), () => isBroken),
        }),
      version: "0",
    },
  );
  return {
    editor: createEditor(fromServer, toServer),
    registered,
    breakIt(yes: boolean) {
      isBroken = yes;
    },
  };
}

const broken = serveBroken();
const { editor, registered } = broken;
beforeAll(async () => {
  await editor.start([FOLDER], {
    ...FULL,
    // pushed settings reach the session without a question in between
    workspace: { ...FULL.workspace, configuration: false },
  });
  await editor.open(URI, JOB);
  await editor.codes(URI);
});

const asked = [
  ...requestsFor(TextDocument.create(URI, "thou", 1, JOB), randomFrom(1)),
  {
    method: "inlayHint/resolve",
    params: { position: { line: 1, character: 0 }, label: "x" },
  },
  {
    method: "codeLens/resolve",
    params: {
      range: {
        start: { line: 1, character: 0 },
        end: { line: 1, character: 1 },
      },
    },
  },
];

test("every handler that is registered is one of those tried here", () => {
  expect(registered.toSorted()).toEqual(
    [...Object.keys(REQUESTS), ...Object.keys(NOTIFICATIONS)].toSorted(),
  );
});

describe("a request", () => {
  test.each(Object.values(REQUESTS))("%s", async (method) => {
    const params = asked.find((each) => each.method === method)?.params;
    expect(params).toBeDefined();
    const before = editor.told.logged.length;
    broken.breakIt(true);
    try {
      await expect(editor.request(method, params)).rejects.toMatchObject({
        code: ErrorCodes.InternalError,
        message: expect.stringMatching(/^.+ failed: injected$/u) as string,
      });
    } finally {
      broken.breakIt(false);
    }
    await editor.until("the log", () => before < editor.told.logged.length);
    expect(editor.told.logged.at(-1)).toMatch(/ failed: Error: injected\n/u);
    const next: unknown = await editor
      .request(method, params)
      .catch((error: unknown) => error);
    // what was asked at random may be refused, with a reason
    expect(next).not.toMatchObject({ code: ErrorCodes.InternalError });
    expect(editor.told.logged.length).toBe(before + 1);
  });
});

describe("a notification", () => {
  const told = Object.values(NOTIFICATIONS).flatMap((each) => each ?? []);
  test.each(told)("$method", async ({ method, params }) => {
    await editor.open(URI, JOB);
    await editor.codes(URI);
    const before = editor.told.logged.length;
    broken.breakIt(true);
    try {
      await editor.notify(
        method,
        // settings that are those which hold are not told of
        "settings" in params
          ? { settings: { thou: { lenses: { enabled: true } } } }
          : params,
      );
      await editor.until("the log", () => before < editor.told.logged.length);
    } finally {
      broken.breakIt(false);
    }
    expect(editor.told.logged[before]).toMatch(/ failed: Error: injected\n/u);
    await editor.open(URI, JOB.replace("want", "wnat"));
    expect(await editor.codes(URI)).toContain("word-unknown");
  });
});
