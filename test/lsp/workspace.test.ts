// Which files a record rests on, wherever it lies: folders of the workspace, lone files, files that were never saved; and who is told of a
// change.
import { expect, test } from "vitest";
import type { WorkspaceDiagnosticReport } from "vscode-languageserver";
import { recordsCome } from "../../server/lsp/changed-folders.ts";
import type { FileAccess } from "../../server/lsp/files.ts";
import { FULL, labelOf, rangeOf, type Editor } from "./editor.ts";
import { serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const OTHER_CRIB = CRIB.replace("size 0.8755", "size 0.8756");
/** Long enough for what is put off to be asked. */
const A_WHILE = 1000;
const WHOLE = {
  start: { line: 0, character: 0 },
  end: { line: 10_000, character: 0 },
};

async function shop(
  files: Readonly<Record<string, string>>,
  folders: readonly string[],
  capabilities: object = FULL,
) {
  const here = serveHere(new Map(Object.entries(files)));
  await here.editor.start(folders, capabilities);
  await here.editor.until(
    "asking for settings",
    () => 0 < here.editor.told.asked,
  );
  return here;
}

async function clearance(editor: Editor, uri: string): Promise<string> {
  const { line } = rangeOf(JOB, "fit front").start;
  const hints = await editor.hints(uri, line, line);
  return hints.map(labelOf).join();
}
const BY_CRIB = "0.00128 to 0.00142 in, predicted, in tolerance";
const BY_OTHER = "0.00138 to 0.00152 in, predicted, in tolerance";

test("each folder has its own crib", async () => {
  const { editor } = await shop(
    { "file:///a/crib.thou": CRIB, "file:///b/crib.thou": OTHER_CRIB },
    ["file:///a", "file:///b/"],
  );
  await editor.open("file:///a/w.thou", JOB);
  await editor.open("file:///b/w.thou", JOB);
  expect(await clearance(editor, "file:///a/w.thou")).toBe(BY_CRIB);
  expect(await clearance(editor, "file:///b/w.thou")).toBe(BY_OTHER);
});

test("a job below its folder reaches the crib above it, but nothing outside the folder", async () => {
  const { editor } = await shop(
    { "file:///a/crib.thou": CRIB, "file:///crib.thou": CRIB },
    ["file:///a"],
  );
  const up = JOB.replace('"crib.thou"', '"../crib.thou"');
  await editor.open("file:///a/jobs/w.thou", up);
  await editor.open("file:///a/w.thou", up);
  expect(await editor.codes("file:///a/jobs/w.thou")).toEqual(["step-open"]);
  expect(await editor.codes("file:///a/w.thou")).toContain("file-missing");
});

test("a job uses no crib of another folder of the workspace: the record has to hold for whoever has its folder alone", async () => {
  const { editor } = await shop({ "file:///b/crib.thou": CRIB }, [
    "file:///a",
    "file:///b",
  ]);
  await editor.open(
    "file:///a/w.thou",
    JOB.replace('"crib.thou"', '"../b/crib.thou"'),
  );
  const [missing, ...others] = (
    await editor.findings("file:///a/w.thou")
  ).filter(({ code }) => code === "file-missing");
  expect(others).toEqual([]);
  expect(missing?.message).toMatch(/folder/);
});

test("of two folders one within the other the inner one holds the file", async () => {
  const { editor } = await shop({ "file:///a/crib.thou": CRIB }, [
    "file:///a",
    "file:///a/jobs",
  ]);
  const uri = "file:///a/jobs/w.thou";
  await editor.open(uri, JOB.replace('"crib.thou"', '"../crib.thou"'));
  expect(await editor.codes(uri)).toContain("file-missing");
});

test("a lone file finds what lies beside it", async () => {
  const { editor } = await shop({ "file:///x/y/crib.thou": CRIB }, []);
  await editor.open("file:///x/y/w.thou", JOB);
  expect(await clearance(editor, "file:///x/y/w.thou")).toBe(BY_CRIB);
});

test("a record that was never saved finds the crib of the folder, and is checked without one", async () => {
  const { editor } = await shop({ "file:///a/crib.thou": CRIB }, ["file:///a"]);
  await editor.open("untitled:Untitled-1", JOB);
  expect(await clearance(editor, "untitled:Untitled-1")).toBe(BY_CRIB);
  const alone = await shop({}, []);
  await alone.editor.open("untitled:Untitled-1", "job new\n  units inhc\n");
  expect(await alone.editor.codes("untitled:Untitled-1")).toEqual([
    "line-damaged",
  ]);
});

test("an address may be written in several ways", async () => {
  const { editor } = await shop(
    { "file:///c%3A/my%20shop/crib%20(old).thou": CRIB },
    ["file:///C:/my%20shop"],
  );
  const uri = "file:///c%3A/my%20shop/w.thou";
  await editor.open(uri, JOB.replace("crib.thou", "crib (old).thou"));
  expect(await clearance(editor, uri)).toBe(BY_CRIB);
  const crib = "file:///c%3a/my%20shop/crib%20%28old%29.thou";
  await editor.open(crib, OTHER_CRIB);
  expect(await clearance(editor, uri)).toBe(BY_OTHER);
});

test("folders that come and go are followed", async () => {
  const { editor } = await shop(
    { "file:///crib.thou": CRIB, "file:///a/crib.thou": CRIB },
    ["file:///a"],
  );
  const uri = "file:///a/w.thou";
  await editor.open(uri, JOB.replace('"crib.thou"', '"../crib.thou"'));
  expect(await editor.codes(uri)).toContain("file-missing");
  await editor.notify("workspace/didChangeWorkspaceFolders", {
    event: {
      added: [{ uri: "file:///", name: "all" }],
      removed: [{ uri: "file:///a", name: "a" }],
    },
  });
  expect(await editor.codes(uri)).toEqual(["step-open"]);
});

test("a crib that is written after the job that uses it is found as soon as it is told of", async () => {
  const { editor, texts, clock } = await shop({}, ["file:///a"]);
  const uri = "file:///a/w.thou";
  await editor.open(uri, JOB);
  expect(await editor.codes(uri)).toContain("file-missing");
  texts.set("file:///a/crib.thou", CRIB);
  await editor.notify("workspace/didChangeWatchedFiles", {
    changes: [{ uri: "file:///a/crib.thou", type: 1 }],
  });
  expect(await editor.codes(uri)).toEqual(["step-open"]);
  clock.pass(A_WHILE);
  await editor.until("asking", () => 2 <= editor.told.refreshed.length);
  expect([...editor.told.refreshed].sort()).toEqual([
    "diagnostic",
    "inlayHint",
  ]);
});

test("records that come and go with their folder are found and lost, though only the folder is told of", async () => {
  const { editor, texts, clock } = await shop({ "file:///a/one.thou": JOB }, [
    "file:///a",
  ]);
  const names = async (): Promise<readonly string[]> =>
    (
      await editor.request<{ location: { uri: string } }[]>(
        "workspace/symbol",
        { query: "winch" },
      )
    ).map(({ location }) => location.uri);
  const uri = "file:///a/w.thou";
  await editor.open(uri, JOB.replace('"crib.thou"', '"shelf/crib.thou"'));
  expect(await editor.codes(uri)).toContain("file-missing");
  const before = await names();
  expect(before).not.toContain("file:///a/shelf/inner/two.thou");

  texts.set("file:///a/shelf/crib.thou", CRIB);
  texts.set("file:///a/shelf/inner/two.thou", JOB);
  await editor.notify("workspace/didChangeWatchedFiles", {
    changes: [{ uri: "file:///a/shelf", type: 1 }],
  });
  await expect.poll(() => editor.codes(uri)).toEqual(["step-open"]);
  expect(await names()).toContain("file:///a/shelf/inner/two.thou");
  clock.pass(A_WHILE);
  await editor.until("asking", () => 0 < editor.told.refreshed.length);

  texts.delete("file:///a/shelf/crib.thou");
  texts.delete("file:///a/shelf/inner/two.thou");
  await editor.notify("workspace/didChangeWatchedFiles", {
    changes: [{ uri: "file:///a/shelf", type: 3 }],
  });
  expect(await editor.codes(uri)).toContain("file-missing");
  expect(await names()).toEqual(before);
});

test("nobody looks into a hidden folder or one of packages that comes", async () => {
  const looked: string[] = [];
  const files: FileAccess = {
    read: () => Promise.resolve(undefined),
    async *records(folder) {
      await Promise.resolve();
      looked.push(folder);
      yield `${folder}/x.thou`;
    },
  };
  const came = (path: string) => ({ uri: `file:///a/.b/${path}`, type: 1 });
  const found = await recordsCome(
    [".git/refs", "node_modules", "jobs/.old", "jobs/2026.11"].map(came),
    ["file:///a/.b"],
    files,
  );
  expect(looked).toEqual(["file:///a/.b/jobs/2026.11"]);
  expect(found).toEqual(["file:///a/.b/jobs/2026.11/x.thou"]);
});

test("a crib's crib counts as well", async () => {
  const { editor, texts, clock } = await shop(
    {
      "file:///a/crib.thou": 'shop inner\n  units inch\n  use "far.thou"\n',
      "file:///a/far.thou": CRIB,
    },
    ["file:///a"],
  );
  const uri = "file:///a/w.thou";
  await editor.open(uri, JOB);
  expect(await clearance(editor, uri)).toBe(BY_CRIB);
  texts.set("file:///a/far.thou", OTHER_CRIB);
  await editor.notify("workspace/didChangeWatchedFiles", {
    changes: [{ uri: "file:///a/far.thou", type: 2 }],
  });
  expect(await clearance(editor, uri)).toBe(BY_OTHER);
  clock.pass(A_WHILE);
  await editor.until("asking", () => 0 < editor.told.refreshed.length);
});

test("a change that no other open record rests on asks for nothing", async () => {
  const { editor, clock } = await shop({ "file:///a/crib.thou": CRIB }, [
    "file:///a",
  ]);
  await editor.open("file:///a/one.thou", JOB);
  await editor.open("file:///a/two.thou", JOB);
  await editor.codes("file:///a/one.thou");
  await editor.codes("file:///a/two.thou");
  await editor.change("file:///a/one.thou", {
    range: rangeOf(JOB, "0.0016"),
    text: "0.0017",
  });
  await editor.notify("workspace/didChangeWatchedFiles", {
    changes: [{ uri: "file:///a/elsewhere.thou", type: 1 }],
  });
  clock.pass(A_WHILE);
  await editor.codes("file:///a/one.thou");
  expect(editor.told.refreshed).toEqual([]);
});

test("many changes of a crib are one question", async () => {
  const { editor, clock } = await shop({}, ["file:///a"]);
  const crib = "file:///a/crib.thou";
  await editor.open(crib, CRIB);
  await editor.open("file:///a/w.thou", JOB);
  await editor.codes("file:///a/w.thou");
  for (const size of ["0.8756", "0.8757", "0.8758"]) {
    const { start } = rangeOf(CRIB, "0.8755");
    const end = { ...start, character: start.character + 6 };
    await editor.change(crib, { range: { start, end }, text: size });
    await editor.codes(crib);
    clock.pass(50);
  }
  clock.pass(A_WHILE);
  await editor.until("asking", () => 2 <= editor.told.refreshed.length);
  await editor.codes(crib);
  expect([...editor.told.refreshed].sort()).toEqual([
    "diagnostic",
    "inlayHint",
  ]);
});

test("without the setting there are no hints, and with it again there are", async () => {
  const { editor, clock } = await shop({ "file:///a/crib.thou": CRIB }, [
    "file:///a",
  ]);
  const uri = "file:///a/w.thou";
  await editor.open(uri, JOB);
  expect(await editor.hints(uri)).not.toEqual([]);
  for (const enabled of [false, true]) {
    const before = editor.told.refreshed.length;
    editor.settings.thou = { hints: { enabled } };
    await editor.notify("workspace/didChangeConfiguration", { settings: null });
    await editor.until(
      "asking for settings",
      () => (enabled ? 2 : 1) < editor.told.asked,
    );
    await editor.codes(uri);
    expect(0 < (await editor.hints(uri)).length).toBe(enabled);
    clock.pass(A_WHILE);
    await editor.until("asking", () => before < editor.told.refreshed.length);
  }
});

test("levels that the user sets hold for open and for closed records; what can't be taken is told in the log, once", async () => {
  const misspelt = JOB.replace("  want", "  wnat");
  const { editor, clock } = await shop(
    { "file:///a/crib.thou": CRIB, "file:///a/closed.thou": misspelt },
    ["file:///a"],
  );
  const uri = "file:///a/w.thou";
  await editor.open(uri, misspelt);
  const closed = async (): Promise<readonly unknown[]> => {
    const { items } = await editor.request<WorkspaceDiagnosticReport>(
      "workspace/diagnostic",
      { previousResultIds: [] },
    );
    const report = items.find((each) => each.uri.endsWith("closed.thou"));
    return report?.kind === "full"
      ? report.items.map(({ code, severity }) => [code, severity])
      : [];
  };
  const open = async (): Promise<readonly unknown[]> =>
    (await editor.findings(uri)).map(({ code, severity }) => [code, severity]);
  const set = async (levels: unknown): Promise<void> => {
    const { asked } = editor.told;
    editor.settings.thou = { findings: { levels } };
    await editor.notify("workspace/didChangeConfiguration", { settings: null });
    await editor.until("asking for settings", () => asked < editor.told.asked);
    clock.pass(A_WHILE);
  };
  const word = (severity: number) => ["word-unknown", severity];
  expect(await open()).toContainEqual(word(1));
  expect(await closed()).toContainEqual(word(1));
  expect((await editor.actions(uri, WHOLE)).length).toBeGreaterThan(0);
  await set({ "word-unknown": "hint", "wrod-unknown": "off" });
  expect(await open()).toContainEqual(word(4));
  expect(await closed()).toContainEqual(word(4));
  await set({ "word-unknown": "off", "wrod-unknown": "off" });
  expect(await open()).not.toContainEqual(["word-unknown", expect.anything()]);
  expect(await closed()).not.toContainEqual([
    "word-unknown",
    expect.anything(),
  ]);
  expect(
    (await editor.actions(uri, WHOLE)).filter(({ diagnostics }) =>
      diagnostics?.some(({ code }) => code === "word-unknown"),
    ),
  ).toEqual([]);
  expect(
    editor.told.logged.filter((line) => line.includes("wrod-unknown")),
  ).toEqual([
    'thou.findings.levels: there is no finding "wrod-unknown" (did you mean word-unknown?).',
  ]);
});

test("an editor that can't ask is sent findings with their version, of users as well, and no others", async () => {
  const { diagnostic, ...textDocument } = FULL.textDocument;
  expect(diagnostic).toBeDefined();
  const texts = new Map<string, string>();
  const { editor, clock } = serveHere(texts);
  const { capabilities } = await editor.start(["file:///a"], {
    ...FULL,
    textDocument,
  });
  expect(capabilities.diagnosticProvider).toBeUndefined();
  const [crib, job] = ["file:///a/crib.thou", "file:///a/w.thou"] as const;
  const last = (uri: string) =>
    editor.told.published.filter((each) => each.uri === uri).at(-1);
  await editor.open(crib, CRIB);
  await editor.open(job, JOB);
  await editor.hints(job);
  clock.pass(0);
  await editor.until("both", () => editor.told.published.length === 2);
  expect(last(job)).toMatchObject({ version: 1 });
  expect(last(job)?.diagnostics.map(({ code }) => code)).toEqual(["step-open"]);
  const range = rangeOf(CRIB, "reamer r-8755");
  await editor.change(crib, { range, text: "reamer r-9000" });
  await editor.hints(job);
  clock.pass(A_WHILE);
  await editor.until("the job's", () => editor.told.published.length === 4);
  expect(last(job)?.diagnostics.map(({ code }) => code)).toContain(
    "name-unknown",
  );
  await editor.close(job);
  await editor.until("none", () => editor.told.published.length === 5);
  expect(last(job)).toEqual({ uri: job, diagnostics: [] });
  expect(editor.told.refreshed).not.toContain("diagnostic");
});

test("an editor that asks is sent nothing, and one that knows no pages and no other halves gets none", async () => {
  const { editor, clock } = await shop(
    { "file:///a/crib.thou": CRIB },
    ["file:///a"],
    {
      workspace: { configuration: true },
      textDocument: { diagnostic: {} },
    },
  );
  const uri = "file:///a/w.thou";
  await editor.open(uri, JOB.replace("0.87432 0.87428", "0.87532 0.87528"));
  const findings = await editor.findings(uri);
  expect(findings.length).toBeGreaterThan(1);
  for (const finding of findings)
    expect(Object.keys(finding).sort()).toEqual([
      "code",
      "message",
      "range",
      "severity",
      "source",
    ]);
  clock.pass(A_WHILE);
  await editor.codes(uri);
  expect(editor.told.published).toEqual([]);
});

test("a name of the crib is changed in every record that uses the crib, open or not", async () => {
  const [crib, job, closed, alien] = ["crib", "w", "closed", "alien"].map(
    (name) => `file:///a/${name}.thou`,
  ) as [string, string, string, string];
  const texts = {
    [crib]: CRIB,
    [closed]: JOB,
    [alien]: JOB.replace('use "crib.thou"', 'use "none.thou"'),
  };
  const { editor } = await shop(texts, ["file:///a"]);
  await editor.open(job, JOB);
  const edit = await editor.request<{
    documentChanges: {
      textDocument: { uri: string; version: number | null };
    }[];
  }>("textDocument/rename", {
    textDocument: { uri: job },
    position: rangeOf(JOB, "r-8755").start,
    newName: "r-best",
  });
  const changed = edit.documentChanges.map(({ textDocument }) => textDocument);
  expect(changed.sort((a, b) => (a.uri < b.uri ? -1 : 1))).toEqual([
    { uri: closed, version: null },
    { uri: crib, version: null },
    { uri: job, version: 1 },
  ]);
  await expect(
    editor.request("textDocument/rename", {
      textDocument: { uri: job },
      position: rangeOf(JOB, "r-8755").start,
      newName: "8th",
    }),
  ).rejects.toThrow(/name is letters, digits and hyphens/);
  expect(editor.told.logged).toEqual([]);
});

test("what the user set about whole folders is obeyed, and what was told is taken back", async () => {
  const bad = "file:///a/bad.thou";
  const { editor } = await shop({ [bad]: "job bad\n  units inhc\n" }, [
    "file:///a",
  ]);
  const all = (previousResultIds: readonly object[]) =>
    editor.request<{ items: { uri: string; items?: unknown[] }[] }>(
      "workspace/diagnostic",
      { previousResultIds },
    );
  expect((await all([])).items[0]?.items).toHaveLength(1);
  editor.settings.thou = { findings: { wholeWorkspace: false } };
  await editor.notify("workspace/didChangeConfiguration", { settings: null });
  await editor.until("asking for settings", () => 1 < editor.told.asked);
  expect(await all([{ uri: bad, value: "1" }])).toEqual({
    items: [{ kind: "full", uri: bad, version: null, items: [] }],
  });
});
