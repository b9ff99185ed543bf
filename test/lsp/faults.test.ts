// What goes wrong in one answer stays in that answer: it fails, it is logged, and the server goes on.
import { expect, test } from "vitest";
import { ErrorCodes, LSPErrorCodes } from "vscode-languageserver";
import * as session from "../../server/lsp/session.ts";
import type { Host, Session } from "../../server/lsp/session.ts";
import { rangeOf } from "./editor.ts";
import { filesIn, serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;
const CRIB_URI = `${FOLDER}/crib.thou`;

/** A server whose session is changed before it is used. */
function serveWith(change: (made: Session) => Session) {
  return serveHere(new Map([[CRIB_URI, CRIB]]), {
    load: () =>
      Promise.resolve({
        createSession: (host: Host) => change(session.createSession(host)),
      }),
  });
}

test("an answer that throws fails, is logged with its name, and the next ones are given", async () => {
  const { editor } = serveWith((made) => ({
    ...made,
    hints: {
      ...made.hints,
      hints: () => {
        throw new Error("injected");
      },
    },
    features: {
      ...made.features,
      symbols: () => Promise.reject(new Error("injected later")),
    },
  }));
  await editor.start([FOLDER]);
  await editor.open(URI, JOB);
  await expect(editor.hints(URI)).rejects.toMatchObject({
    code: ErrorCodes.InternalError,
    message: "hints failed: injected",
  });
  await expect(
    editor.request("textDocument/documentSymbol", {
      textDocument: { uri: URI },
    }),
  ).rejects.toMatchObject({ message: "symbols failed: injected later" });
  await editor.until("the log", () => 2 <= editor.told.logged.length);
  expect(editor.told.logged[0]).toMatch(/^hints failed: Error: injected\n/);
  expect(await editor.codes(URI)).toEqual(["step-open"]);
});

test("a change that can't be taken is logged, and the next one is taken", async () => {
  let fails = true;
  const { editor } = serveWith((made) => ({
    ...made,
    changes: {
      ...made.changes,
      documentChanged(document) {
        if (fails && 1 < document.version) {
          fails = false;
          throw new Error("injected");
        }
        made.changes.documentChanged(document);
      },
    },
  }));
  await editor.start([FOLDER]);
  await editor.open(URI, JOB);
  await editor.codes(URI);
  const wrong = { range: rangeOf(JOB, "want"), text: "wnat" };
  await editor.change(URI, wrong);
  await editor.until("the log", () => 0 < editor.told.logged.length);
  expect(await editor.codes(URI)).not.toContain("word-unknown");
  await editor.change(URI, wrong);
  expect(await editor.codes(URI)).toContain("word-unknown");
});

test("a disk that fails fails the answer that needs it, and only that", async () => {
  const texts = new Map([[CRIB_URI, CRIB]]);
  const files = filesIn(texts);
  const { editor } = serveHere(texts, {
    files: {
      ...files,
      read: (uri) =>
        uri.endsWith("broken.thou")
          ? Promise.reject(new Error("the disk is on fire"))
          : files.read(uri),
    },
  });
  await editor.start([FOLDER]);
  await editor.open(`${FOLDER}/a.thou`, JOB.replace("crib", "broken"));
  await editor.open(URI, JOB);
  await expect(editor.pull(`${FOLDER}/a.thou`)).rejects.toMatchObject({
    message: "findings failed: the disk is on fire",
  });
  expect(await editor.codes(URI)).toEqual(["step-open"]);
});

test("what cannot be loaded is tried again", async () => {
  let tries = 0;
  const { editor } = serveHere(new Map([[CRIB_URI, CRIB]]), {
    load: () =>
      ++tries === 1
        ? Promise.reject(new Error("not yet"))
        : Promise.resolve(session),
  });
  await editor.start([FOLDER]);
  await editor.until("the log", () => 0 < editor.told.logged.length);
  await editor.open(URI, JOB);
  expect(await editor.codes(URI)).toEqual(["step-open"]);
});

test("a request that is called off is answered as such", async () => {
  let go = (): void => undefined;
  const gate = new Promise<void>((resolve) => {
    go = resolve;
  });
  const { editor } = serveWith((made) => ({
    ...made,
    features: {
      ...made.features,
      async symbols(params) {
        await gate;
        return made.features.symbols(params);
      },
    },
  }));
  await editor.start([FOLDER]);
  await editor.open(URI, JOB);
  const cancel = new (await import("vscode-jsonrpc")).CancellationTokenSource();
  const asked = editor.connection.sendRequest(
    "textDocument/documentSymbol",
    { textDocument: { uri: URI } },
    cancel.token,
  );
  const refused = expect(asked).rejects.toMatchObject({
    code: LSPErrorCodes.RequestCancelled,
  });
  await editor.codes(URI);
  cancel.cancel();
  await editor.codes(URI);
  go();
  await refused;
  expect(editor.told.logged).toEqual([]);
});

test("nonsense is refused without harm", async () => {
  const { editor } = serveHere();
  await editor.start([FOLDER]);
  await editor.open(URI, JOB);
  for (const [method, params] of [
    ["textDocument/hover", { textDocument: { uri: URI }, position: null }],
    ["textDocument/rename", { textDocument: { uri: 7 } }],
    ["textDocument/inlayHint", {}],
    ["inlayHint/resolve", { position: null, label: "x", data: { uri: 1 } }],
    ["textDocument/codeAction", { textDocument: { uri: "nowhere" } }],
    ["no/such/method", {}],
  ] as const)
    await editor.request(method, params).catch(() => undefined);
  await editor.notify("textDocument/didChange", {
    textDocument: { uri: URI, version: 2 },
    contentChanges: [{ range: null, text: "x" }],
  });
  await editor.change(URI, { text: JOB });
  expect(await editor.codes(URI)).toContain("file-missing");
});
