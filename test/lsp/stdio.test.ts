// Whole sessions with the server as it ships: one bundle, its standard streams, the disk.
import { execFileSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { DocumentSymbol } from "vscode-languageserver";
import { bundle, spawnServer, type Bundle } from "./bundled-server.ts";
import { editsOf, labelOf, rangeOf, withEdits, type Editor } from "./editor.ts";
import { CRIB, JOB } from "./winch.ts";

let server: Bundle;
let folder: string;
beforeAll(async () => {
  server = await bundle();
  folder = await mkdtemp(join(tmpdir(), "thou-shop "));
  await writeFile(join(folder, "crib.thou"), CRIB);
  await writeFile(join(folder, "winch.thou"), JOB);
});
afterAll(async () => {
  await server.remove();
  await rm(folder, { recursive: true });
});

const uriOf = (file: string): string => pathToFileURL(join(folder, file)).href;

async function withServer(
  run: (editor: Editor) => Promise<void>,
): Promise<void> {
  const { editor, ended } = spawnServer(server);
  await editor.start([pathToFileURL(folder).href]);
  await run(editor);
  await editor.end();
  expect(await ended).toBe(0);
}

/** The line of the hint that begins with a fit's clearance. */
async function clearance(editor: Editor, uri: string): Promise<string> {
  const { line } = rangeOf(JOB, "fit front").start;
  const found = await editor.hints(uri, line, line);
  return found.map(labelOf).join(" | ");
}

test("a record is opened, asked, edited and asked again: the answers are those of the edit", () =>
  withServer(async (editor) => {
    const uri = uriOf("winch.thou");
    await editor.open(uri, JOB);
    expect(await editor.codes(uri)).toEqual(["step-open"]);
    expect(await clearance(editor, uri)).toBe(
      "0.00128 to 0.00142 in, predicted, in tolerance",
    );
    // the journal is read half a thou smaller: 0.0005 in more clearance, and more than is wanted
    const text = "0.87382 0.87378 0.87380";
    const range = rangeOf(JOB, "0.87432 0.87428 0.87430");
    await editor.change(uri, { range, text });
    expect(await editor.codes(uri)).toContain("fit-loose");
    expect(await clearance(editor, uri)).toBe(
      "0.00178 to 0.00192 in, predicted, out",
    );
  }));

test.each([
  { asked: true, code: 0 },
  { asked: false, code: 1 },
])(
  "the server ends with its streams, with $code where it was asked to: $asked",
  async ({ asked, code }) => {
    const { editor, child, ended } = spawnServer(server);
    await editor.start([pathToFileURL(folder).href]);
    if (asked) await editor.request("shutdown", undefined);
    child.stdin.end();
    expect(await ended).toBe(code);
  },
);

test("a report that has not changed is not sent again, and one that has is", () =>
  withServer(async (editor) => {
    const uri = uriOf("winch.thou");
    await editor.open(uri, JOB);
    const first = await editor.pull(uri);
    expect(first.kind).toBe("full");
    expect(await editor.pull(uri, first.resultId)).toEqual({
      kind: "unchanged",
      resultId: first.resultId,
    });
    await editor.change(uri, {
      range: rangeOf(JOB, "want", "fit front"),
      text: "wnat",
    });
    const second = await editor.pull(uri, first.resultId);
    expect(second.kind).toBe("full");
    expect(second.resultId).not.toBe(first.resultId);
  }));

test("a crib that changes on the disk is read again, and the job that uses it is to be asked again", () =>
  withServer(async (editor) => {
    const uri = uriOf("winch.thou");
    await editor.open(uri, JOB);
    await editor.until("watching", () =>
      editor.told.registered.includes("workspace/didChangeWatchedFiles"),
    );
    expect(await clearance(editor, uri)).toContain("0.00128 to 0.00142 in");
    const crib = join(folder, "crib.thou");
    await writeFile(crib, CRIB.replace("size 0.8755", "size 0.8756"));
    await editor.notify("workspace/didChangeWatchedFiles", {
      changes: [{ uri: uriOf("crib.thou"), type: 2 }],
    });
    await editor.until("asking for hints", () =>
      editor.told.refreshed.includes("inlayHint"),
    );
    expect(editor.told.refreshed).toContain("diagnostic");
    expect(await clearance(editor, uri)).toContain("0.00138 to 0.00152 in");
    await writeFile(crib, CRIB);
  }));

test("an open crib beats the one on the disk, saved or not", () =>
  withServer(async (editor) => {
    const uri = uriOf("winch.thou");
    await editor.open(uri, JOB);
    await editor.open(uriOf("crib.thou"), CRIB);
    await editor.codes(uri);
    await editor.change(uriOf("crib.thou"), {
      range: rangeOf(CRIB, "size 0.8755"),
      text: "size 0.8756",
    });
    await editor.until("asking", () =>
      editor.told.refreshed.includes("diagnostic"),
    );
    expect(await clearance(editor, uri)).toContain("0.00138 to 0.00152 in");
    await editor.close(uriOf("crib.thou"));
    expect(await clearance(editor, uri)).toContain("0.00128 to 0.00142 in");
  }));

test.skipIf(process.platform === "win32")(
  "a crib that is a pipe is none: the server waits for nobody who may write to it",
  () =>
    withServer(async (editor) => {
      execFileSync("mkfifo", [join(folder, "pipe.thou")]);
      const uri = uriOf("piped.thou");
      await editor.open(uri, 'job a\n  units mm\n  use "pipe.thou"\n');
      expect(await editor.codes(uri)).toEqual(["file-missing"]);
      await rm(join(folder, "pipe.thou"));
    }),
);

test("records that are not open are reported on too, those that are gone are cleared", () =>
  withServer(async (editor) => {
    const broken = uriOf("broken.thou");
    await writeFile(join(folder, "broken.thou"), "job broken\n  units inhc\n");
    interface Items {
      readonly items: readonly {
        readonly uri: string;
        readonly kind: string;
        readonly resultId?: string;
        readonly items?: readonly { readonly code: string }[];
      }[];
    }
    const all = (previousResultIds: readonly object[]): Promise<Items> =>
      editor.request("workspace/diagnostic", { previousResultIds });
    const first = (await all([])).items;
    const of = first.find(({ uri }) => uri === broken);
    expect(of?.items?.map(({ code }) => code)).toEqual(["line-damaged"]);
    expect(first.map(({ uri }) => uri)).toContain(uriOf("winch.thou"));
    const ids = first.map(({ uri, resultId }) => ({ uri, value: resultId }));
    const again = (await all(ids)).items;
    expect(new Set(again.map(({ kind }) => kind))).toEqual(
      new Set(["unchanged"]),
    );
    await rm(join(folder, "broken.thou"));
    await editor.notify("workspace/didChangeWatchedFiles", {
      changes: [{ uri: broken, type: 3 }],
    });
    const gone = (await all(ids)).items.find(({ uri }) => uri === broken);
    expect(gone).toMatchObject({ kind: "full", items: [] });
  }));

test("a misspelt word is mended by its fix, which is about the editor's own copy of the finding", () =>
  withServer(async (editor) => {
    const uri = uriOf("winch.thou");
    const text = JOB.replace("  want", "  wnat");
    await editor.open(uri, text);
    const finding = (await editor.findings(uri)).find(
      ({ code }) => code === "word-unknown",
    );
    expect(finding).toMatchObject({
      source: "thou",
      severity: 1,
      range: rangeOf(text, "wnat"),
      codeDescription: { href: "thou-page:/word-unknown.md" },
    });
    const [fix] = await editor.actions(
      uri,
      rangeOf(text, "wnat"),
      ["quickfix"],
      finding === undefined ? [] : [finding],
    );
    expect(fix?.diagnostics).toEqual([finding]);
    expect(fix?.kind).toBe("quickfix");
    const edit = editsOf(fix?.edit);
    expect(edit?.textDocument).toEqual({ uri, version: 1 });
    expect(withEdits(text, edit?.edits ?? [])).toBe(JOB);
  }));

test("outline, layout and names", () =>
  withServer(async (editor) => {
    const uri = uriOf("winch.thou");
    const spread = JOB.replace("  want 0.0008", "   want   0.0008");
    await editor.open(uri, spread);
    const symbols = await editor.request<DocumentSymbol[]>(
      "textDocument/documentSymbol",
      { textDocument: { uri } },
    );
    expect(symbols.find(({ name }) => name === "fit front")?.detail).toBe(
      "0.00128 to 0.00142 in, predicted, in tolerance",
    );
    expect(withEdits(spread, await editor.format(uri))).toBe(JOB);
    // the crib's reamer is named in the job and in the crib
    const places = await editor.request<{ uri: string }[]>(
      "textDocument/references",
      {
        textDocument: { uri },
        position: rangeOf(spread, "r-8755").start,
        context: { includeDeclaration: true },
      },
    );
    expect(places.map((place) => place.uri).sort()).toEqual([
      uriOf("crib.thou"),
      uri,
    ]);
  }));

test("a page is given by its code, and null for a code that has none", () =>
  withServer(async (editor) => {
    const page = await editor.request<{ markdown: string } | null>(
      "thou/page",
      {
        code: "word-unknown",
      },
    );
    expect(page?.markdown).toMatch(/^# word-unknown\n/);
    for (const code of ["no-such-code", "constructor", 7])
      expect(await editor.request("thou/page", { code })).toBeNull();
  }));
