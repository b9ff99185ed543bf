// A record too long to be checked in one go: others are served meanwhile, a change is taken in, and the work can be called off.
import { expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc";
import {
  LSPErrorCodes,
  type DocumentDiagnosticReport,
} from "vscode-languageserver";
import type { Clock } from "../../server/lsp/clock.ts";
import { FULL } from "./editor.ts";
import { createClock, serveHere } from "./in-process.ts";

const URI = "file:///shop/long.thou";

/** A record of so many journals, each read within its limits. */
function longRecord(journals: number): string {
  const each = (name: number): string =>
    `journal j${name} on shaft\n  limits 0.8740 to 0.8745\n  read 0.87420 0.87421\n`;
  const all = Array.from({ length: journals }, (_, index) => each(index));
  return `job long\n  units inch\npart shaft\n${all.join("")}`;
}

/** A clock by which every look at it finds 20 ms gone, so that long work pauses as often as it can. */
function hurried(): Clock & { readonly pauses: () => number } {
  const set = createClock();
  let [looks, pauses] = [0, 0];
  return {
    today: () => set.today(),
    now: () => (looks += 20),
    pauses: () => pauses,
    after(milliseconds, call) {
      if (0 < milliseconds) return set.after(milliseconds, call);
      pauses++;
      const soon = setImmediate(call);
      return () => {
        clearImmediate(soon);
      };
    },
  };
}

/** In an editor that can't be asked to ask again, unless it can do all: it has everything in its first report. */
async function opened(text = longRecord(700), capabilities = ONE_REPORT) {
  const clock = hurried();
  const { editor } = serveHere(new Map(), { clock });
  await editor.start(["file:///shop"], capabilities);
  await editor.open(URI, text);
  return { editor, clock };
}

const ONE_REPORT: object = {
  ...FULL,
  workspace: { ...FULL.workspace, diagnostics: { refreshSupport: false } },
};

test("where the editor can be asked to ask again, the first report has what the lines say, and the second all", async () => {
  const text = longRecord(700)
    .replace("read 0.87420", "read 0.88420")
    .replace(/limits 0\.8740 to 0\.8745(?=\n.*\n$)/u, "limits 0.8740 to to");
  const { editor } = await opened(text, FULL);
  const first = await editor.codes(URI);
  expect(first).toContain("line-damaged");
  expect(first).not.toContain("reading-off-limits");
  await editor.until("the second report is ready", () =>
    editor.told.refreshed.includes("diagnostic"),
  );
  const second = await editor.codes(URI);
  expect(second).toContain("reading-off-limits");
  // nothing that was shown is taken back, and it is what one report would have had
  expect(second).toEqual(expect.arrayContaining([...first]));
  const { editor: other } = await opened(text);
  expect(second).toEqual(await other.codes(URI));
});

test("closed and opened again, it is first shown by its lines again", async () => {
  const text = longRecord(700).replace("read 0.87420", "read 0.88420");
  const { editor } = await opened(text, FULL);
  await editor.codes(URI);
  expect(await editor.codes(URI)).toContain("reading-off-limits");
  await editor.close(URI);
  await editor.open(URI, text);
  expect(await editor.codes(URI)).toEqual([]);
  expect(await editor.codes(URI)).toContain("reading-off-limits");
});

test("one that was asked for something else first still shows its lines first", async () => {
  const text = longRecord(700).replace("read 0.87420", "read 0.88420");
  const { editor } = await opened(text, FULL);
  await editor.request("textDocument/hover", {
    textDocument: { uri: URI },
    position: { line: 5, character: 3 },
  });
  expect(await editor.codes(URI)).toEqual([]);
  expect(await editor.codes(URI)).toContain("reading-off-limits");
});

test("asked again before it is ready, the report waits for all", async () => {
  const text = longRecord(700).replace("read 0.87420", "read 0.88420");
  const { editor } = await opened(text, FULL);
  expect(await editor.codes(URI)).toEqual([]);
  expect(await editor.codes(URI)).toContain("reading-off-limits");
});

test("others are answered while it is checked, and a change made meanwhile is in the report", async () => {
  const { editor, clock } = await opened();
  const order: string[] = [];
  const checked = editor.findings(URI).then((items) => {
    order.push("report");
    return items;
  });
  const folds = editor
    .request("textDocument/foldingRange", { textDocument: { uri: URI } })
    .then(() => order.push("folds"));
  await folds;
  // the last journal of all now reads too large
  const text = longRecord(700).replace(
    /0\.87420(?=[^.]*\.87421\n$)/,
    "0.88420",
  );
  await editor.change(URI, { text });
  const codes = (await checked).map(({ code }) => String(code));
  expect(codes).toContain("reading-off-limits");
  expect(order).toEqual(["folds", "report"]);
  expect(clock.pauses()).toBeGreaterThan(100);
});

test("it is called off between two pieces", async () => {
  const { editor } = await opened();
  const source = new CancellationTokenSource();
  const report = editor.connection.sendRequest<DocumentDiagnosticReport>(
    "textDocument/diagnostic",
    { textDocument: { uri: URI } },
    source.token,
  );
  const refused = expect(report).rejects.toMatchObject({
    code: LSPErrorCodes.RequestCancelled,
  });
  await editor.request("textDocument/foldingRange", {
    textDocument: { uri: URI },
  });
  source.cancel();
  await refused;
  expect(await editor.codes(URI)).not.toContain("line-damaged");
});

test("once it has been looked at, an edit needs no pause", async () => {
  const { editor, clock } = await opened();
  await editor.codes(URI);
  const before = clock.pauses();
  const start = { line: 5, character: 7 };
  await editor.change(URI, { range: { start, end: start }, text: "0" });
  await editor.codes(URI);
  expect(clock.pauses()).toBe(before);
});
