// How an editor comes to know that findings may be others: by being asked to ask again, or by being sent them, once for many changes.
import { expect, test } from "vitest";
import type { PublishDiagnosticsParams } from "vscode-languageserver";
import { createNotices } from "../../server/lsp/notices.ts";
import { createClock } from "./in-process.ts";

/** Long enough for whatever waits until nothing more changes. */
const A_WHILE = 1000;

function notices(pulls: boolean, open = new Set(["a", "b"])) {
  const clock = createClock();
  const did: string[] = [];
  const log: string[] = [];
  const made = createNotices({
    client: { pulls },
    clock,
    log: (sentence) => log.push(sentence),
    refresh: (subject) => did.push(`refresh ${subject}`),
    publish: ({ uri, diagnostics }) =>
      did.push(`publish ${uri} ${String(diagnostics.length)}`),
    findingsOf: (uri) => {
      if (uri === "broken") throw new Error("injected");
      const finding = {
        range: {
          start: { line: 0, character: 0 },
          end: { line: 0, character: 1 },
        },
        message: "found",
      };
      const found: PublishDiagnosticsParams = { uri, diagnostics: [finding] };
      return Promise.resolve(open.has(uri) ? found : undefined);
    },
  });
  const passed = async (): Promise<readonly string[]> => {
    clock.pass(A_WHILE);
    await new Promise(setImmediate);
    return did.splice(0);
  };
  return { made, passed, log };
}

test("an editor that asks is asked to ask again, once for many changes, and is sent nothing", async () => {
  const { made, passed } = notices(true);
  made.edited("a"); // it asks by itself
  expect(await passed()).toEqual([]);
  made.mayDiffer(["a", "b"]);
  made.mayDiffer(["b"]);
  expect(await passed()).toEqual([
    "refresh findings",
    "refresh hints",
    "refresh lenses",
  ]);
  made.due("a");
  made.closed("a");
  expect(await passed()).toEqual(["refresh findings"]);
});

test("an editor that can't ask is sent each document's findings once for many changes, and asked for the rest", async () => {
  const { made, passed } = notices(false);
  made.edited("a");
  made.edited("a");
  made.due("a");
  expect(await passed()).toEqual(["publish a 1"]);
  made.edited("b");
  made.mayDiffer(["a", "b"]);
  expect(await passed()).toEqual([
    "refresh hints",
    "refresh lenses",
    "publish b 1",
    "publish a 1",
  ]);
  made.closed("a");
  expect(await passed()).toEqual(["publish a 0"]);
});

test("of a document that was closed meanwhile nothing is sent, and what fails is logged and tried at the next change", async () => {
  const { made, passed, log } = notices(false, new Set());
  made.edited("a");
  made.edited("broken");
  expect(await passed()).toEqual([]);
  expect(log).toEqual([
    expect.stringMatching(/^sending findings failed: Error: injected/),
  ]);
  made.edited("broken");
  await passed();
  expect(log.length).toBe(2);
});
