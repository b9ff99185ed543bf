// The questions at the caret, through the protocol: what may be written, what a word means, where it is defined. What the answers say is
// tested with the ide; here, that they come in the shape that the editor can take.
import { beforeAll, expect, test } from "vitest";
import type {
  CompletionList,
  DocumentHighlight,
  DocumentLink,
  Hover,
  InlayHint,
  Location,
  LocationLink,
  SemanticTokens,
} from "vscode-languageserver";
import { FULL, labelOf, rangeOf, withEdits, type Editor } from "./editor.ts";
import { serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;
const CRIB_URI = `${FOLDER}/crib.thou`;

async function shop(capabilities: object): Promise<Editor> {
  const { editor } = serveHere(new Map([[CRIB_URI, CRIB]]));
  await editor.start([FOLDER], capabilities);
  await editor.open(URI, JOB);
  return editor;
}

/** An editor that can do everything, and one that can do nothing. */
let full: Editor;
let bare: Editor;
beforeAll(async () => {
  const { textDocument } = FULL;
  full = await shop({
    ...FULL,
    textDocument: {
      ...textDocument,
      definition: { linkSupport: true },
      completion: { completionItem: { snippetSupport: true } },
    },
  });
  bare = await shop({});
});

const at = (piece: string, after = "") => ({
  textDocument: { uri: URI },
  position: rangeOf(JOB, piece, after).start,
});

test("a definition is a link to the entry, or its place for an editor without links", async () => {
  const target = rangeOf(CRIB, "r-8755");
  const [link] = await full.request<LocationLink[]>(
    "textDocument/definition",
    at("r-8755"),
  );
  expect(link).toMatchObject({
    originSelectionRange: rangeOf(JOB, "r-8755"),
    targetUri: CRIB_URI,
    targetSelectionRange: target,
  });
  expect(
    await bare.request<Location[]>("textDocument/definition", at("r-8755")),
  ).toEqual([{ uri: CRIB_URI, range: target }]);
});

test("highlights tell the opening line from the uses", async () => {
  const found = await full.request<DocumentHighlight[]>(
    "textDocument/documentHighlight",
    at("front in bush front"),
  );
  const lines = found.map(
    ({ range, kind }) => `${range.start.line} ${kind === 3 ? "write" : "read"}`,
  );
  expect(lines).toEqual(["23 write", "25 read", "29 read"]);
});

test("a crib is a link", async () => {
  const links = await full.request<DocumentLink[]>(
    "textDocument/documentLink",
    { textDocument: { uri: URI } },
  );
  expect(links.map(({ target }) => target)).toEqual([CRIB_URI]);
});

test("a name that may be changed is given with its range, one that may not with the reason", async () => {
  expect(
    await full.request("textDocument/prepareRename", at("r-8755")),
  ).toEqual({ range: rangeOf(JOB, "r-8755"), placeholder: "r-8755" });
  await expect(
    full.request("textDocument/prepareRename", at("steel-4140")),
  ).rejects.toThrow(/shipped with the tool/);
  expect(
    await full.request("textDocument/prepareRename", at("2026")),
  ).toBeNull();
});

test("a hover is Markdown with the range it is about", async () => {
  const hover = await full.request<Hover>(
    "textDocument/hover",
    at("front of journal"),
  );
  expect(hover.contents).toMatchObject({
    kind: "markdown",
    value: expect.stringMatching(/clearance/i) as string,
  });
  expect(hover.range?.start.line).toBe(25);
  expect(
    await full.request("textDocument/hover", at("\npart layshaft")),
  ).toBeNull();
});

test("completions replace the word at the caret, with tab stops where the editor has them", async () => {
  const position = { ...at("  want 0.0008").position, character: 3 };
  const ask = (editor: Editor) =>
    editor.request<CompletionList>("textDocument/completion", {
      textDocument: { uri: URI },
      position,
      context: { triggerKind: 1 },
    });
  const item = async (editor: Editor) =>
    (await ask(editor)).items.find(({ label }) => label === "load");
  const load = await item(full);
  expect(load).toMatchObject({
    insertTextFormat: 2,
    textEdit: { range: { start: { character: 2 }, end: { character: 6 } } },
  });
  const plain = await item(bare);
  expect(plain?.insertTextFormat).toBe(1);
  expect(JSON.stringify(plain?.textEdit)).not.toContain("$");
});

test("after a blank only names are offered unasked", async () => {
  const ask = async (piece: string, triggerKind: number) => {
    const { start } = rangeOf(JOB, piece);
    const list = await full.request<CompletionList>("textDocument/completion", {
      textDocument: { uri: URI },
      position: start,
      context: {
        triggerKind,
        ...(triggerKind === 2 ? { triggerCharacter: " " } : {}),
      },
    });
    return list.items.map(({ label }) => label);
  };
  expect(await ask("r-8755", 2)).toContain("r-8755");
  expect(await ask("inch\n", 2)).toEqual([]);
  expect(await ask("inch\n", 1)).toEqual(
    expect.arrayContaining(["inch", "mm"]),
  );
});

test("the tooltip of a hint is made when it is pointed at, and once only", async () => {
  const hints = await full.hints(URI);
  expect(hints.every(({ tooltip }) => tooltip === undefined)).toBe(true);
  const fit = hints.find((hint) => labelOf(hint).includes("0.00128"));
  const resolved = await full.request<InlayHint>("inlayHint/resolve", fit);
  expect(resolved).toMatchObject({
    ...fit,
    tooltip: {
      kind: "markdown",
      value: expect.stringMatching(/on diameter/) as string,
    },
  });
});

test("words and what they are, of the whole, of a range, and since the last answer", async () => {
  const textDocument = { uri: URI };
  const whole = await full.request<SemanticTokens>(
    "textDocument/semanticTokens/full",
    { textDocument },
  );
  const range = {
    start: { line: 0, character: 0 },
    end: { line: 3, character: 0 },
  };
  const some = await full.request<SemanticTokens>(
    "textDocument/semanticTokens/range",
    { textDocument, range },
  );
  expect(whole.data.slice(0, some.data.length)).toEqual(some.data);
  expect(
    await full.request("textDocument/semanticTokens/full/delta", {
      textDocument,
      previousResultId: whole.resultId,
    }),
  ).toMatchObject({ edits: [] });
});

test("lines are laid out alone when they are asked for alone", async () => {
  const editor = await shop(FULL);
  const text = JOB.replace("part case", "part  case").replace(
    "line layshaft",
    "line  layshaft",
  );
  await editor.change(URI, { text });
  const range = (line: number) => ({
    start: { line, character: 0 },
    end: { line: line + 1, character: 0 },
  });
  const edits = await editor.request<Parameters<typeof withEdits>[1]>(
    "textDocument/rangeFormatting",
    {
      textDocument: { uri: URI },
      range: range(rangeOf(text, "part  case").start.line),
      options: { tabSize: 2, insertSpaces: true },
    },
  );
  expect(withEdits(text, edits)).toBe(
    JOB.replace("line layshaft", "line  layshaft"),
  );
});

test("all safe fixes are one action, for whoever asks for any kind above it", async () => {
  const editor = await shop(FULL);
  const text = JOB.replace("0.8740 to 0.8745", "0,8740 to 0,8745");
  await editor.change(URI, { text });
  const whole = {
    start: { line: 0, character: 0 },
    end: { line: 99, character: 0 },
  };
  for (const only of ["source", "source.fixAll", "source.fixAll.thou"]) {
    const [action, other] = await editor.actions(URI, whole, [only]);
    expect(other).toBeUndefined();
    expect(action).toMatchObject({ kind: "source.fixAll.thou" });
    const change = action?.edit?.documentChanges?.[0];
    expect(
      change !== undefined && "edits" in change && change.edits.length,
    ).toBe(2);
  }
  expect(await editor.actions(URI, whole, ["source.organizeImports"])).toEqual(
    [],
  );
  expect(await editor.actions(URI, whole, ["refactor"])).toEqual([]);
});

test("an editor that knows no nested symbols gets a flat list", async () => {
  const [symbol] = await bare.request<object[]>("textDocument/documentSymbol", {
    textDocument: { uri: URI },
  });
  expect(symbol).toMatchObject({
    name: "job winch-layshaft",
    location: { uri: URI },
  });
});
