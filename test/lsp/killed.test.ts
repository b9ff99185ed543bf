// A whole session in which the server is killed at every point: with each question on its way, and after each change. The one started in its
// place answers as one that was never killed.
import { afterAll, beforeAll, expect, test } from "vitest";
import type { InitializeResult, InlayHint, Range } from "vscode-languageserver";
import { bundle, spawnServer, type Bundle } from "./bundled-server.ts";
import { FULL, withEdits, type Editor } from "./editor.ts";
import { playSession } from "./whole-session.ts";

let server: Bundle;
beforeAll(async () => {
  server = await bundle();
});
afterAll(() => server.remove());

/** An editor whose server is killed after each message and started again, as an editor does it: the same folders, what is open as it stands. */
function mortalEditor() {
  let current = spawnServer(server);
  let begun: readonly [readonly string[], object] | undefined;
  const open = new Map<string, { version: number; text: string }>();
  let killed = 0;

  const { editor } = current;
  async function again(): Promise<Editor> {
    current.child.kill("SIGKILL");
    await current.ended;
    current.editor.connection.dispose();
    killed++;
    current = spawnServer(server);
    if (begun !== undefined) await current.editor.start(...begun);
    for (const [uri, { version, text }] of open)
      await current.editor.notify("textDocument/didOpen", {
        textDocument: { uri, languageId: "thou", version, text },
      });
    return current.editor;
  }

  const mortal: Editor = {
    ...editor,
    start(folders, capabilities: object = FULL): Promise<InitializeResult> {
      begun = [folders, capabilities];
      return current.editor.start(folders, capabilities);
    },
    async open(uri, text) {
      open.set(uri, { version: 1, text });
      await current.editor.open(uri, text);
      await again();
    },
    async change(
      uri: string,
      ...changes: readonly { range?: Range; text: string }[]
    ) {
      const before = open.get(uri);
      if (before === undefined) throw new Error("it is not open");
      const version = before.version + 1;
      const text = changes.reduce(
        (now, { range, text: newText }) =>
          range === undefined ? newText : withEdits(now, [{ range, newText }]),
        before.text,
      );
      open.set(uri, { version, text });
      await current.editor.notify("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: changes,
      });
      await again();
    },
    async request<R>(method: string, params: unknown): Promise<R> {
      // whether it gets an answer is the kill's to say
      current.editor.request(method, params).catch(() => undefined);
      await new Promise(setImmediate); // it is on its way
      const next = await again();
      return next.request<R>(method, params);
    },
    hints: (uri, ...[first, last]): Promise<InlayHint[]> =>
      mortal.request("textDocument/inlayHint", {
        textDocument: { uri },
        range: {
          start: { line: first ?? 0, character: 0 },
          end: { line: last ?? 10_000, character: 0 },
        },
      }),
    end: () => current.editor.end(),
  };
  return { editor: mortal, killed: () => killed };
}

test(
  "the server that is started in the place of a killed one answers as if none had been",
  { timeout: 300_000 },
  async () => {
    const whole = spawnServer(server);
    const answers = await playSession(whole.editor, FULL);
    await whole.editor.end();
    expect(answers.length).toBeGreaterThan(50);

    const mortal = mortalEditor();
    expect(await playSession(mortal.editor, FULL)).toEqual(answers);
    // once for each question, and for the text each time that it was opened or changed
    expect(mortal.killed()).toBeGreaterThanOrEqual(answers.length);
    await mortal.editor.end();
  },
);
