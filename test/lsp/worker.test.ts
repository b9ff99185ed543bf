// The server of a browser, its real bundles in a worker: the whole session gives the answers that the server on Node gives over its standard
// streams. The same in Chromium, where there is one, is of the tests in the real editor.
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bundle, spawnServer, type Bundle } from "./bundled-server.ts";
import { bundleForBrowser, READING, startWorker } from "./bundled-worker.ts";
import { FULL } from "./editor.ts";
import { playSession, type Answered } from "./whole-session.ts";

let onNode: Bundle;
let inBrowser: Awaited<ReturnType<typeof bundleForBrowser>>;
beforeAll(async () => {
  [onNode, inBrowser] = await Promise.all([bundle(), bundleForBrowser()]);
});
afterAll(async () => {
  await onNode.remove();
  await inBrowser.remove();
});

describe("a whole session", () => {
  let byStreams: readonly Answered[];
  test("over standard streams answers something to everything that has an answer", async () => {
    const { editor, ended } = spawnServer(onNode);
    byStreams = await playSession(editor, FULL);
    await editor.end();
    expect(await ended).toBe(0);
    const without = byStreams.filter(
      ({ answer }) =>
        answer === null || (Array.isArray(answer) && answer.length === 0),
    );
    expect(without.map(({ asked }) => asked)).toEqual([
      // the sample is laid out as it should be
      "textDocument/formatting as it is on the disk",
      "textDocument/formatting with a misspelt word",
      "textDocument/formatting put back",
      "thou/page of no finding",
    ]);
    const refused = byStreams.filter(
      ({ answer }) => "refused" in Object(answer),
    );
    expect(refused.map(({ asked }) => asked)).toEqual([
      "textDocument/rename to what is no name",
      "thou/noSuchRequest",
    ]);
  });

  test("in a worker gives the same answers, with files that the editor reads", async () => {
    const { editor, ended } = startWorker(inBrowser.folder);
    const inWorker = await playSession(editor, READING);
    expect(inWorker).toEqual(byStreams);
    expect(editor.told.logged).toEqual([]);
    await editor.end();
    expect(await ended).toBe(0);
  });
});

describe("the bundles of a browser", () => {
  test.each(["server.browser.js", "session.js"])(
    "%s imports nothing when it starts and makes no code from text",
    async (file) => {
      const text = await readFile(join(inBrowser.folder, file), "utf8");
      expect(text.length).toBeGreaterThan(100_000);
      expect(inBrowser.imports[file]).toEqual([]);
      expect(text.match(/\bnew Function\(|[^.\w]Function\(/gu)).toBeNull();
    },
  );
});
